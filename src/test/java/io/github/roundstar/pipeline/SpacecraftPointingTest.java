package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The pointing of a spacecraft in two axes, pushed back by its thrusters about every six hours,
 * goes through the whole analysis as an unguided recording. Data: NASA K2 Campaign 5, EPIC
 * 211436265 (MAST), and the K2 engineering test of Vanderburg &amp; Johnson 2014, PASP 126, 948.
 * Figures: computed independently with Astropy 5.2 and NumPy 1.24; thruster interval of about six
 * hours: Van Cleve et al. 2016, PASP 128, 965. Pixels stand for arcseconds.
 */
@Tag("reference-data")
@Tag("published")
class SpacecraftPointingTest {
  private static final double HOURS = 3600;

  @TempDir Path folder;

  @Test
  void campaignHasThePublishedScatterDriftAndCorrectionPeriod() throws Exception {
    NightResult result =
        analyse("k2_c05_211436265.csv", 1, 2, fields -> Integer.parseInt(fields[3].strip()) == 0);
    RunResult run = result.runs().get(0);

    assertThat(run.counts().used()).isEqualTo(3253);
    assertThat(run.guided().ra().rmsArcsec()).isCloseTo(0.301868556, within(1e-8));
    assertThat(run.guided().dec().rmsArcsec()).isCloseTo(0.266387699, within(1e-8));
    double perHour = 60;
    assertThat(run.guided().ra().driftArcsecPerMinute().value() * perHour)
        .isCloseTo(-3.98372707e-4, within(1e-10));
    assertThat(run.guided().dec().driftArcsecPerMinute().value() * perHour)
        .isCloseTo(-3.48486973e-4, within(1e-10));
    System.out.println(run.driftArcsecPerMinuteSky());
    run.periodic().components().forEach(System.out::println);
    Optional<Component> thrusters =
        run.periodic().components().stream()
            .filter(c -> Math.abs(c.periodSeconds().value() / HOURS - 5.88) < 0.03)
            .findFirst();
    assertThat(thrusters).isPresent();
    assertThat(thrusters.get().falseAlarm()).isLessThan(1e-6);
  }

  @Test
  void engineeringTestHasNoPeriod() throws Exception {
    NightResult result = analyse("k2_eng_ep60021426.csv", 1, 2, fields -> true);
    RunResult run = result.runs().get(0);

    assertThat(run.counts().used()).isEqualTo(307);
    assertThat(run.guided().ra().rmsArcsec()).isCloseTo(0.0930234606, within(1e-9));
    assertThat(run.guided().dec().rmsArcsec()).isCloseTo(0.135092728, within(1e-9));
    run.periodic().components().forEach(System.out::println);
    assertThat(run.periodic().components()).isEmpty();
    assertThat(result.notComputed())
        .anyMatch(gap -> gap.figure().endsWith("/periodic/peakToPeakArcsecAxis"));
  }

  /** Brings a series into a guide table, all pulses zero, and analyses it. */
  private NightResult analyse(String name, int east, int north, Predicate<String[]> kept)
      throws Exception {
    Path table = folder.resolve(name.replace(".csv", ".ecsv"));
    StringBuilder text = new StringBuilder();
    text.append("# %ECSV 1.0\n# ---\n# datatype:\n");
    text.append("# - {name: time, unit: s, datatype: float64}\n");
    text.append("# - {name: ra_offset, unit: pix, datatype: float64}\n");
    text.append("# - {name: dec_offset, unit: pix, datatype: float64}\n");
    text.append("# - {name: ra_pulse, unit: ms, datatype: float64}\n");
    text.append("# - {name: dec_pulse, unit: ms, datatype: float64}\n");
    text.append("# delimiter: ','\n# meta: {guide_scale: 1, declination: 0}\n");
    text.append("time,ra_offset,dec_offset,ra_pulse,dec_pulse\n");
    for (String line : rows(name)) {
      String[] fields = line.split(",");
      if (kept.test(fields)) {
        text.append(
            String.format(
                Locale.ROOT,
                "%.6f,%s,%s,0,0%n",
                Double.parseDouble(fields[0]) * HOURS,
                fields[east],
                fields[north]));
      }
    }
    Files.writeString(table, text);
    AnalysisOutcome outcome =
        Analysis.run(
            new AnalysisJob(
                List.of(table.toString()),
                Optional.empty(),
                folder.resolve("out"),
                Optional.empty(),
                true,
                "test"));
    assertThat(outcome.unusable()).isEmpty();
    return outcome.nights().get(0).result();
  }

  private static List<String> rows(String name) throws IOException {
    String named = System.getenv("ROUNDSTAR_REFERENCE_DATA");
    Path data = named == null ? Path.of("..", "shared", "data") : Path.of(named);
    List<String> lines = Files.readAllLines(data.resolve(name));
    return lines.subList(1, lines.size());
  }
}
