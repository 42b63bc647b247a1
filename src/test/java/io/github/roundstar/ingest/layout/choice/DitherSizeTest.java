package io.github.roundstar.ingest.layout.choice;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.LinePattern;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sizes of dithers are used only where line, direction and unit leave no doubt. */
class DitherSizeTest {
  private final List<Decision> decisions = new ArrayList<>();

  private Optional<EventRule> rule(String line) {
    return DitherSize.rule(line, "dither", decisions);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "# dither 3.5 arcsec E, -1.25 arcsec N",
        "* dither by 3.5 east and -1.25 north [arcsec]",
        "; Dither east = 3.5\" north = -1.25\"",
      })
  void directionsAndUnitGiveTheSize(String line) {
    Matcher found = rule(line).orElseThrow().line().orElseThrow().find(line).orElseThrow();

    assertThat(LinePattern.group(found, "east")).contains("3.5");
    assertThat(LinePattern.group(found, "north")).contains("-1.25");
    assertThat(decisions).extracting(Decision::sure).containsExactly(Decision.Sureness.CERTAIN);
  }

  @Test
  void sizeWithoutUnitIsNotedAndNotUsed() {
    assertThat(rule("# dither 3.5 E, -1.25 N")).isEmpty();
    assertThat(decisions).extracting(Decision::sure).containsExactly(Decision.Sureness.NOTED);
  }

  @Test
  void sizeWithoutDirectionTellsNothing() {
    assertThat(rule("# dither 3.5 arcsec")).isEmpty();
    assertThat(decisions).isEmpty();
  }
}
