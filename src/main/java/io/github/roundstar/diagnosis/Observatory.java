package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StandardAir;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where the mount stands, and its air.
 *
 * @param site the site
 * @param air refraction of the air there
 * @param liftDeviation one standard deviation of the true refraction about that, as a share
 */
record Observatory(Site site, Refraction air, double liftDeviation) {
  /** Nearer to a pole of the Earth than this the azimuth of the pole means little [deg]. */
  private static final double HIGHEST_LATITUDE = 85;

  /** Weather, the model and the colour of the star: 10 % at 95 %. */
  private static final double AIR_KNOWN = 0.1 / Estimate.SIGMAS_95;

  /** Neither pressure nor height known: a site at 2000 m has 22 % less air than one at the sea. */
  private static final double AIR_UNKNOWN = 0.1;

  /** Why there is no observatory when nobody told the latitude. */
  static final String NO_LATITUDE =
      "the latitude is not known: add site_latitude to the log's header or latitude_deg under"
          + " [site] in the equipment file";

  /**
   * The log's latitude, which wins over the equipment file's [deg]; nothing where neither tells.
   */
  static OptionalDouble latitudeDegrees(List<GuideRun> runs, Equipment equipment) {
    OptionalDouble logged =
        runs.stream().flatMapToDouble(run -> run.pointing().latitudeDegrees().stream()).findFirst();
    return logged.isPresent() ? logged : equipment.site().latitudeDegrees();
  }

  /** The site that log or equipment file tell. */
  static Answer<Observatory> of(List<GuideRun> runs, Equipment equipment) {
    OptionalDouble latitude = latitudeDegrees(runs, equipment);
    if (latitude.isEmpty()) {
      return Answer.none(NO_LATITUDE);
    }
    if (Math.abs(latitude.getAsDouble()) > HIGHEST_LATITUDE) {
      return Answer.none("so near to a pole of the Earth an azimuth means little");
    }
    return Answer.of(at(latitude.getAsDouble(), equipment));
  }

  /** A site at any latitude, with the air that the equipment file tells. */
  static Observatory at(double latitudeDegrees, Equipment equipment) {
    Equipment.Site place = equipment.site();
    boolean known = place.pressureHectopascal().isPresent() || place.elevationMetres().isPresent();
    double pressure =
        place
            .pressureHectopascal()
            .orElseGet(() -> StandardAir.hectopascal(place.elevationMetres().orElse(0)));
    Refraction air =
        new Refraction(pressure, place.temperatureCelsius().orElse(StandardAir.NIGHT_CELSIUS));
    return new Observatory(new Site(latitudeDegrees), air, known ? AIR_KNOWN : AIR_UNKNOWN);
  }
}
