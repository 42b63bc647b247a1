package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.chart.BudgetChart;
import io.github.roundstar.report.chart.Svg;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.NightResult;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Causes are open in the order of the findings; what no cause rests on is folded. */
class CauseSectionsTest {
  private static final List<Section> MEASURED =
      Stream.of("budget", "star", "periodic", "drift", "polar-axis", "jolts")
          .map(id -> new Section(id, "Heading of " + id, List.of(Block.text("About " + id + "."))))
          .toList();

  @Test
  void causesStandInTheOrderOfTheFindingsThenTheBudget() {
    CauseSections sections =
        CauseSections.of(
            night(
                finding("jolts", Level.FIX_FIRST),
                finding("field-rotation", Level.WORTH_FIXING),
                finding("polar-axis", Level.WATCH),
                finding("periodic-error", Level.FINE)),
            MEASURED);

    assertThat(sections.open())
        .extracting(Section::id)
        .containsExactly("jolts", "polar-axis", "finding-3", "budget");
    assertThat(sections.folded())
        .extracting(Section::id)
        .containsExactly("star", "periodic", "drift");
  }

  @Test
  void causeTellsWhyThenWhatWasMeasuredThenWhatToDo() {
    Section loop =
        CauseSections.of(
                night(finding("slow-settling", Level.FIX_FIRST)),
                List.of(new Section("loop", "How the loop guided", List.of(Block.text("Well.")))))
            .open()
            .get(0);

    assertThat(loop.heading()).isEqualTo("Title of slow-settling");
    assertThat(loop.blocks())
        .flatExtracting(Block::sentences)
        .containsExactly(
            "Fix first. It is \u22121.5 arcsec.",
            "How the loop guided.",
            "Well.",
            "The timeline of the night shows when, in the row of settling.",
            "What to do:");
    assertThat(loop.blocks().get(1).steps()).containsExactly("Do it.");
  }

  @Test
  void nothingIsLostInANightThatIsNotJudged() {
    CauseSections sections = CauseSections.of(night(), MEASURED);

    assertThat(sections.open()).extracting(Section::id).containsExactly("budget");
    assertThat(sections.folded()).hasSize(MEASURED.size() - 1);
  }

  @Test
  void chartMovesFromAFoldedSectionToACauseThatHasNone() throws Exception {
    Svg scatter = chart();
    List<Section> measured =
        List.of(new Section("star", "Star", List.of(Block.text("Round.").with(scatter))));
    CauseSections sections =
        CauseSections.of(
            night(finding("seeing-bound", Level.WATCH), finding("slow-settling", Level.WATCH)),
            measured);

    assertThat(sections.open().get(0).blocks()).extracting(Block::chart).containsOnlyOnce(scatter);
    assertThat(sections.open().get(1).blocks())
        .flatExtracting(Block::sentences)
        .contains("The timeline of the night shows when, in the row of settling.");
    assertThat(sections.folded().get(0).blocks()).isEmpty();
  }

  private static Svg chart() throws Exception {
    BudgetPart part = new BudgetPart("noise", 1.0, 1.0);
    return BudgetChart.draw(new Budget(List.of(part), null, 1.0, null)).orElseThrow();
  }

  private static Finding finding(String code, Level level) {
    return new Finding(
        code,
        level,
        "Title of " + code,
        null,
        "It is -1.5 arcsec.",
        List.of("Do it."),
        "",
        null,
        null,
        null,
        null);
  }

  private static NightResult night(Finding... findings) {
    NightResult blank = BlankNight.result();
    return new NightResult(
        blank.schema(),
        blank.version(),
        blank.inputs(),
        blank.night(),
        blank.runs(),
        blank.polarAxis(),
        blank.seeing(),
        blank.exposures(),
        blank.replay(),
        Arrays.asList(findings),
        blank.verdict(),
        blank.notComputed(),
        blank.methods(),
        List.of());
  }
}
