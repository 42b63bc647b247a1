package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.sky.SiderealRate;
import java.util.OptionalDouble;

/**
 * How fast a pulse moves the star by the settings; the log's own word wins over the equipment file.
 */
public final class GuideRate {
  private GuideRate() {}

  /** Declared speed of a pulse at the axis [arcsec/s]. */
  public static Answer<Double> declaredAxis(GuideRun run, Equipment equipment) {
    OptionalDouble logged = run.loop().guideRateSidereal();
    OptionalDouble rate = logged.isPresent() ? logged : equipment.mount().guideRateSidereal();
    return rate.isPresent()
        ? Answer.of(rate.getAsDouble() * SiderealRate.ARCSEC_PER_SECOND)
        : Answer.none(
            "the guide rate is not known: add guide_rate to the log's header or under [mount] in"
                + " the equipment file");
  }

  /** Declared speed of a pulse on the sky [arcsec/s]. */
  public static Answer<Double> declaredSky(GuideRun run, Axis axis, Equipment equipment) {
    Answer<Double> rate = declaredAxis(run, equipment);
    return axis == Axis.DEC ? rate : rate.then(r -> CosDec.of(run).map(cosine -> r * cosine));
  }
}
