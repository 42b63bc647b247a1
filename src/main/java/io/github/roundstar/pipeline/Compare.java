package io.github.roundstar.pipeline;

import io.github.roundstar.compare.Comparison;
import io.github.roundstar.compare.Sides;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.report.ComparePage;
import io.github.roundstar.report.NightPage;
import io.github.roundstar.results.CompareJson;
import io.github.roundstar.results.Faults;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Carries out a comparison: nights in, one page and one JSON result out. */
public final class Compare {
  private Compare() {}

  /**
   * Compares.
   *
   * @throws UnusableInputException when the equipment or layout file cannot be used
   * @throws UnwritableOutputException when the results cannot be written
   */
  public static CompareOutcome run(CompareJob job)
      throws UnusableInputException, UnwritableOutputException {
    Equipment equipment =
        job.equipment().isPresent()
            ? EquipmentReader.read(job.equipment().get())
            : Equipment.UNKNOWN;
    Faults faults = new Faults();
    NightsToCompare nights = new NightsToCompare(job, equipment, new Layouts(job.layout()), faults);
    Sides sides = Sides.of(nights.of(job.before()), nights.of(job.after()));
    List<String> unusable = new ArrayList<>(nights.unusable());
    if (sides.before().isEmpty() || sides.after().isEmpty()) {
      unusable.addAll(sides.noticed());
      unusable.add(none(sides.before().isEmpty() ? "before" : "after"));
      return new CompareOutcome(
          Optional.empty(),
          job.out(),
          job.out(),
          unusable,
          faults.all(),
          nights.lost(),
          nights.noticed());
    }
    Comparison comparison = Comparison.of(sides, nights.noticed(), job.version());
    NightPage.Rendered page =
        ComparePage.render(comparison.result(), comparison.evidence(), faults);
    String stem = "compare-" + sides.before().get(0).night() + "-" + sides.after().get(0).night();
    Path report = job.out().resolve(stem + ".html");
    Path json = job.out().resolve(stem + ".json");
    Map<Path, byte[]> files = new LinkedHashMap<>();
    files.put(report, page.html().getBytes(StandardCharsets.UTF_8));
    files.put(json, CompareJson.write(comparison.result().withFaults(faults.told())));
    FileInPlace.write(files);
    List<String> warnings = new ArrayList<>(comparison.result().noticed());
    page.withoutCharts().ifPresent(warnings::add);
    return new CompareOutcome(
        Optional.of(comparison.result()),
        report,
        json,
        unusable,
        faults.all(),
        nights.lost(),
        warnings);
  }

  private static String none(String side) {
    return "--"
        + side
        + ": no night is left to compare: give at least one log or JSON result for each side";
  }
}
