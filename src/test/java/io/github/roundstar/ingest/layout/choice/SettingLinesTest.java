package io.github.roundstar.ingest.layout.choice;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.Setting;
import io.github.roundstar.ingest.layout.SettingRule;
import io.github.roundstar.ingest.layout.TimeForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A setting is found by its word and unit; what only looks like one is left, or asked about. */
class SettingLinesTest {
  private static final TimeForm TIME =
      new TimeForm(TimeForm.Kind.JD, TimeForm.DateOrder.YMD, Optional.empty(), Optional.empty());

  private final List<Decision> decisions = new ArrayList<>();

  private List<SettingRule> rules(String... lines) {
    return new SettingLines(false, false, decisions).rules(List.of(lines), TIME);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Image scale: 1.85 arcsec/px|SCALE|1.85|arcsec/px",
        "target declination = -12d30m|DECLINATION|-12d30|deg",
        "Right ascension 05:31:02|RIGHT_ASCENSION|05:31:02|h",
        "RA 82.7 deg|RIGHT_ASCENSION|82.7|deg",
        "guide rate 50 %|GUIDE_RATE|50|percent",
        "guiding speed 7.52 arcsec/s|GUIDE_RATE|7.52|arcsec/s",
        "Guide exposure 1500 ms|EXPOSURE|1500|ms",
        "tube side: East|PIER_SIDE|East|",
        "focal length 240 mm|FOCAL_LENGTH|240|mm"
      })
  void settingIsFound(String line, Setting means, String value, String unit) {
    List<SettingRule> rules = rules(line);

    assertThat(rules).hasSize(1);
    assertThat(rules.get(0).means()).isEqualTo(means);
    assertThat(rules.get(0).unit()).isEqualTo(Optional.ofNullable(unit));
    assertThat(
            rules
                .get(0)
                .line()
                .orElseThrow()
                .find(line)
                .flatMap(m -> LinePattern.group(m, "value")))
        .contains(value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "gain ra 0.6 dec 0.5",
        "deadband: RA 0.15, Dec 0.3",
        "frame rate 0.5",
        "wind speed 0.8",
        "main exposure 20 s",
        "decimal places 3",
        "dec pulse limit 1000"
      })
  void whatOnlySoundsLikeASettingIsNone(String line) {
    assertThat(rules(line)).isEmpty();
    assertThat(decisions).isEmpty();
  }

  @Test
  void lineThatOnlySoundsLikeASettingIsTheRunnerUpOfTheOneThatTellsIt() {
    rules("exposure of the main camera 300 s", "exposure 2 s");

    assertThat(decisions).hasSize(1);
    assertThat(decisions.get(0).chosen()).isEqualTo("2 s");
    assertThat(decisions.get(0).runnerUp()).contains("300", "exposure of the main camera");
  }

  @Test
  void valueWithoutItsUnitIsAskedAboutWhereTwoUnitsFit() {
    assertThat(rules("hour angle 1.5", "guide rate 7.5", "RA 5.5", "exposure 60")).isEmpty();
    assertThat(decisions)
        .extracting(Decision::about, Decision::sure)
        .allMatch(t -> t.toList().get(1) == Decision.Sureness.OPEN)
        .hasSize(4);
  }
}
