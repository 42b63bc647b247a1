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
          + " anywhere in the turn. Intervals: the white steps' scores with their remaining"
          + " autocorrelation (Andrews and Monahan 1992), first order.";

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
              "Mean slope of the motion with the corrections taken out, a bend beside it. The"
                  + " corrections count with the declared guide rate, give or take 3 %. Every stretch between dithers of unknown size,"
                  + " re-acquired stars and long gaps has its own level. Generalised least squares"
                  + " against fitted wander and noise, periodic error fitted beside it in right"
                  + " ascension; the interval carries the wander."),
          new Method(
              "/runs/*/responseArcsecPerSecond",
              "Strength of pulses of either direction beside drift, bend, periodic error, wander and"
                  + " noise, by restricted maximum likelihood: a plain regression of motion on pulses"
                  + " would be wrong, since each pulse answers the noise of the frame before it. Given"
                  + " when it is known to 10 %. The other figures use the declared strength unless"
                  + " it is off by more than it is allowed to be."),
          new Method(
              "/runs/*/noiseFloorArcsec",
              "White part of the same fit; interval from the curvature of its likelihood. Not given"
                  + " when more than 3 frames in 1000 are jolts."),
          new Method(
              "/runs/*/backlashArcsecAxis",
              "Pulses pass through a play of unknown width; the width is the one with the highest"
                  + " likelihood, everything else fitted anew; interval from its curvature, from the"
                  + " strength of pulses and from the difference of its two directions."),
          new Method(
              "/night/driftArcsecPerMinuteSky", "Mean over the runs, weighted by their length."),
          new Method("/runs/*/periodic", PERIODIC),
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
