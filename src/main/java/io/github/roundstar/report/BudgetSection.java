package io.github.roundstar.report;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Cell;
import io.github.roundstar.report.Page.Column;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.Page.Table;
import io.github.roundstar.report.chart.BudgetChart;
import io.github.roundstar.report.words.Causes;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the scatter about the set point is made of. */
final class BudgetSection {
  /** A remainder above this share of the whole is pointed at. */
  private static final double LARGE_REMAINDER = 0.1;

  /** Less than these shows as zero. */
  private static final double LEAST_ARCSEC2 = 0.0005;

  private static final double LEAST_SHARE = 0.005;

  private static final List<Column> COLUMNS =
      List.of(
          Column.words("cause"),
          Column.numbers("RA", "arcsec\u00b2"),
          Column.numbers("share within an exposure", "RA"),
          Column.numbers("Dec", "arcsec\u00b2"),
          Column.numbers("share within an exposure", "Dec"));

  private BudgetSection() {}

  static Section of(NightResult result, Charts charts) {
    List<RunResult> known = result.runs().stream().filter(BudgetSection::known).toList();
    if (known.isEmpty()) {
      String reason =
          new Reasons(result.notComputed()).sentence("/runs/*/budget/ra", "/runs/*/budget");
      return new Section(
          "budget", "What the scatter is made of cannot be told", List.of(Block.text(reason)));
    }
    RunResult longest =
        known.stream().max(Comparator.comparingInt(run -> run.counts().used())).orElseThrow();
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.text(sentences(longest, known.size() > 1).toArray(String[]::new))
            .with(charts.of("the budget", () -> BudgetChart.draw(longest.budget())))
            .with(table(longest, known.size() > 1)));
    if (known.size() > 1) {
      blocks.add(Block.text().with(others(known.stream().filter(r -> r != longest).toList())));
    }
    return new Section("budget", heading(longest), blocks);
  }

  private static boolean known(RunResult run) {
    return run.budget() != null && (run.budget().ra() != null || run.budget().dec() != null);
  }

  private static String heading(RunResult run) {
    String ra = largest(run.budget().ra());
    String dec = largest(run.budget().dec());
    String most =
        ra.equals(dec)
            ? ra + " in both axes"
            : Stream.of(ra.isEmpty() ? "" : ra + " in RA", dec.isEmpty() ? "" : dec + " in Dec")
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    return "What changes within an exposure is mostly " + most;
  }

  /** The cause of most of what changes within an exposure; empty where it is not known. */
  static String largest(List<BudgetPart> parts) {
    if (parts == null) {
      return "";
    }
    Map<String, Double> shares = new TreeMap<>();
    parts.forEach(
        part -> shares.merge(Causes.kind(part.cause()), part.shareOfTrailing(), Double::sum));
    return shares.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse("");
  }

  private static List<String> sentences(RunResult run, boolean several) {
    List<String> sentences = new ArrayList<>();
    if (several) {
      sentences.add("Chart and first table are those of run " + run.id() + ", the longest.");
    }
    sentences.add(
        "The parts add up to the mean square of the offsets. A part below zero belongs to a cause"
            + " that happened to work against the others.");
    sentences.add(
        "What stays the same over an exposure trails nothing, so the shares are those of what"
            + " changes within one.");
    sentences.add(
        "Noise counts here as the log shows it: the error of measuring, which trails nothing, and"
            + " the motion that the loop makes out of it.");
    left(run.budget()).ifPresent(sentences::add);
    remainder(sentences, "RA", run.budget().ra());
    remainder(sentences, "Dec", run.budget().dec());
    return sentences;
  }

  private static void remainder(List<String> sentences, String axis, List<BudgetPart> parts) {
    if (parts == null) {
      return;
    }
    double whole = parts.stream().mapToDouble(BudgetPart::meanSquareArcsec2).sum();
    double rest =
        parts.stream()
            .filter(part -> part.cause().equals("remainder"))
            .mapToDouble(BudgetPart::meanSquareArcsec2)
            .sum();
    if (Math.abs(rest) > LARGE_REMAINDER * whole) {
      sentences.add(
          axis
              + ": "
              + Numbers.percent(rest / whole)
              + " is not explained, so the other parts may be off by as much.");
    }
  }

  /** The causes that were looked for and add nothing that shows, in one sentence. */
  private static Optional<String> left(Budget budget) {
    List<String> names =
        causes(budget).stream()
            .filter(cause -> !cause.equals("remainder") && nothing(cause, budget))
            .map(Causes::of)
            .toList();
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of("Next to nothing comes from " + Sentences.list(names) + ".");
  }

  private static Set<String> causes(Budget budget) {
    Set<String> causes = new LinkedHashSet<>();
    Stream.of(budget.ra(), budget.dec())
        .filter(parts -> parts != null)
        .forEach(parts -> parts.forEach(part -> causes.add(part.cause())));
    return causes;
  }

  private static Table table(RunResult run, boolean several) {
    Budget budget = run.budget();
    List<String> ordered = new ArrayList<>(causes(budget));
    ordered.remove("remainder");
    ordered.removeIf(cause -> nothing(cause, budget));
    ordered.add("remainder");
    return new Table(
            "Mean square about the set point by cause" + (several ? ", run " + run.id() : ""),
            COLUMNS,
            ordered.stream().map(cause -> row(cause, budget)).toList())
        .withoutEmptyColumns();
  }

  /** Whether a cause would show as zero in every cell. */
  private static boolean nothing(String cause, Budget budget) {
    return Stream.of(budget.ra(), budget.dec())
        .filter(parts -> parts != null)
        .flatMap(List::stream)
        .filter(part -> part.cause().equals(cause))
        .allMatch(BudgetSection::nothing);
  }

  private static boolean nothing(BudgetPart part) {
    return Math.abs(part.meanSquareArcsec2()) < LEAST_ARCSEC2
        && Math.abs(part.shareOfTrailing()) < LEAST_SHARE;
  }

  /** A row a run: the largest part of each axis. */
  private static Table others(List<RunResult> runs) {
    return new Table(
            "The largest part in the other runs",
            List.of(
                Column.numbers("run", ""),
                Column.words("in RA"),
                Column.numbers("share within an exposure", ""),
                Column.words("in Dec"),
                Column.numbers("share within an exposure", "")),
            runs.stream().map(BudgetSection::largest).toList())
        .withoutEmptyColumns();
  }

  private static List<Cell> largest(RunResult run) {
    List<Cell> cells = new ArrayList<>(List.of(Cell.count(run.id())));
    for (List<BudgetPart> parts : Arrays.asList(run.budget().ra(), run.budget().dec())) {
      String kind = largest(parts);
      cells.add(parts == null ? Cell.NOT_KNOWN : Cell.of(kind));
      cells.add(parts == null ? Cell.NOT_KNOWN : Cell.of(Numbers.percent(share(parts, kind))));
    }
    return cells;
  }

  private static double share(List<BudgetPart> parts, String kind) {
    return parts.stream()
        .filter(part -> Causes.kind(part.cause()).equals(kind))
        .mapToDouble(BudgetPart::shareOfTrailing)
        .sum();
  }

  private static List<Cell> row(String cause, Budget budget) {
    List<Cell> cells = new ArrayList<>(List.of(Cell.of(Causes.of(cause))));
    add(cells, cause, budget.ra());
    add(cells, cause, budget.dec());
    return cells;
  }

  private static void add(List<Cell> cells, String cause, List<BudgetPart> parts) {
    Optional<BudgetPart> part =
        parts == null
            ? Optional.empty()
            : parts.stream().filter(p -> p.cause().equals(cause)).findFirst();
    if (parts == null) {
      cells.add(Cell.NOT_KNOWN);
      cells.add(Cell.NOT_KNOWN);
    } else {
      cells.add(Cell.of(part.map(p -> Numbers.fixed(p.meanSquareArcsec2(), 3)).orElse("")));
      cells.add(Cell.of(part.map(p -> Numbers.percent(p.shareOfTrailing())).orElse("")));
    }
  }
}
