package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NightResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is open on a night's page and what is folded, and in which order; decided here alone. One
 * section per cause that matters, in the order of the findings, which weigh what each cause costs:
 * the finding's evidence, the charts and tables of what was measured, what to do. Then what answers
 * the reader's own question or sums up. A measurement that no such cause rests on is folded.
 *
 * @param open causes in order of weight, then exposures and budget
 * @param folded everything else that was measured
 */
record CauseSections(List<Section> open, List<Section> folded) {
  /** Section of a page that shows what a finding rests on. */
  private static final Map<String, String> MEASURED =
      Map.ofEntries(
          Map.entry("periodic-error", "periodic"),
          Map.entry("polar-axis", "polar-axis"),
          Map.entry("field-rotation", "polar-axis"),
          Map.entry("tracking-rate", "drift"),
          Map.entry("seeing-bound", "seeing"),
          Map.entry("clouds", "jolts"),
          Map.entry("jolts", "jolts"),
          Map.entry("stuck-star", "jolts"),
          Map.entry("pulse-strength", "pulses"),
          Map.entry("pixel-scale", "pulses"),
          Map.entry("camera-angle", "pulses"),
          Map.entry("axis-imbalance", "pulses"),
          Map.entry("dec-backlash", "pulses"),
          Map.entry("over-correction", "replay"),
          Map.entry("under-correction", "replay"),
          Map.entry("slow-settling", "loop"),
          Map.entry("differential-flexure", "exposures"),
          Map.entry("differential-refraction", "exposures"),
          Map.entry("atmospheric-dispersion", "exposures"),
          Map.entry("optics", "exposures"),
          Map.entry("log-too-short", "rows"));

  /** Shown whether or not a cause rests on them. */
  private static final Set<String> ALWAYS_OPEN =
      Set.of("exposures", "planning", "fields", "flip", "usual", "budget");

  /** Headings that would tell the title of their cause over again. */
  private static final Set<String> HEADED_ALIKE =
      Set.of("periodic", "polar-axis", "drift", "jolts", "replay", "rows");

  CauseSections {
    open = List.copyOf(open);
    folded = List.copyOf(folded);
  }

  /** Sorts what was measured, given in the order in which it is folded. */
  static CauseSections of(NightResult result, List<Section> measured) {
    Map<String, Section> left = new LinkedHashMap<>();
    measured.forEach(section -> left.put(section.id(), section));
    List<Section> open = new ArrayList<>();
    List<String> codes = new ArrayList<>();
    for (Finding finding : FindingSections.findings(result)) {
      if (finding.level().atLeast(Level.WATCH)) {
        Section seen = left.remove(MEASURED.getOrDefault(finding.code(), ""));
        open.add(cause(finding, seen, open.size() + 1));
        codes.add(finding.code());
      }
    }
    for (Section section : measured) {
      if (ALWAYS_OPEN.contains(section.id()) && left.remove(section.id()) != null) {
        open.add(section);
      }
    }
    List<Section> folded = new ArrayList<>(left.values());
    LentCharts.lend(codes, open, folded);
    return new CauseSections(open, folded);
  }

  private static Section cause(Finding finding, Section seen, int number) {
    List<Block> blocks = new ArrayList<>(List.of(FindingSections.evidence(finding)));
    if (seen != null) {
      if (!HEADED_ALIKE.contains(seen.id())) {
        blocks.add(Block.text(Sentences.whole(seen.heading())));
      }
      seen.blocks().stream().filter(block -> block.steps() == null).forEach(blocks::add);
      seen.blocks().stream().filter(block -> block.steps() != null).forEach(blocks::add);
    }
    if (seen == null || !toldInFull(finding, seen)) {
      FindingSections.advice(finding).ifPresent(blocks::add);
    }
    String id = seen == null ? "finding-" + number : seen.id();
    return new Section(id, finding.title(), blocks);
  }

  /** Whether what was measured comes with the same advice, in finer steps. */
  private static boolean toldInFull(Finding finding, Section seen) {
    return seen.id().equals(finding.code())
        && seen.blocks().stream()
            .anyMatch(block -> block.steps() != null && !block.steps().isEmpty());
  }
}
