package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.ingest.layout.InventedLog;
import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Files that hold more, or less, than one evening written to its end. */
class MixedEveningTest {
  private static String crane;

  @TempDir Path folder;

  /** Where the layout comes from. */
  private enum From {
    FILE,
    TEXT
  }

  @BeforeAll
  static void write() throws Exception {
    crane = InventedLog.CRANE.text(InventedNight.play(3, 5));
  }

  private GuideLog read(From from, String log) throws Exception {
    return read(from, log, InventedLog.CRANE.layout());
  }

  private GuideLog read(From from, String log, String layout) throws Exception {
    Path file = new LogFiles(folder).write("night.log", log);
    return LogReader.read(
        file,
        from == From.TEXT
            ? Optional.empty()
            : Optional.of(LayoutFile.read("crane.toml", layout.getBytes(UTF_8))));
  }

  private static List<String> nights(GuideLog log) {
    return NightGrouping.group(List.of(log), OptionalDouble.empty(), Optional.empty())
        .nights()
        .stream()
        .map(night -> night.name())
        .toList();
  }

  @ParameterizedTest
  @EnumSource
  void eachNightOfAFileIsItsOwn(From from) throws Exception {
    GuideLog log = read(from, crane + crane.replace("14.03.2026", "16.03.2026"));

    assertThat(log.runs()).hasSize(4);
    assertThat(log.source().unusable()).isZero();
    assertThat(nights(log)).containsExactly("2026-03-14", "2026-03-16");
  }

  @ParameterizedTest
  @EnumSource
  void logWrittenTwiceCountsItsRowsOnce(From from) throws Exception {
    GuideLog once = read(from, crane);
    GuideLog twice = read(from, crane + crane);

    assertThat(twice.source().rows()).isEqualTo(2 * once.source().rows());
    assertThat(twice.source().used()).isEqualTo(once.source().used());
    assertThat(LogFiles.total(twice).duplicate()).isEqualTo(once.source().rows());
  }

  @ParameterizedTest
  @EnumSource
  void runsOfAnotherScaleAreScaledByTheirs(From from) throws Exception {
    String pixels =
        crane.replace("East [arcsec]", "East [px]").replace("North [arcsec]", "North [px]");
    String layout =
        InventedLog.CRANE
            .layout()
            .replace(
                "East [arcsec]\"\nmeans = \"ra-offset\"\nunit = \"arcsec",
                "East [px]\"\nmeans = \"ra-offset\"\nunit = \"px")
            .replace(
                "North [arcsec]\"\nmeans = \"dec-offset\"\nunit = \"arcsec",
                "North [px]\"\nmeans = \"dec-offset\"\nunit = \"px");
    int second = pixels.lastIndexOf("## star acquired");
    String other =
        pixels.substring(0, second) + "# Scale 4,86 arcsec/px\n" + pixels.substring(second);

    GuideLog one = read(from, pixels, layout);
    GuideLog two = read(from, other, layout);

    Frames before = one.runs().get(1).frames();
    Frames after = two.runs().get(1).frames();
    assertThat(two.runs().get(0).frames().raArcsec(3))
        .isEqualTo(one.runs().get(0).frames().raArcsec(3));
    assertThat(after.raArcsec(3)).isCloseTo(2 * before.raArcsec(3), within(1e-9));
    assertThat(after.decArcsec(3)).isCloseTo(2 * before.decArcsec(3), within(1e-9));
  }

  @ParameterizedTest
  @EnumSource
  void logStillBeingWrittenLosesItsLastRowOnly(From from) throws Exception {
    GuideLog whole = read(from, crane);
    GuideLog cut = read(from, crane.substring(0, crane.length() - 12));

    assertThat(cut.source().unusableByReason()).isEqualTo(Map.of("row cut short", 1));
    assertThat(cut.source().rows()).isEqualTo(whole.source().rows());
  }

  @ParameterizedTest
  @EnumSource
  void lineEndsMayBeMixed(From from) throws Exception {
    StringBuilder mixed = new StringBuilder();
    int line = 0;
    for (String text : crane.split("\n")) {
      mixed.append(text).append(new String[] {"\n", "\r\n", "\r"}[line++ % 3]);
    }

    GuideLog log = read(from, mixed.toString());
    GuideLog plain = read(from, crane);

    assertThat(log.source().rows()).isEqualTo(plain.source().rows());
    assertThat(log.source().unusable()).isZero();
    for (int run = 0; run < 2; run++) {
      assertThat(log.runs().get(run).counts()).isEqualTo(plain.runs().get(run).counts());
      assertThat(log.runs().get(run).pointing()).isEqualTo(plain.runs().get(run).pointing());
    }
  }
}
