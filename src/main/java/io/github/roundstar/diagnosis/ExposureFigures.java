package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.ExposureReport;
import io.github.roundstar.diagnosis.exposures.ExposureStudy;
import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.diagnosis.exposures.Flexure;
import io.github.roundstar.diagnosis.exposures.GuidedRun;
import io.github.roundstar.diagnosis.exposures.JudgedExposure;
import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.diagnosis.exposures.StarTrack;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.SmoothedStar;
import io.github.roundstar.results.ExposureEvidence;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/** Exposures of the main camera as the result shows them. */
final class ExposureFigures {
  static final String NONE_NAMED =
      "no exposures were named: give the folder of the main camera's images with --exposures";

  private ExposureFigures() {}

  /** Judges the exposures with what was found out about the runs and the polar axis. */
  static ExposureReport of(
      MainCamera camera,
      List<GuidedRun> runs,
      Equipment equipment,
      Optional<FieldTurn> turn,
      Faults faults) {
    return ExposureStudy.of(camera, runs, equipment, turn, faults);
  }

  /** What is known of each run when its exposures are judged. */
  static List<GuidedRun> runs(
      List<RunStudy> studies, List<RunResult> results, Periodic periodic, Equipment equipment) {
    Optional<Estimate> swing =
        Optional.ofNullable(periodic)
            .map(Periodic::peakToPeakArcsecAxis)
            .filter(estimate -> estimate.lo95() > 0);
    List<GuidedRun> runs = new ArrayList<>();
    for (int i = 0; i < results.size(); i++) {
      GuideRun run = studies.get(i).run();
      RunResult result = results.get(i);
      runs.add(
          new GuidedRun(
              run,
              track(studies.get(i), result, equipment),
              Optional.ofNullable(result.backlashArcsecAxis().dec()),
              Optional.ofNullable(result.stickingArcsecAxis().dec()),
              swing));
    }
    return runs;
  }

  /** The smoothed star; where the noise of a frame is not known, its measured places. */
  private static StarTrack track(RunStudy study, RunResult result, Equipment equipment) {
    Optional<Estimate> ra = Optional.ofNullable(result.noiseFloorArcsec().ra());
    Optional<Estimate> dec = Optional.ofNullable(result.noiseFloorArcsec().dec());
    StarTrack track =
        SmoothedStar.of(study.run(), equipment, study.ra(), study.dec())
            .value()
            .filter(star -> ra.isPresent() && dec.isPresent())
            .map(star -> StarTrack.smoothed(study.run().frames(), star, ra.get(), dec.get()))
            .orElseGet(() -> StarTrack.measured(study.run().frames(), ra, dec));
    return track.jumping(
        jumps(study.run(), true, perSecond(result, true)),
        jumps(study.run(), false, perSecond(result, false)));
  }

  /** What a second of pulse moves, its directions' mean; 0 where that is not known [arcsec/s]. */
  private static double perSecond(RunResult result, boolean ra) {
    Response response = result.responseArcsecPerSecond();
    if (response == null) {
      return 0;
    }
    Estimate sky =
        ra
            ? response.ra() == null ? null : response.ra().sky()
            : response.dec() == null ? null : response.dec().axis();
    return sky == null ? 0 : sky.value();
  }

  /** How far pulses moved the star between each measured frame and the next [arcsec]. */
  private static double[] jumps(GuideRun run, boolean ra, double perSecond) {
    Frames frames = run.frames();
    int[] measured = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    double[] jumps = new double[measured.length];
    for (int m = 0; m + 1 < measured.length && frames.hasPulses(); m++) {
      for (int i = measured[m]; i < measured[m + 1]; i++) {
        double millis = ra ? frames.raPulseMillis(i) : frames.decPulseMillis(i);
        jumps[m] += Double.isFinite(millis) ? perSecond * millis / 1000 : 0;
      }
    }
    return jumps;
  }

  /** What the report shows beside the figures. */
  static ExposureEvidence evidence(
      ExposureReport report, NightClock clock, double elongationLimit) {
    List<ExposureEvidence.Span> spans = new ArrayList<>();
    for (JudgedExposure exposure : report.exposures()) {
      double start = clock.start().map(zero -> since(zero, exposure.start())).orElse(0.0);
      spans.add(new ExposureEvidence.Span(start, start + exposure.seconds(), exposure.verdict()));
    }
    return new ExposureEvidence(
        spans,
        report.clock(),
        report.roundFwhmArcsec(),
        report.roundFrom(),
        report.scale(),
        report.arcsecPerPixel(),
        report.flexure().map(Flexure::eastArcsecPerHour).orElse(null),
        report.flexure().map(Flexure::northArcsecPerHour).orElse(null),
        elongationLimit,
        report.problems());
  }

  private static double since(Instant zero, Instant at) {
    Duration since = Duration.between(zero, at);
    return since.getSeconds() + since.getNano() * 1e-9;
  }

  /** How prediction, measurement and cause were made, with what holds for this night. */
  static List<Method> methods(ExposureReport report) {
    return List.of(
        new Method("/exposures", "Clocks: " + report.clock() + "."),
        new Method(
            "/exposures/*/predictedElongation",
            String.format(
                Locale.ROOT,
                "Round images at all places of the star during the exposure, settling and dithers"
                    + " included: places without the error of measuring, by the fit of wander and"
                    + " noise, each image widened by what the fit does not know (where there is no"
                    + " noise floor: the logged places, narrowed by it); of their sum the Gaussian-weighted moments, as in the"
                    + " measurement. The round image has %.2f (%.2f .. %.2f) arcsec FWHM, from %s. The interval holds the"
                    + " sampling error of that covariance and the round image's width.",
                report.roundFwhmArcsec().value(),
                report.roundFwhmArcsec().lo95(),
                report.roundFwhmArcsec().hi95(),
                report.roundFrom())),
        new Method("/exposures/*/measuredFwhmArcsec", report.scale()),
        new Method(
            "/exposures/*/measuredElongation",
            "Gaussian-weighted second moments of each star with a weight that follows the star"
                + " (Bernstein and Jarvis 2002); the two parts of the stretch are averaged over the"
                + " stars, then the elongation is formed, since noise makes every single elongation"
                + " exceed 1. Interval from the scatter of the stars."),
        new Method(
            "/exposures/*/predictedCornerElongation",
            "The predicted image with the trail that the turn of the field about the guide star adds"
                + " in the worst of the four corners, by the polar axis found."),
        new Method(
            "/exposures/*/measuredCornerElongation",
            "A complex polynomial of the second degree through the shapes of 20 stars or more, in the"
                + " worst corner; the interval allows for the choice among four. Where the shapes do"
                + " not change over the field by four standard errors, what all stars share."),
        new Method(
            "/exposures/*/verdict",
            "Measured elongation where there is one, else the predicted, and that of the worst corner"
                + " likewise: round when the whole interval is within the limit, trailed when the whole"
                + " interval is beyond it, else borderline; not covered when less than 90"
                + " % of the exposure has measured guide frames."),
        new Method(
            "/exposures/*/cause",
            "Of trailed exposures. Where the log gives at least half of the stretch along the same"
                + " axis, the part of the motion without which at most half of it is left; else what"
                + " the image shows: circles about a point, outward or one-sided stars, shifts from"
                + " exposure to exposure that the log does not explain, a long axis towards the"
                + " zenith, wider stars, one fixed angle."));
  }
}
