package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often the leading finding names the fault that was played: the confusion table of single
 * faults and sound nights, and nights of two faults. Written to {@code reports/decisions.md} by the
 * command in DEVELOPERS.md; {@code -Dnights=N} plays fewer nights of each kind, {@code
 * -Dfault=NAME} one kind only.
 */
@Tag("long")
class DecisionBenchmark {
  private static final String NONE = "nothing";
  private static final String CANNOT_TELL = "cannot tell";
  private static final int FIRST = 3;

  private final int nights = Integer.getInteger("nights", 100);
  private final String only = System.getProperty("fault", "");

  static final String EQUIPMENT =
      """
      [site]
      latitude_deg = 47.2
      longitude_deg = 11.6
      [mount]
      worm_period_s = 478.7
      guide_rate = 0.5
      [imaging]
      focal_length_mm = 750
      pixel_um = 3.8
      width_px = 6000
      height_px = 4000
      exposure_s = 300
      [sky]
      seeing_fwhm_arcsec = 2.5
      """;

  @Test
  void leadingFindingNamesTheFault() throws Exception {
    Map<Fault, Map<String, Integer>> table = new EnumMap<>(Fault.class);
    int soundFixFirst = 0;
    for (Fault fault : Fault.values()) {
      if (only.isEmpty() || only.equals(fault.name())) {
        Map<String, Integer> row = new TreeMap<>();
        for (int seed = 1; seed <= nights; seed++) {
          List<Finding> findings = findings(seed, fault);
          row.merge(leading(fault, findings), 1, Integer::sum);
          boolean first = findings.get(0).level() == Level.FIX_FIRST;
          soundFixFirst += fault == Fault.HEALTHY && first ? 1 : 0;
        }
        table.put(fault, row);
      }
    }
    List<String> pairs = only.isEmpty() ? pairs() : List.of();
    write(table, soundFixFirst, pairs);
    assertThat(table).isNotEmpty();
  }

  /** Faults that can be told apart in one night; the second one is drawn after the first. */
  private List<String> pairs() throws Exception {
    List<List<Fault>> pairs =
        List.of(
            List.of(Fault.PERIODIC_ERROR, Fault.DEC_BACKLASH),
            List.of(Fault.PERIODIC_ERROR, Fault.JOLTS),
            List.of(Fault.CAMERA_ANGLE, Fault.PERIODIC_ERROR),
            List.of(Fault.PERIODIC_ERROR, Fault.POLAR_AXIS),
            List.of(Fault.CLOUDS, Fault.PERIODIC_ERROR),
            List.of(Fault.SLOW_SETTLING, Fault.PERIODIC_ERROR));
    List<String> rows = new ArrayList<>();
    for (List<Fault> pair : pairs) {
      int both = 0;
      for (int seed = 1; seed <= nights; seed++) {
        List<String> first =
            findings(seed, pair.toArray(Fault[]::new)).stream()
                .filter(finding -> finding.level().atLeast(Level.WATCH))
                .limit(FIRST)
                .map(Finding::code)
                .toList();
        both += first.containsAll(pair.stream().map(Fault::code).toList()) ? 1 : 0;
      }
      rows.add(
          String.format(
              Locale.ROOT,
              "| %s and %s | %d of %d |",
              pair.get(0).code(),
              pair.get(1).code(),
              both,
              nights));
    }
    return rows;
  }

  /** The findings of a night with some faults. */
  static List<Finding> findings(int seed, Fault... faults) throws Exception {
    PlayedNight played = PlayedNight.sound(1000L * faults[0].ordinal() + seed);
    if (faults.length > 1) {
      played.withTwoFaults();
    }
    for (Fault fault : faults) {
      fault.add(played);
    }
    Night night = new Night("played", List.of(played.run().log()), List.of());
    return NightAnalysis.of(night, equipment(), "test", true).result().findings();
  }

  /** The code that leads; of a sound night what comes first, or nothing. */
  static String leading(Fault fault, List<Finding> findings) {
    Finding first = findings.get(0);
    if (first.level().atLeast(Level.WATCH)) {
      return first.code();
    }
    boolean unknown =
        findings.stream()
            .anyMatch(f -> f.code().equals(fault.code()) && f.level() == Level.CANNOT_TELL);
    return unknown ? CANNOT_TELL : NONE;
  }

  private void write(Map<Fault, Map<String, Integer>> table, int soundFixFirst, List<String> pairs)
      throws Exception {
    TreeSet<String> codes = new TreeSet<>();
    table.values().forEach(row -> codes.addAll(row.keySet()));
    StringBuilder text = new StringBuilder("# How often the leading finding is right\n\n");
    text.append(nights)
        .append(
            " invented nights of each kind, fixed seeds, one fault of 2 to 6 times the size that"
                + " makes its finding come first. Rows: what was played; columns: what led.\n\n| played |"
                + " right |");
    codes.forEach(code -> text.append(' ').append(code).append(" |"));
    text.append("\n|---|---|").append("---|".repeat(codes.size())).append('\n');
    table.forEach(
        (fault, row) -> {
          text.append("| ").append(fault == Fault.HEALTHY ? "sound" : fault.code()).append(" | ");
          text.append(fault == Fault.HEALTHY ? "" : row.getOrDefault(fault.code(), 0)).append(" |");
          codes.forEach(
              code ->
                  text.append(' ').append(row.containsKey(code) ? row.get(code) : "").append(" |"));
          text.append('\n');
        });
    if (table.containsKey(Fault.HEALTHY)) {
      text.append("\nSound nights with a finding to fix first: ")
          .append(soundFixFirst)
          .append(" of ")
          .append(nights)
          .append(".\n");
    }
    if (!pairs.isEmpty()) {
      text.append(
          "\n| two faults, 1.3 to 1.7 times that size | both among the first three |\n|---|---|\n");
      pairs.forEach(row -> text.append(row).append('\n'));
    }
    Path file = Path.of(System.getProperty("decisions", "reports/decisions.md"));
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.writeString(file, text);
  }

  static Equipment equipment() throws Exception {
    Path file = Files.createTempFile("equipment", ".toml");
    try {
      Files.writeString(file, EQUIPMENT);
      return EquipmentReader.read(file);
    } finally {
      Files.delete(file);
    }
  }
}
