package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.HourAngles;
import io.github.roundstar.sky.DifferentialRefraction;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StandardAir;
import io.github.roundstar.sky.StarPlace;
import java.util.Optional;
import java.util.OptionalDouble;

/** Refraction between a run's guide star and the main camera's centre, or why it is not known. */
final class GuideStarAir {
  private GuideStarAir() {}

  /** The refraction, its time zero at the run's start. */
  static Answer<DifferentialRefraction> of(GuideRun run, Equipment equipment) {
    OptionalDouble latitude = equipment.latitudeDegrees(run.pointing());
    OptionalDouble declination = run.pointing().declinationDegrees();
    Answer<Double> hourAngle = HourAngles.of(run, equipment);
    Optional<FieldPlace> star = FieldPlace.guideStar(equipment);
    if (latitude.isEmpty()) {
      return Answer.none("the latitude is not known");
    }
    if (declination.isEmpty() || hourAngle.value().isEmpty()) {
      return Answer.none(
          declination.isPresent() && run.pointing().hourAngleHours().isPresent()
              ? hourAngle.because()
              : "the log does not tell where the telescope looked");
    }
    if (star.isEmpty() || equipment.imaging().positionAngleDegrees().isEmpty()) {
      return Answer.none(
          "the guide star's place beside the image's centre and the camera's angle are not known");
    }
    return Answer.of(
        new DifferentialRefraction(
            new Site(latitude.getAsDouble()),
            air(equipment.site()),
            StarPlace.ofHours(hourAngle.value().get(), declination.getAsDouble())
                .later(-run.frames().timeSeconds(0)),
            -star.get().eastArcsec(),
            -star.get().northArcsec()));
  }

  private static Refraction air(Equipment.Site site) {
    double pressure =
        site.pressureHectopascal()
            .orElseGet(() -> StandardAir.hectopascal(site.elevationMetres().orElse(0)));
    return new Refraction(pressure, site.temperatureCelsius().orElse(StandardAir.NIGHT_CELSIUS));
  }
}
