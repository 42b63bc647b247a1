package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;

/**
 * Both axes' response is off by one and the same factor: the arcseconds of the log are off, or the
 * declared guide rate is. A log alone cannot tell the two apart, so both are named.
 */
final class PixelScaleRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.PIXEL_SCALE;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    PulseReading pulses = facts.pulses();
    if (pulses.ra().isEmpty() || pulses.dec().isEmpty()) {
      return Answer.none(
          facts.because(
              "/runs/*/responseArcsecPerSecond/ra",
              "/runs/*/responseArcsecPerSecond/dec",
              "/runs/*/responseArcsecPerSecond"));
    }
    if (pulses.mixed().isPresent()) {
      return Answer.none(pulses.mixed().get());
    }
    Estimate ra = pulses.ra().get();
    Estimate dec = pulses.dec().get();
    Draft draft =
        new Draft(code(), facts)
            .say(
                "Pulses act with "
                    + Wording.both(ra)
                    + " of the declared strength in RA and "
                    + Wording.both(dec)
                    + " in Dec.");
    if (!pulses.bothOff()) {
      return draft
          .title("", "The pixel scale fits the guide rate")
          .level(Level.FINE, Measure.MOST_CONFIDENCE)
          .judged();
    }
    double factor = (ra.value() + dec.value()) / 2;
    PulseGain.takeOver(draft, facts);
    return draft
        .title(
            "Arcseconds of this log are off by a factor of about "
                + Wording.number(factor)
                + ", or the guide rate is",
            "")
        .spoils(nearer(Deviation.from(ra, 1), Deviation.from(dec, 1)))
        .act(
            "Check focal length, pixel size and binning of the guide camera in the guiding program"
                + " and in the equipment file.",
            "Check the guide rate that is set in the mount against the one in the log.",
            "Analyse the night again: every arcsec on this page changes by the same factor.")
        .lostTo("pixel-scale")
        .judged();
  }

  private static Estimate nearer(Estimate one, Estimate other) {
    return one.lo95() < other.lo95() ? one : other;
  }
}
