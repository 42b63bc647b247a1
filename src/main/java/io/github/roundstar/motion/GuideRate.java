package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.sky.SiderealRate;
import java.util.OptionalDouble;

/**
 * How fast a pulse moves the star by the settings; the log's own word wins over the equipment file.
 */
public final class GuideRate {
  /** Half the sidereal rate; common practice, no source. */
  private static final double UNDECLARED = 0.5 * SiderealRate.ARCSEC_PER_SECOND;

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

  /**
   * Speed of a pulse at the axis that strengths are told in multiples of: the declared one, or what
   * many mounts have where none is declared [arcsec/s].
   */
  public static double unitAxis(GuideRun run, Equipment equipment) {
    return declaredAxis(run, equipment).value().orElse(UNDECLARED);
  }

  /** The same on the sky [arcsec/s]. */
  public static Answer<Double> unitSky(GuideRun run, Axis axis, Equipment equipment) {
    double rate = unitAxis(run, equipment);
    return axis == Axis.DEC ? Answer.of(rate) : CosDec.of(run).map(cosine -> rate * cosine);
  }
}
