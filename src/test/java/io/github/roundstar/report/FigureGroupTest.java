package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.NotComputed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said of several figures is said once, with plain names for JSON Pointers. */
class FigureGroupTest {
  @Test
  void oneReasonGathersItsFigures() {
    assertThat(
            groups(
                new NotComputed("/night/periodic", "too short"),
                new NotComputed("/polarAxis", "no drift"),
                new NotComputed("/runs/*/backlashArcsecAxis/ra", "too short")))
        .containsExactly(
            new FigureGroup(
                List.of("periodic error over the night", "backlash in RA"), "too short"),
            new FigureGroup(List.of("polar axis"), "no drift"));
  }

  @Test
  void nightAndEveryRunAreOneFigure() {
    assertThat(
            groups(
                new NotComputed("/night/periodic", "too short"),
                new NotComputed("/runs/*/periodic", "too short")))
        .containsExactly(new FigureGroup(List.of("periodic error"), "too short"));
  }

  @Test
  void singleRunsAreNumberedFromOne() {
    assertThat(
            groups(
                new NotComputed("/runs/0/guided", "no frame"),
                new NotComputed("/runs/2/guided", "no frame")))
        .containsExactly(new FigureGroup(List.of("star motion (runs 1, 3)"), "no frame"));
  }

  @Test
  void nightDoesNotHideSingleRuns() {
    assertThat(
            groups(
                new NotComputed("/night/guided", "no frame"),
                new NotComputed("/runs/1/guided", "no frame")))
        .containsExactly(
            new FigureGroup(List.of("star motion over the night (run 2)"), "no frame"));
  }

  private static List<FigureGroup> groups(NotComputed... entries) {
    return FigureGroup.of(List.of(entries), NotComputed::figure, NotComputed::because);
  }
}
