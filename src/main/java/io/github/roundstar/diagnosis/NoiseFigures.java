package io.github.roundstar.diagnosis;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.NoiseColour;
import io.github.roundstar.results.NoiseFloor;
import java.util.List;
import java.util.stream.Stream;

/** Noise of a frame as the result shows it, on the sky. */
final class NoiseFigures {
  private static final String NOISE = "/noiseFloorArcsec";

  private NoiseFigures() {}

  static NoiseFloor of(RunStudy study, Reasons.Scope scope) {
    Answer<NoiseColour> ra = study.ra().map(NoiseColour::of);
    Answer<NoiseColour> dec = study.dec().map(NoiseColour::of);
    double cosine = study.ra().value().map(motion -> motion.run().cosine()).orElse(1.0);
    return new NoiseFloor(
        scope.orNull(NOISE + "/ra", study.ra().map(AxisMotion::noiseArcsec)),
        scope.orNull(NOISE + "/dec", study.dec().map(AxisMotion::noiseArcsec)),
        scope.orNull(NOISE + "/lag1", lag1(ra, dec)),
        scope.orNull(NOISE + "/raBySecondDifferences", differences(ra, cosine)),
        scope.orNull(NOISE + "/decBySecondDifferences", differences(dec, 1)));
  }

  private static Answer<Double> lag1(Answer<NoiseColour> ra, Answer<NoiseColour> dec) {
    List<NoiseColour> axes = Stream.concat(ra.value().stream(), dec.value().stream()).toList();
    return axes.isEmpty() ? Answer.none(ra.because()) : NoiseColour.lag1(axes);
  }

  private static Answer<Double> differences(Answer<NoiseColour> axis, double cosine) {
    return axis.then(
        colour ->
            Double.isNaN(colour.bySecondDifferences())
                ? Answer.none("no three frames follow each other at the usual cadence")
                : Answer.of(cosine * colour.bySecondDifferences()));
  }
}
