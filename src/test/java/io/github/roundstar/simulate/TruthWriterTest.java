package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.TomlTable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The truth file holds the figures of the night as readable TOML. */
@Tag("identity")
class TruthWriterTest {
  @Test
  void figuresComeBack() throws FormatException, IOException {
    Scenario scenario =
        ScenarioReader.parse(
            "test.toml",
            """
            polar_axis.azimuth_arcmin = 7.25
            mount.worm_period_s = 479
            mount.harmonic = [{ order = 2, amplitude_arcsec = 1.5 }]
            knock = [{ at_min = 1, ra_arcsec = 3, dec_arcsec = 4 }]
            run = [{ duration_min = 10, declination_deg = 60, pier_side = "east" }]
            """);
    StringBuilder out = new StringBuilder();
    TruthWriter.write(Simulation.run(scenario), out);
    TomlTable truth = TomlTable.read("truth.toml", out.toString().getBytes(StandardCharsets.UTF_8));
    TomlTable run = truth.table("run").table("1");

    assertThat(truth.table("polar_axis").number("azimuth_arcmin", -99, 99)).hasValue(7.25);
    assertThat(truth.table("mount").table("harmonic_amplitude_arcsec_axis").number("2", 0, 9))
        .hasValue(1.5);
    assertThat(run.text("pier_side")).contains("east");
    // Half the sidereal rate, times the cosine of 60 degrees.
    assertThat(run.table("ra").number("response_east_arcsec_per_s_sky", 0, 9)).hasValue(3.7603);
    assertThat(run.tables("event").get(0).number("size", 0, 9)).hasValue(5);
  }
}
