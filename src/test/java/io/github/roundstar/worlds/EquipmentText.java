package io.github.roundstar.worlds;

import io.github.roundstar.worlds.NightPlan.Gear;

/** Writes the equipment file (TOML): what the owner believes, which may be wrong. */
final class EquipmentText {
  private EquipmentText() {}

  static String of(NightPlan plan) {
    StringBuilder out = new StringBuilder("# Invented equipment of an invented night.\n\n[site]\n");
    number(out, "latitude_deg", plan.latitudeDeg, 4);
    number(out, "longitude_deg", plan.longitudeDeg, 4);
    number(out, "elevation_m", plan.elevationM, 1);
    if (plan.weatherDeclared) {
      number(out, "pressure_hpa", plan.pressureHpa, 1);
      number(out, "temperature_c", plan.temperatureC, 1);
    }
    out.append("\n[mount]\nname = \"Otherworld 1\"\n");
    if (!plan.gears.isEmpty()) {
      double period = plan.gears.get(0).periodSeconds();
      if (plan.teethDeclared) {
        long teeth = Math.round(SkyPath.SIDEREAL_DAY_SECONDS / period);
        out.append("worm_teeth = ").append(teeth).append('\n');
      } else {
        number(out, "worm_period_s", period, 2);
      }
    }
    number(out, "guide_rate", plan.declaredGuideRate, 4);
    out.append("drive = \"worm\"\n");
    for (int g = 1; plan.gearsDeclared && g < plan.gears.size(); g++) {
      Gear gear = plan.gears.get(g);
      out.append("\n[[mount.gear]]\nname = \"").append(gear.name()).append("\"\n");
      number(out, "period_s", gear.periodSeconds(), 2);
    }
    out.append("\n[guide]\n");
    number(out, "focal_length_mm", plan.guideFocalMm, 1);
    number(out, "pixel_um", 3.75, 2);
    if (plan.starPlaceDeclared) {
      number(out, "star_x_arcmin", plan.starEastArcmin, 2);
      number(out, "star_y_arcmin", plan.starNorthArcmin, 2);
    }
    out.append("binning = 1\narrangement = \"")
        .append(plan.offAxis ? "off-axis" : "guide-scope")
        .append("\"\n\n[imaging]\n");
    number(out, "focal_length_mm", plan.imagingFocalMm, 1);
    number(out, "pixel_um", 3.8, 2);
    out.append("width_px = 6000\nheight_px = 4000\nbinning = 1\n");
    number(out, "exposure_s", plan.imagingSeconds, 1);
    if (plan.starPlaceDeclared) {
      number(out, "position_angle_deg", 0, 1);
    }
    out.append("\n[sky]\n");
    number(out, "seeing_fwhm_arcsec", plan.seeingFwhmArcsec, 2);
    if (!Double.isNaN(plan.elongationLimit) || !Double.isNaN(plan.rmsLimitArcsec)) {
      out.append("\n[limits]\n");
    }
    if (!Double.isNaN(plan.elongationLimit)) {
      number(out, "elongation", plan.elongationLimit, 3);
    }
    if (!Double.isNaN(plan.rmsLimitArcsec)) {
      number(out, "rms_arcsec", plan.rmsLimitArcsec, 2);
    }
    return out.toString();
  }

  private static void number(StringBuilder out, String key, double value, int decimals) {
    out.append(key).append(" = ").append(GuideTableText.text(value, decimals)).append('\n');
  }
}
