package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.results.Cure;
import io.github.roundstar.results.Need;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import io.github.roundstar.results.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Cures in words: as the head of a sentence, and as a step with its numbers. */
final class CureWords {
  /** A turn of an adjuster is told in quarters: finer steps are lost in its play. */
  private static final double QUARTERS = 4;

  private static final double LEAST_ARCMIN = 0.5;

  private CureWords() {}

  /** {@code Raise the RA gain from 0.40 to 0.80}. */
  static String shortly(Cure cure) {
    Map<String, Double> n = cure.numbers();
    return switch (cure.cure()) {
      case "ra-gain" -> gain("RA", n);
      case "dec-gain" -> gain("Dec", n);
      case "ra-deadband" -> deadband("RA", n);
      case "dec-deadband" -> deadband("Dec", n);
      case "guide-exposure" ->
          "Guide with exposures of "
              + seconds(n.get("toSeconds"))
              + " instead of "
              + seconds(n.get("fromSeconds"));
      case "settling-wait" ->
          n.containsKey("toSeconds")
              ? "Wait " + seconds(n.get("toSeconds")) + " after each dither"
              : "Begin exposures only once the star has settled";
      case "tracking-rate" -> "Set the mount to the rate of the stars";
      case "polar-axis" ->
          "Align the polar axis, "
              + (whole(n) ? "" : "at least ")
              + Wording.number(n.get("fromArcmin"))
              + " arcmin off";
      case "balance" -> "Balance the mount";
      case "exposure-length" ->
          "Expose " + seconds(n.get("toSeconds")) + " instead of " + seconds(n.get("fromSeconds"));
      case "training" -> "Train the worm's curve";
      case "play" -> "See to the " + Wording.number(n.get("fromArcsec")) + " arcsec of play in Dec";
      case "sticking" -> "See to the Dec axis, which sticks";
      case "gears" -> "See to the RA gears";
      case "jolts" -> "Secure cables and clamps";
      case "flexure" -> "Stop the bending between guide scope and telescope";
      case "optics" -> "See to the telescope's optics";
      default -> "Change " + cure.cure();
    };
  }

  private static String gain(String axis, Map<String, Double> n) {
    boolean up = n.get("toGain") > n.get("fromGain");
    return (up ? "Raise the " : "Lower the ")
        + axis
        + " gain from "
        + two(n.get("fromGain"))
        + " to "
        + two(n.get("toGain"));
  }

  private static String deadband(String axis, Map<String, Double> n) {
    return n.get("toArcsec") == 0
        ? "Switch the " + axis + " deadband off"
        : "Set the "
            + axis
            + " deadband from "
            + two(n.get("fromArcsec"))
            + " to "
            + two(n.get("toArcsec"))
            + " arcsec";
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String seconds(double seconds) {
    return Wording.number(seconds).replaceAll("\\.0+$", "").replaceAll("(\\.\\d)0$", "$1") + " s";
  }

  /** The step. */
  static Step step(LadderReading.Chosen chosen, LadderReading ladder, Equipment equipment) {
    Cure cure = chosen.cure();
    return new Step(
        cure.cure(),
        chosen.rung(),
        text(cure, equipment),
        effort(chosen.rung()),
        wins(cure, ladder),
        nextLog(cure, ladder),
        caution(cure));
  }

  private static String text(Cure cure, Equipment equipment) {
    Map<String, Double> n = cure.numbers();
    return switch (cure.cure()) {
      case "polar-axis" -> axis(n, equipment);
      case "training" ->
          "Train the mount's own correction over three turns of the worm or more, at a star near"
              + " the equator, and keep it on.";
      case "balance" -> "Balance both axes with everything mounted, caps off and cables on.";
      case "play" ->
          shortly(cure)
              + ": look for a loose belt, pinion or clamp; only then set the Dec mesh closer, by the"
              + " maker's manual.";
      case "sticking" ->
          shortly(cure)
              + ": feel with the load supported whether it turns evenly; then have it cleaned and"
              + " greased, by the maker's manual.";
      case "gears" ->
          shortly(cure)
              + ": clean and grease the worm, and set its mesh by the maker's manual, or have a"
              + " workshop do it.";
      case "jolts" ->
          "Lead cables so that none pulls, and see that clutches, clamps and tripod screws hold.";
      case "flexure" ->
          "Tighten rings, clamps, focusers and cameras of both telescopes; an off-axis guider ends"
              + " it for good.";
      case "optics" -> "Check focus, spacing, tilt and collimation of the telescope.";
      default -> shortly(cure) + ".";
    };
  }

  private static String axis(Map<String, Double> n, Equipment equipment) {
    List<String> ways = new ArrayList<>();
    way(
        ways,
        n.get("altitudeArcmin"),
        "raise it by ",
        "lower it by ",
        equipment.mount().altitudeArcminPerTurn(),
        "altitude");
    way(
        ways,
        n.get("azimuthArcmin"),
        "turn it east by ",
        "turn it west by ",
        equipment.mount().azimuthArcminPerTurn(),
        "azimuth");
    return ways.isEmpty()
        ? "Align the polar axis anew: it is "
            + (whole(n) ? "" : "at least ")
            + Wording.number(n.get("fromArcmin"))
            + " arcmin off the pole."
        : "Move the raised end of the polar axis: " + String.join(", ", ways) + ".";
  }

  /** Whether both parts of an axis's error are known. */
  private static boolean whole(Map<String, Double> numbers) {
    return numbers.containsKey("azimuthArcmin") || numbers.containsKey("altitudeArcmin");
  }

  private static void way(
      List<String> ways,
      Double arcmin,
      String plus,
      String minus,
      OptionalDouble perTurn,
      String adjuster) {
    if (arcmin == null || Math.abs(arcmin) < LEAST_ARCMIN) {
      return;
    }
    String turns = "";
    if (perTurn.isPresent()) {
      double quarters = Math.round(QUARTERS * Math.abs(arcmin) / perTurn.getAsDouble());
      turns = " (" + turns(quarters / QUARTERS) + " of the " + adjuster + " adjuster)";
    }
    ways.add((arcmin > 0 ? plus : minus) + Wording.number(Math.abs(arcmin)) + " arcmin" + turns);
  }

  private static String turns(double turns) {
    if (turns < 0.25) {
      return "less than a quarter turn";
    }
    String words = String.format(Locale.ROOT, "%.2f", turns).replaceAll("\\.?0+$", "");
    return words + (turns <= 1 ? " turn" : " turns");
  }

  private static String effort(String rung) {
    return switch (rung) {
      case Rung.SETTINGS -> "tonight, free";
      case Rung.ALIGNMENT_BALANCE -> "half an hour";
      case Rung.SHORTER_EXPOSURES -> "free, costs some read noise";
      case Rung.TRAINING -> "an hour";
      default -> "days; with care";
    };
  }

  private static String wins(Cure cure, LadderReading ladder) {
    if (!ladder.need().ofStars()) {
      Range less = more(cure.lessRmsArcsecAlone(), cure.lessRmsArcsecOnTop());
      return less.low() > 0 ? "takes " + two(less.value()) + " arcsec off the RMS" : "";
    }
    Range won = more(cure.winsAlone(), cure.winsOnTop());
    int rounded = (int) Math.round(won.value());
    return rounded < 1
        ? ""
        : "wins "
            + rounded
            + " of "
            + ladder.asItWas().units()
            + " exposures"
            + (Math.round(won.low()) == Math.round(won.high())
                ? ""
                : String.format(Locale.ROOT, " (%.0f .. %.0f)", won.low(), won.high()));
  }

  private static Range more(Range alone, Range onTop) {
    return onTop.value() > alone.value() ? onTop : alone;
  }

  private static String nextLog(Cure cure, LadderReading ladder) {
    double now = ladder.asItWas().loggedRadialRmsArcsec().value();
    Range less = cure.lessRmsArcsecAlone();
    return switch (cure.cure()) {
      case "flexure", "optics" -> "the next images show rounder stars; the log stays as it is";
      case "exposure-length", "settling-wait" ->
          "the log stays as it is; more exposures come out round";
      case "polar-axis" ->
          "the next log shows an axis within "
              + Wording.number(Math.max(1, cure.numbers().get("toArcmin")))
              + " arcmin of the pole";
      default ->
          less.low() > 0.005
              ? String.format(
                  Locale.ROOT,
                  "the next log, under air like this, shows a radial RMS near %.2f arcsec, not %.2f",
                  now - less.value(),
                  now)
              : "the next log shows about the same RMS; the stars come out rounder";
    };
  }

  private static String caution(Cure cure) {
    return switch (cure.cure()) {
      case "polar-axis" -> Cautions.ADJUSTERS;
      case "balance", "jolts" -> Cautions.BALANCE;
      case "play", "sticking", "gears" -> Cautions.GEARS;
      case "flexure", "optics" -> Cautions.TUBE;
      default -> Cautions.NONE;
    };
  }

  /** {@code 24 of 24 exposures would be round, not 13}; or by the RMS. */
  static String outcome(LadderReading ladder) {
    Rung now = ladder.asItWas();
    Rung then = ladder.after();
    if (ladder.need().kind().equals(Need.RADIAL_RMS)) {
      return String.format(
          Locale.ROOT,
          "%.2f arcsec RMS instead of %.2f",
          then.loggedRadialRmsArcsec().value(),
          now.loggedRadialRmsArcsec().value());
    }
    return then.units() == now.units()
        ? String.format(
            Locale.ROOT,
            "%.0f of %d exposures round instead of %.0f",
            then.round().value(),
            then.units(),
            now.round().value())
        : String.format(
            Locale.ROOT,
            "%.0f %% of exposures round instead of %.0f %%",
            100 * then.round().value() / Math.max(1, then.units()),
            100 * now.round().value() / Math.max(1, now.units()));
  }
}
