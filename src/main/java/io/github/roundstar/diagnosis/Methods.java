package io.github.roundstar.diagnosis;

import io.github.roundstar.results.Method;
import java.util.List;

/** How each kind of figure and its interval is made, in words for the reader. */
final class Methods {
  private static final String PERIODIC =
      "The motion in right ascension at the axis is modelled as a drift, sinusoids, random wander"
          + " and white noise. Wander and noise are fitted by restricted maximum likelihood; what"
          + " they leave white is searched with a floating-mean periodogram from three turns to two"
          + " frames a turn, and each line is judged against that background over all trial"
          + " periods. Periods and amplitudes come from generalised least squares on the original"
          + " times, one period and one set of amplitudes for all runs, each run free to start"
          + " anywhere in the turn. Amplitudes, periods and peak to peak with their intervals are those of the posterior"
          + " (see the response), where the first family's amplitude may walk and every run has amplitudes of its own,"
          + " weighted by what each knows; phase, curve and spectrum are those of that fit, pulses taken"
          + " out as the posterior says.";

  private static final String REPEATABILITY =
      "Each complete turn of every run fitted by itself with the harmonics found, wander and noise"
          + " beside them; the mean square of the mean turn over that plus what the turns differ by"
          + " beyond wander and noise. Changes within a turn count in part.";

  static final List<Method> ALL =
      List.of(
          new Method(
              "/runs/*/guided",
              "Used frames only. RMS about the run's own mean, divisor n, nothing clipped. p95 is"
                  + " the type-7 quantile of the distance from the mean. The elongation is the root"
                  + " of the eigenvalue ratio of the offsets' covariance; its angle is given only"
                  + " when the two ellipticity components differ from zero at 95 %, their"
                  + " autocorrelation respected (Newey and West 1987)."),
          new Method(
              "/runs/*/guided/*/driftArcsecPerMinute",
              "Ordinary least-squares slope of the used offsets; interval with the number of"
                  + " independent frames from the lag-1 autocorrelation (Santer et al. 2000)."),
          new Method(
              "/night/guided", "All used frames of all runs, each about its own run's mean."),
          new Method(
              "/runs/*/driftArcsecPerMinuteSky",
              "Drift at the middle of the run, the motion's bend, sinusoids, wander, pulses and noise"
                  + " beside it, by the posterior of the axis (see the response). Every stretch"
                  + " between dithers of unknown size, re-acquired stars and long gaps has its own"
                  + " level. The interval carries the wander and all that is not known of the pulses."),
          new Method(
              "/runs/*/responseArcsecPerSecond",
              "One posterior for each axis over all runs of the night: offset = level + drift + bend +"
                  + " sinusoids + random walk - pushes + noise that may last longer than a frame."
                  + " Wander over noise, the noise's memory, the width of a play and where the gears"
                  + " rest at first lie on a lattice about all peaks; all else is Gaussian given those"
                  + " and integrated exactly, so that nothing is taken for certain before it is known"
                  + " (Rue, Martino and Chopin 2009). Every figure with its interval is a quantile of"
                  + " that mixture or of 400 draws from it. What is said beforehand: a declared rate is"
                  + " mostly right to 4 %, at times off by 20 %, now and then left at half or twice;"
                  + " directions differ by 2 %; pulses wait some 0.15 s; noise mostly forgets itself"
                  + " within a second; half of all mounts have play in declination, falling from zero"
                  + " with a mean of 3 arcsec. How much the log itself taught is given beside"
                  + " the figures of the night."),
          new Method(
              "/runs/*/responseArcsecPerSecond/crossAxisDeg",
              "Each axis fitted once more with the other axis' pulses beside everything else, every"
                  + " dither an unknown step; both angles weighted by their errors, the interval widened"
                  + " where they differ by more (Birge 1932). Position angle of what the camera"
                  + " takes for north, north through east."),
          new Method(
              "/runs/*/noiseFloorArcsec",
              "Noise of the same posterior, jolts left out; in a night of several runs each run's by"
                  + " what the filter leaves of it."
                  + " lag1 is the ratio of the covariances of the motion's differences at lags 2 and"
                  + " 1, which wander does not touch; slow image motion counts as wander. Second"
                  + " differences over the root of 6, the fitted wander's part taken off, are the"
                  + " check."),
          new Method(
              "/runs/*/events/*",
              "Dithers, lost stars and flips as the log tells. Jolts are shifts of 1 to 12 frames,"
                  + " passing or lasting, whose score in the fit of wander and noise exceeds 4.8"
                  + " robust standard deviations (de Jong and Penzer 1998); they are taken out and"
                  + " the rest is searched again, then the whole once more beside the wander and"
                  + " noise of the quiet time. Drift, periodic error, response, noise and play come"
                  + " from that time. A lasting one within a frame or two is a knock, a"
                  + " slower one a lasting shift, one with another brightness ever after a star"
                  + " switch. A cloud takes more than 30 % of the light that the star shows on a clear"
                  + " sky within 20 minutes either side. A stuck star answers pulses with less than a"
                  + " fifth of their strength, at 95 %."),
          new Method(
              "/night/responseArcsecPerSecond",
              "The posterior of all runs. North and south are the motor's, named for a tube west of the"
                  + " pier; a run on the other side counts the other way round."),
          new Method("/night/noiseFloorArcsec", "The posterior of all runs."),
          new Method("/night/backlashArcsecAxis", "The posterior of all runs."),
          new Method(
              "/runs/*/backlashArcsecAxis",
              "Pulses pass through a play of unknown width, which all runs share; see the response."
                  + " The figure is the median, and 0 where no play is likelier than any."),
          new Method("/night/stickingArcsecAxis", "The posterior of all runs."),
          new Method(
              "/runs/*/stickingArcsecAxis",
              "Where motion surely is lost, the same runs are read behind an axis that withholds pulses"
                  + " until they add up to a threshold and then lets go whole. It is said to stick"
                  + " where that is the likelier of the two; one axis in ten that loses motion is"
                  + " taken to stick beforehand. A little sticking beside play, or one whose"
                  + " threshold changes, goes unseen."),
          new Method(
              "/night/learned",
              "One minus the width of a figure's interval over that of what was known before the log."),
          new Method(
              "/runs/*/loop",
              "The pulses are described by a law: offsets pass an exponential filter, one of some"
                  + " frames ago is answered in proportion, unless it is below a deadband, up to a"
                  + " limit. Filter and delay are those that leave least of the uncut pulses; the"
                  + " deadband is the threshold that describes best which offsets had no pulse, and"
                  + " holds a shortest pulse too. The gain is the law's, times what a second of"
                  + " pulse moves, whose interval it carries. Noise amplification: g / (2 -"
                  + " g), the closed form for a plain proportional loop."),
          new Method(
              "/runs/*/budget",
              "Drift and sinusoids as fitted; what they leave is smoothed (Rauch, Tung and Striebel"
                  + " 1965) into wander and noise, or into jolts over the frames of the run's"
                  + " jolts. Each cause goes through the loop by itself, deadband and limits"
                  + " averaged into the gain (Bussgang 1952), what that average misses being a cause of"
                  + " its own; what a cause leaves, times the offsets,"
                  + " averaged over the used frames, is its part. So the parts add up to the mean"
                  + " square about the set point, cross terms are split equally, and a cause that"
                  + " works against the others has a negative part. The share of trailing is the same"
                  + " with each exposure's mean taken out, of the trailing mean square; exposures follow one another from the"
                  + " first used frame and begin anew after every dither."),
          new Method(
              "/replay",
              "The recovered motion, dithers and noise go through the fitted law again with another"
                  + " gain, deadband, number of frames averaged, or with the fitted curve of one gear"
                  + " taken out, play included, the other axis as it was: after a dither both decide"
                  + " which frames count. The star's motion is what the log would show less the"
                  + " smoothed noise, its mean square raised by the variance of that noise given the"
                  + " log. All runs together, each about its own mean. Interval of the difference:"
                  + " jackknife over 24 stretches a run, the same frames under both settings, and what a"
                  + " response stronger by a standard error changes, both as variances; it does not"
                  + " hold nights with other air."),
          new Method(
              "/night/driftArcsecPerMinuteSky", "Mean over the runs, weighted by their length."),
          new Method(
              "/night/comparison/guidedIntervals",
              "Moving-block bootstrap over the used frames of all runs (Kuensch 1989); block length"
                  + " from the autocorrelation of the squared distance from the mean (Politis and"
                  + " White 2004, Patton et al. 2009); closed form for the RMS, 400 resamples with a"
                  + " fixed seed for the elongation."),
          new Method(
              "/night/pointings/targets",
              "Runs whose guide stars stand within half a degree, or within 0.15 h by their hour"
                  + " angles. RMS by the moving-block bootstrap as for the night; drift as a mean"
                  + " over the runs, weighted by their length."),
          new Method(
              "/night/pointings/flips",
              "RMS and noise: logarithms of mean squares in blocks of five minutes, fitted with a"
                  + " step at the flip beside a random walk and the scatter of blocks, by restricted"
                  + " likelihood (Patterson and Thompson 1971), averaged over the walk's share."
                  + " Noise by second differences of the motion with the corrections taken out."
                  + " Response: each run's motion fitted with what its pulses pushed, beside drift"
                  + " and gears, through the filter that makes wander and noise white. Intervals of"
                  + " changes by Bonferroni's inequality over the eight figures."),
          new Method(
              "/night/pointings/airmass",
              "Airmass is the secant of the zenith distance. Logarithms of mean squares in blocks of"
                  + " five minutes against that of the airmass, each field at its own level, beside"
                  + " a random walk, as for flips. The variance of a star's motion grows with the"
                  + " airmass (Roddier 1981, Progress in Optics 19, 281)."),
          new Method("/runs/*/periodic", PERIODIC),
          new Method("/runs/*/periodic/repeatability", REPEATABILITY),
          new Method("/night/periodic/repeatability", REPEATABILITY),
          new Method("/night/periodic", PERIODIC),
          new Method(
              "/night/periodic/detectable",
              "Of the longest run: what fitted wander and noise reach anywhere in the range searched"
                  + " in one night of a hundred, as the amplitude of a sinusoid in a spectrum with"
                  + " Hann window."),
          new Method(
              "/polarAxis",
              "The motion in declination of all runs, corrections taken out, is fitted with the exact"
                  + " rotation about an axis beside the pole, refraction in it (A tan z + B tan^3 z,"
                  + " coefficients of the IAU's SOFA routine for the site's pressure and"
                  + " temperature). Drifts in right ascension join beside a free tracking rate. Each"
                  + " stretch has its own level; wander and noise are those of the run by itself."
                  + " The interval carries wander, noise, a response that may be off by 3 % in either"
                  + " direction, and 10 % of the refraction (20 % without pressure and height). The"
                  + " azimuth is the angle about the vertical, as the adjuster turns. A figure is"
                  + " left out when it is known to no better than 3 arcmin and a third."),
          new Method(
              "/polarAxis/assumed",
              "Without a latitude refraction cannot be taken out. The axis is fitted at seven latitudes,"
                  + " evenly over those from 65 south to 65 north from which every star stood at"
                  + " least 15 degrees high; told is the combination of both errors that differs"
                  + " least between them, with an interval that holds the intervals of all of them,"
                  + " and so all of the refraction. Where these latitudes reach beyond the tropics"
                  + " in both hemispheres, the figure is that of the north end of the axis."),
          new Method(
              "/polarAxis/consistent",
              "The sum of squares that the axis leaves against that of runs which drift and bend as"
                  + " they like: chi squared at 1 %. What is left is tried with one more drift, the"
                  + " same in all runs or turned by the pier side; one that takes away four fifths"
                  + " of it is named and fitted beside the axis, else the intervals grow by what is"
                  + " left."),
          new Method(
              "/polarAxis/cornerTrailArcsec",
              "Fastest turn of the field about the guide star in the night's runs, times the exposure"
                  + " and the distance to the farthest corner; a guide star whose place is not known"
                  + " is put in the opposite corner."),
          new Method(
              "/seeing",
              "Noise floor less the photon noise of the centroid, through Kolmogorov turbulence at 500"
                  + " nm over the guide scope's aperture. An exposure averages the motion by its length"
                  + " over the time in which a wind of 10 m/s crosses the aperture, to the power 1/6"
                  + " (endless eddies) for the least and 1/2 for the most."),
          new Method(
              "/runs/*/settling",
              "From the first frame against the new set point to the first used frame."));

  private Methods() {}
}
