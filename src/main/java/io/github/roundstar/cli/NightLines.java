package io.github.roundstar.cli;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisDrift;
import io.github.roundstar.results.ExposureCounts;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.Periodic;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Step;
import io.github.roundstar.results.Usual;
import io.github.roundstar.results.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Help.Ansi.Style;

/**
 * A night in about ten lines for the terminal: what it was, what to do, the figures that decide.
 * Levels have colours where the terminal shows them; the words say the same.
 */
final class NightLines {
  /** Narrow enough for any terminal. */
  private static final int WIDTH = 80;

  /** So many fit into a line. */
  private static final int LEVELS_A_LINE = 3;

  private static final String LABEL = "  %-9s";
  private static final String BELOW_LABEL = " ".repeat(11);

  private final Ansi ansi;
  private final List<String> lines = new ArrayList<>();

  private NightLines(Ansi ansi) {
    this.ansi = ansi;
  }

  static List<String> of(NightResult result, Ansi ansi) {
    NightLines night = new NightLines(ansi);
    night.lines.add(head(result));
    night.verdict(result);
    night.figures(result);
    return night.lines;
  }

  /** A labelled line as all commands write it. */
  static String line(String label, Object text) {
    return format(LABEL, label) + text;
  }

  private static String head(NightResult result) {
    NightSummary night = result.night();
    int used = result.runs().stream().map(RunResult::counts).mapToInt(c -> c.used()).sum();
    double logged = result.runs().stream().mapToDouble(RunResult::durationSeconds).sum() / 3600;
    return format(
        "%s  %d run%s, %s, %d of %d frames used",
        night.date(),
        night.runs(),
        night.runs() == 1 ? "" : "s",
        night.guidedHours() > 0 || logged == 0
            ? duration(night.guidedHours()) + " guided"
            : duration(logged) + " without guiding",
        used,
        night.frames());
  }

  /** Hours; minutes below one. */
  private static String duration(double hours) {
    return hours < 1 ? format("%.0f min", 60 * hours) : format("%.1f h", hours);
  }

  private void verdict(NightResult result) {
    Verdict verdict = result.verdict();
    if (verdict == null) {
      return;
    }
    wrapped("verdict", verdict.summary(), Style.bold);
    List<Step> steps = result.steps() == null ? List.of() : result.steps();
    if (steps.size() > 1) {
      steps.forEach(step -> wrapped("next", step.text()));
    }
    if (result.kept() != null) {
      wrapped("promised", result.kept().text());
    }
    List<String> levels = new ArrayList<>();
    level(levels, "mount", verdict.mount());
    level(levels, "axis", verdict.axis());
    level(levels, "settings", verdict.settings());
    level(levels, "air", verdict.sky());
    level(levels, "optics", verdict.optics());
    for (int i = 0; i < levels.size(); i += LEVELS_A_LINE) {
      int end = Math.min(levels.size(), i + LEVELS_A_LINE);
      lines.add(line(i == 0 ? "levels" : "", String.join(", ", levels.subList(i, end))));
    }
  }

  /** Only what is far from the user's own nights. */
  private void unusual(Usual usual) {
    List<String> texts =
        usual == null
            ? List.of()
            : usual.figures().stream()
                .filter(Usual.Figure::farOff)
                .map(figure -> figure.name() + " " + figure.text())
                .toList();
    if (!texts.isEmpty()) {
      wrapped("unusual", String.join("; ", texts));
    }
  }

  private void level(List<String> levels, String about, Judgement judgement) {
    if (judgement != null) {
      levels.add(about + " " + level(judgement.level()));
    }
  }

  private void figures(NightResult result) {
    NightSummary night = result.night();
    if (night.guided() != null) {
      lines.add(
          line(
              "star",
              format(
                  "%.2f arcsec RMS about its place (RA %.2f, Dec %.2f)",
                  night.guided().rmsRadialArcsec(),
                  night.guided().ra().rmsArcsec(),
                  night.guided().dec().rmsArcsec())));
    }
    unusual(result.usual());
    wrapped("period", periodic(night.periodic()));
    wrapped("drift", drift(night.driftArcsecPerMinuteSky()));
    if (result.exposures() != null) {
      wrapped("stars", ExposureCounts.of(result.exposures()).words());
    }
  }

  /** Breaks a text between words, later lines below the first. */
  private void wrapped(String label, String text, Style... styles) {
    int room = WIDTH - BELOW_LABEL.length();
    String lead = line(label, "");
    String rest = text;
    while (!rest.isEmpty()) {
      int space = rest.lastIndexOf(' ', room);
      int end = rest.length() <= room || space <= 0 ? rest.length() : space;
      lines.add(lead + styled(rest.substring(0, end), styles));
      rest = rest.substring(end).strip();
      lead = BELOW_LABEL;
    }
  }

  private String styled(String text, Style... styles) {
    // Switching bold off by its own code underlines twice on many terminals.
    boolean plain = styles.length == 0 || !ansi.enabled();
    return plain ? text : Style.on(styles) + text + Style.reset.on();
  }

  private String level(Level level) {
    return switch (level) {
      case FIX_FIRST -> styled(word(level), Style.bold, Style.fg_red);
      case WORTH_FIXING -> styled(word(level), Style.fg_yellow);
      case WATCH, CANNOT_TELL -> word(level);
      case FINE -> styled(word(level), Style.fg_green);
    };
  }

  /** {@code FIX_FIRST} becomes {@code fix first}. */
  private static String word(Level level) {
    return level.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String periodic(Periodic periodic) {
    if (periodic == null) {
      return "not known; the report says why";
    }
    if (periodic.peakToPeakArcsecAxis() == null) {
      return "nothing stands out of wander and noise, or too few turns; the report says more";
    }
    return Decimals.text(periodic.peakToPeakArcsecAxis())
        + " arcsec peak to peak, most at "
        + format("%.1f s", periodic.components().get(0).periodSeconds().value());
  }

  private static String drift(AxisDrift drift) {
    if (drift.ra() == null && drift.dec() == null) {
      return "not known; the report says why";
    }
    if (drift.ra() != null && drift.dec() != null) {
      return "east "
          + Decimals.text(drift.ra())
          + ", north "
          + Decimals.text(drift.dec())
          + " arcsec/min";
    }
    return drift("east", drift.ra()) + ", " + drift("north", drift.dec());
  }

  private static String drift(String direction, Estimate drift) {
    return direction + " " + (drift == null ? "not known" : Decimals.text(drift) + " arcsec/min");
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
