package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Charts for causes whose own measurement has none: the last chart of another section moves to the
 * cause, with the words about it, so that it stands once on the page. Where no chart shows more
 * than the timeline or the footprints, a sentence says so.
 */
final class LentCharts {
  private static final String SCATTER = "star";

  /** Section that lends its last chart; the scatter of the offsets shows what the star did. */
  private static final Map<String, String> LENDERS =
      Map.ofEntries(
          Map.entry("field-rotation", "polar-axis"),
          Map.entry("seeing-bound", SCATTER),
          Map.entry("stuck-star", SCATTER),
          Map.entry("jolts", SCATTER),
          Map.entry("pulse-strength", SCATTER),
          Map.entry("axis-imbalance", SCATTER),
          Map.entry("dec-backlash", SCATTER),
          Map.entry("camera-angle", SCATTER),
          Map.entry("pixel-scale", SCATTER),
          Map.entry("over-correction", SCATTER),
          Map.entry("under-correction", SCATTER));

  private static final Map<String, String> ELSEWHERE =
      Map.of(
          "clouds", "The timeline of the night shows when.",
          "slow-settling", "The timeline of the night shows when, in the row of settling.",
          "log-too-short", "The timeline of the night shows what was logged.",
          "optics", "The footprints of the exposures show it.",
          "differential-flexure", "The footprints of the exposures show it.",
          "differential-refraction", "The footprints of the exposures show it.",
          "atmospheric-dispersion", "The footprints of the exposures show it.");

  private LentCharts() {}

  /**
   * Lends a chart to every cause that lacks one.
   *
   * @param codes the findings of the first sections, in the same order
   * @param open sections with the causes first; changed in place
   * @param folded sections that may lend any chart; changed in place
   */
  static void lend(List<String> codes, List<Section> open, List<Section> folded) {
    for (int i = 0; i < codes.size(); i++) {
      if (charts(open.get(i)) == 0) {
        String lender = LENDERS.getOrDefault(codes.get(i), "");
        List<Block> lent = taken(lender, folded, 1);
        if (lent.isEmpty()) {
          lent = taken(lender, open, 2);
        }
        if (lent.isEmpty() && ELSEWHERE.containsKey(codes.get(i))) {
          lent = List.of(Block.text(ELSEWHERE.get(codes.get(i))));
        }
        open.set(i, with(open.get(i), lent));
      }
    }
  }

  /** The block of the last chart, taken out of its section; nothing where there are fewer. */
  private static List<Block> taken(String id, List<Section> sections, int least) {
    for (int i = 0; i < sections.size(); i++) {
      Section section = sections.get(i);
      if (section.id().equals(id) && charts(section) >= least) {
        List<Block> kept = new ArrayList<>(section.blocks());
        int last = kept.size() - 1;
        while (kept.get(last).chart() == null) {
          last--;
        }
        Block lent = kept.remove(last);
        if (lent.table() != null) {
          kept.add(last, Block.text().with(lent.table()));
        }
        sections.set(i, new Section(id, section.heading(), kept));
        return List.of(new Block(lent.sentences(), lent.chart(), null, null, null));
      }
    }
    return List.of();
  }

  /** After what was measured, before what to do. */
  private static Section with(Section cause, List<Block> lent) {
    List<Block> blocks = new ArrayList<>(cause.blocks());
    int at = 0;
    while (at < blocks.size() && blocks.get(at).steps() == null) {
      at++;
    }
    blocks.addAll(at, lent);
    return new Section(cause.id(), cause.heading(), blocks);
  }

  private static long charts(Section section) {
    return section.blocks().stream().filter(block -> block.chart() != null).count();
  }
}
