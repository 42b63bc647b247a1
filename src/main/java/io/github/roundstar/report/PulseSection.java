package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.Learned;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Response;
import java.util.ArrayList;
import java.util.List;

/** What pulses move, how alike both directions are, play, the camera's angle, noise of a frame. */
final class PulseSection {
  /** Two ways to the noise of a frame that differ by more than this factor do not agree. */
  private static final double AGREES = 1.2;

  private static final List<Column> COLUMNS =
      List.of(
          Column.words("axis"),
          Column.numbers("one second of pulse", "arcsec"),
          Column.numbers("east or north", "arcsec"),
          Column.numbers("west or south", "arcsec"),
          Column.numbers("declared", "arcsec"),
          Column.numbers("backlash", "arcsec"),
          Column.numbers("noise of a frame", "arcsec"));

  private PulseSection() {}

  static Section of(NightResult result) {
    NightSummary night = result.night();
    List<Block> blocks = new ArrayList<>();
    List<String> sentences = new ArrayList<>(strength(result));
    sentences.addAll(play(result));
    sentences.addAll(learned(night));
    sentences.addAll(residual(night.learned()));
    sentences.addAll(angle(night.responseArcsecPerSecond()));
    sentences.addAll(noise(night.noiseFloorArcsec()));
    blocks.add(new Block(sentences, null, table(night), null, null));
    return new Section("pulses", heading(night.responseArcsecPerSecond()), blocks);
  }

  private static String heading(Response response) {
    if (response == null || (response.ra() == null && response.dec() == null)) {
      return "How the mount answers pulses cannot be told from this log";
    }
    return "How the mount answers pulses";
  }

  private static List<String> strength(NightResult result) {
    Response response = result.night().responseArcsecPerSecond();
    Reasons reasons = new Reasons(result.notComputed());
    List<String> sentences = new ArrayList<>();
    if (response == null || response.ra() == null) {
      sentences.add(
          "RA: "
              + reasons.sentence(
                  "/runs/*/responseArcsecPerSecond/ra", "/night/responseArcsecPerSecond/ra"));
    } else {
      RaResponse ra = response.ra();
      sentences.add(compared("RA", ra.axis(), ra.declaredAxis()));
      sentences.add(balance("east", ra.east(), "west", ra.west()));
    }
    if (response == null || response.dec() == null) {
      sentences.add(
          "Dec: "
              + reasons.sentence(
                  "/runs/*/responseArcsecPerSecond/dec", "/night/responseArcsecPerSecond/dec"));
    } else {
      DecResponse dec = response.dec();
      sentences.add(compared("Dec", dec.axis(), dec.declaredAxis()));
      sentences.add(balance("north", dec.north(), "south", dec.south()));
    }
    return sentences.stream().filter(sentence -> !sentence.isEmpty()).toList();
  }

  private static String compared(String axis, Estimate found, Double declared) {
    String moves =
        "A second of pulse in " + axis + " moves the axis by " + Numbers.both(found) + " arcsec";
    if (declared == null) {
      return moves + ", by the log alone: no guide rate is declared.";
    }
    return found.covers(declared)
        ? moves + ", as the guide rate says."
        : moves
            + ", where the guide rate says "
            + Numbers.fixed(declared, 2)
            + ": "
            + Numbers.percent(Math.abs(found.value() / declared - 1))
            + (found.value() > declared ? " more." : " less.");
  }

  /** Whether one direction moves more; said only where the intervals leave no doubt. */
  private static String balance(String one, Estimate first, String other, Estimate second) {
    if (first == null || second == null) {
      return "";
    }
    boolean apart = first.lo95() > second.hi95() || second.lo95() > first.hi95();
    if (!apart) {
      return "No difference between " + one + " and " + other + " stands out.";
    }
    boolean firstMore = first.value() > second.value();
    double share =
        Math.abs(first.value() - second.value()) / Math.min(first.value(), second.value());
    return Sentences.capital(firstMore ? one : other)
        + " moves "
        + Numbers.percent(share)
        + " more than "
        + (firstMore ? other : one)
        + ": friction, balance or the drive help one way.";
  }

  private static List<String> play(NightResult result) {
    Estimate play =
        result.night().backlashArcsecAxis() == null
            ? null
            : result.night().backlashArcsecAxis().dec();
    Estimate sticking =
        result.night().stickingArcsecAxis() == null
            ? null
            : result.night().stickingArcsecAxis().dec();
    if (sticking != null) {
      return List.of(
          "Dec sticks: it withholds "
              + Numbers.both(sticking)
              + " arcsec of pulses, then lets go and makes up for all of it at once.");
    }
    if (play == null) {
      return List.of();
    }
    return List.of(
        play.lo95() > 0
            ? "A reversal in Dec loses " + Numbers.both(play) + " arcsec before the mount follows."
            : "No backlash in Dec stands out; at most "
                + Numbers.plain(play.hi95())
                + " arcsec would go unseen.");
  }

  /** What rests on the declaration, and what else may be behind the log. */
  private static List<String> learned(NightSummary night) {
    List<String> sentences = new ArrayList<>();
    Response response = night.responseArcsecPerSecond();
    if (night.learned() != null && response != null) {
      if (response.ra() != null) {
        learned("RA", night.learned().ra(), response.ra().declaredAxis() != null, sentences);
      }
      if (response.dec() != null) {
        learned("Dec", night.learned().dec(), response.dec().declaredAxis() != null, sentences);
      }
    }
    return sentences;
  }

  private static void learned(
      String axis, Learned.Axis learned, boolean declared, List<String> sentences) {
    if (learned == null) {
      return;
    }
    List<Learned.Explanation> told =
        learned.explanations().stream().filter(e -> e.probability() >= Learned.TOLD).toList();
    if (learned.response() != null && learned.response() < Learned.LITTLE) {
      sentences.add(
          "How strongly "
              + axis
              + " answers rests on "
              + (declared ? "the declared guide rate" : "what guide rates usually are")
              + "; this log adds little to it. A dither of some arcsec, or one long pulse by hand,"
              + " would teach it.");
    } else if (told.size() > 1) {
      sentences.add(
          "Two explanations of "
              + axis
              + " are left: a pulse moves "
              + Numbers.plain(told.get(0).responseArcsecPerSecondAxis())
              + " arcsec/s ("
              + Numbers.percent(told.get(0).probability())
              + " likely), or "
              + Numbers.plain(told.get(1).responseArcsecPerSecondAxis())
              + " arcsec/s and the noise goes on from frame to frame ("
              + Numbers.percent(told.get(1).probability())
              + "). One dither of some arcsec would decide.");
    }
  }

  /** Where an axis does something that its model does not know, and how that shows. */
  private static List<String> residual(Learned learned) {
    List<String> sentences = new ArrayList<>();
    if (learned != null) {
      residual("RA", learned.ra(), sentences);
      residual("Dec", learned.dec(), sentences);
    }
    return sentences;
  }

  private static void residual(String axis, Learned.Axis learned, List<String> sentences) {
    if (learned != null && learned.residual() != null && !learned.residual().fits()) {
      sentences.add(
          "Take the figures of "
              + axis
              + " as rough: what is left once drift, gears, pulses, wander and noise are taken out"
              + " should be random, and is not. Frames "
              + Numbers.plain(learned.residual().lagSeconds())
              + " s apart "
              + (learned.residual().correlation() > 0
                  ? "still go together"
                  : "go against each other")
              + " (correlation "
              + Numbers.plain(learned.residual().correlation())
              + "): the axis does something that the model does not know.");
    }
  }

  private static List<String> angle(Response response) {
    Estimate angle = response == null ? null : response.crossAxisDeg();
    if (angle == null) {
      return List.of();
    }
    return List.of(
        angle.covers(0)
            ? "Pulses of one axis leave the other alone: the camera's angle is as the guiding takes"
                + " it, "
                + Numbers.both(angle)
                + " degrees off."
            : "Pulses of one axis move the star in the other too: the camera stands "
                + Numbers.both(angle)
                + " degrees from where the guiding takes it to be.");
  }

  private static List<String> noise(NoiseFloor noise) {
    List<String> sentences = new ArrayList<>();
    if (noise != null) {
      disagreement("RA", noise.ra(), noise.raBySecondDifferences(), sentences);
      disagreement("Dec", noise.dec(), noise.decBySecondDifferences(), sentences);
    }
    return sentences;
  }

  private static void disagreement(
      String axis, Estimate fitted, Double second, List<String> sentences) {
    if (fitted == null || second == null) {
      return;
    }
    double ratio = second / fitted.value();
    if (ratio > AGREES || ratio < 1 / AGREES) {
      sentences.add(
          "Two ways to the noise of a frame in "
              + axis
              + " disagree: the fit says "
              + Numbers.both(fitted)
              + ", second differences say "
              + Numbers.plain(second)
              + " arcsec. The noise then goes on from frame to frame, or its size changes.");
    }
  }

  private static Table table(NightSummary night) {
    Response response = night.responseArcsecPerSecond();
    RaResponse ra = response == null ? null : response.ra();
    DecResponse dec = response == null ? null : response.dec();
    NoiseFloor noise = night.noiseFloorArcsec();
    Estimate play = night.backlashArcsecAxis() == null ? null : night.backlashArcsecAxis().dec();
    Estimate raPlay = night.backlashArcsecAxis() == null ? null : night.backlashArcsecAxis().ra();
    Table table =
        new Table(
            "Pulses and noise, all runs together; response and backlash at the axis. North and south"
                + " are those of a tube west of the pier",
            COLUMNS,
            List.of(
                List.of(
                    Cell.of("RA"),
                    Cell.of(ra == null ? null : ra.axis()),
                    Cell.of(ra == null ? null : ra.east()),
                    Cell.of(ra == null ? null : ra.west()),
                    Cell.of(ra == null ? null : ra.declaredAxis()),
                    Cell.of(raPlay),
                    Cell.of(noise == null ? null : noise.ra())),
                List.of(
                    Cell.of("Dec"),
                    Cell.of(dec == null ? null : dec.axis()),
                    Cell.of(dec == null ? null : dec.north()),
                    Cell.of(dec == null ? null : dec.south()),
                    Cell.of(dec == null ? null : dec.declaredAxis()),
                    Cell.of(play),
                    Cell.of(noise == null ? null : noise.dec()))));
    Table shown = table.withoutEmptyColumns();
    return shown.columns().size() < 2 ? null : shown;
  }
}
