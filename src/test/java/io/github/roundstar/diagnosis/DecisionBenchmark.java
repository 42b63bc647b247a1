package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often the leading finding names the fault that was played: the confusion table of single
 * faults and sound nights, and nights of two faults. Written to {@code reports/leading-finding.md}
 * by the command in DEVELOPERS.md; {@code -Dnights=N} plays fewer nights of each kind, {@code
 * -Dfault=NAME,NAME} some kinds only, {@code -Dfault=pairs} two faults only.
 */
@Tag("long")
class DecisionBenchmark {
  private static final String NONE = "nothing";
  private static final String CANNOT_TELL = "cannot tell";
  private static final int FIRST = 3;

  /** Faults that can be told apart in one night; the second one is drawn after the first. */
  private static final List<List<Fault>> PAIRS =
      List.of(
          List.of(Fault.PERIODIC_ERROR, Fault.DEC_BACKLASH),
          List.of(Fault.PERIODIC_ERROR, Fault.JOLTS),
          List.of(Fault.CAMERA_ANGLE, Fault.PERIODIC_ERROR),
          List.of(Fault.PERIODIC_ERROR, Fault.POLAR_AXIS),
          List.of(Fault.CLOUDS, Fault.PERIODIC_ERROR),
          List.of(Fault.SLOW_SETTLING, Fault.PERIODIC_ERROR),
          List.of(Fault.PERIODIC_ERROR, Fault.DIFFERENTIAL_FLEXURE),
          List.of(Fault.PERIODIC_ERROR, Fault.OPTICS),
          List.of(Fault.CAMERA_ANGLE, Fault.DIFFERENTIAL_FLEXURE),
          List.of(Fault.CLOUDS, Fault.OPTICS));

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
    Map<Fault, Integer> fixFirst = new EnumMap<>(Fault.class);
    List<String> pairs = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      if (only.isEmpty() || List.of(only.split(",")).contains(fault.name())) {
        Map<String, Integer> row = new TreeMap<>();
        for (List<Finding> findings : played(fault)) {
          row.merge(leading(fault, findings), 1, Integer::sum);
          boolean first = findings.get(0).level() == Level.FIX_FIRST;
          fixFirst.merge(fault, first ? 1 : 0, Integer::sum);
        }
        table.put(fault, row);
        write(table, fixFirst, pairs);
      }
    }
    if (only.isEmpty() || only.equals("pairs")) {
      for (List<Fault> pair : PAIRS) {
        pairs.add(row(pair));
        write(table, fixFirst, pairs);
      }
    }
    assertThat(table.size() + pairs.size()).isPositive();
  }

  /** Findings of the nights of one kind, two nights at a time. */
  private List<List<Finding>> played(Fault... faults) {
    return IntStream.rangeClosed(1, nights)
        .parallel()
        .mapToObj(seed -> findings(seed, faults))
        .toList();
  }

  private String row(List<Fault> pair) {
    List<String> wanted = pair.stream().map(Fault::code).toList();
    long both =
        played(pair.toArray(Fault[]::new)).stream()
            .filter(findings -> first(findings).containsAll(wanted))
            .count();
    return String.format(
        Locale.ROOT, "| %s and %s | %d of %d |", wanted.get(0), wanted.get(1), both, nights);
  }

  private static List<String> first(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> finding.level().atLeast(Level.WATCH))
        .limit(FIRST)
        .map(Finding::code)
        .toList();
  }

  /** The findings of a night with some faults. */
  static List<Finding> findings(int seed, Fault... faults) {
    PlayedNight played = PlayedNight.sound(1000L * faults[0].ordinal() + seed);
    if (faults.length > 1) {
      played.withTwoFaults();
    }
    for (Fault fault : faults) {
      fault.add(played);
    }
    SimulatedNight simulated = played.night();
    List<GuideRun> runs = simulated.runs().stream().map(SimulatedRun::log).toList();
    try {
      Optional<MainCamera> camera =
          played.camera.isEmpty() ? Optional.empty() : Optional.of(PlayedCamera.of(simulated));
      String equipment = played.camera.map(c -> c.equipment(EQUIPMENT)).orElse(EQUIPMENT);
      Night night = new Night("played", runs, List.of());
      return NightAnalysis.of(night, equipment(equipment), "test", true, camera, new Faults())
          .result()
          .findings();
    } catch (IOException | FormatException | UnusableInputException e) {
      throw new IllegalStateException(e);
    }
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

  private void write(
      Map<Fault, Map<String, Integer>> table, Map<Fault, Integer> fixFirst, List<String> pairs)
      throws Exception {
    TreeSet<String> codes = new TreeSet<>();
    table.values().forEach(row -> codes.addAll(row.keySet()));
    StringBuilder text = new StringBuilder("# How often the leading finding is right\n\n");
    text.append(
        "Invented nights, fixed seeds, one fault of 2 to 6 times the size that makes its finding come"
            + " first. Rows: what was played; columns: what led.\n\n| played | nights | right |");
    codes.forEach(code -> text.append(' ').append(code).append(" |"));
    text.append("\n|---|---|---|").append("---|".repeat(codes.size())).append('\n');
    table.forEach(
        (fault, row) -> {
          text.append("| ").append(name(fault)).append(" | ").append(nights).append(" | ");
          text.append(fault.code().isEmpty() ? "" : row.getOrDefault(fault.code(), 0)).append(" |");
          codes.forEach(
              code ->
                  text.append(' ').append(row.containsKey(code) ? row.get(code) : "").append(" |"));
          text.append('\n');
        });
    for (Fault fault : List.of(Fault.HEALTHY, Fault.HEALTHY_WITH_EXPOSURES)) {
      if (table.containsKey(fault)) {
        text.append(
            String.format(
                Locale.ROOT,
                "%nNights called %s with a finding to fix first: %d of %d.%n",
                name(fault),
                fixFirst.get(fault),
                nights));
      }
    }
    if (!pairs.isEmpty()) {
      text.append(
          "\n| two faults, 1.3 to 1.7 times that size | both among the first three |\n|---|---|\n");
      pairs.forEach(row -> text.append(row).append('\n'));
    }
    Path file = Path.of(System.getProperty("decisions", "reports/leading-finding.md"));
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.writeString(file, text);
  }

  private static String name(Fault fault) {
    return switch (fault) {
      case HEALTHY -> "sound";
      case HEALTHY_WITH_EXPOSURES -> "sound, with exposures";
      default -> fault.code();
    };
  }

  private static Equipment equipment(String text)
      throws IOException, FormatException, UnusableInputException {
    Path file = Files.createTempFile("equipment", ".toml");
    try {
      Files.writeString(file, text);
      return EquipmentReader.read(file);
    } finally {
      Files.delete(file);
    }
  }
}
