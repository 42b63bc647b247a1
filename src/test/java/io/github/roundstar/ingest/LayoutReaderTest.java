package io.github.roundstar.ingest;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.ingest.layout.InventedLog;
import io.github.roundstar.ingest.layout.InventedNight;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.SkySense;
import io.github.roundstar.simulate.SimulatedNight;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A log read by its layout is the same night as its guide table, row for row. */
class LayoutReaderTest {
  private static final String PLAIN =
      """
      [text]
      names = '^t,'
      [[column]]
      name = "t"
      means = "time"
      [[column]]
      name = "e"
      means = "ra-offset"
      unit = "px"
      positive = "east"
      [[column]]
      name = "n"
      means = "dec-offset"
      unit = "arcsec"
      positive = "north"
      [[column]]
      name = "p"
      means = "ra-pulse"
      unit = "ms"
      """;
  private static final String SCALE =
      """
      [[setting]]
      means = "scale"
      value = "2"
      """;

  @TempDir Path folder;

  static GuideLog read(String log, String layout) throws Exception {
    return LayoutReader.read(
        "night.txt", new ByteArrayInputStream(log.getBytes(UTF_8)), layout(layout));
  }

  private static Layout layout(String text) throws Exception {
    return LayoutFile.read("night.layout.toml", text.getBytes(UTF_8));
  }

  @Tag("identity")
  @ParameterizedTest
  @EnumSource
  void agreesWithTheGuideTableOfTheSameNight(InventedLog invented) throws Exception {
    SimulatedNight night = InventedNight.play(5, 40);
    GuideLog table =
        GuideTableReader.read(new LogFiles(folder).write("night.ecsv", InventedNight.table(night)));

    GuideLog log =
        LayoutReader.read(
            "night.log",
            new ByteArrayInputStream(invented.bytes(night)),
            layout(invented.layout()));

    assertThat(log.warnings()).isEmpty();
    assertThat(log.source().rows()).isEqualTo(table.source().rows());
    assertThat(log.runs()).hasSameSizeAs(table.runs());
    for (int r = 0; r < log.runs().size(); r++) {
      assertSame(log.runs().get(r), table.runs().get(r));
    }
  }

  private static void assertSame(GuideRun run, GuideRun other) {
    assertThat(run.counts()).isEqualTo(other.counts());
    assertThat(run.sense()).isEqualTo(SkySense.KNOWN);
    assertThat(run.pointing().pierSide()).isEqualTo(other.pointing().pierSide());
    assertThat(run.pointing().latitudeDegrees()).isEqualTo(other.pointing().latitudeDegrees());
    assertThat(run.pointing().declinationDegrees().orElseThrow())
        .isCloseTo(other.pointing().declinationDegrees().orElseThrow(), within(1e-3));
    assertThat(run.pointing().hourAngleHours().orElseThrow())
        .isCloseTo(other.pointing().hourAngleHours().orElseThrow(), within(1e-3));
    assertThat(run.loop().guideRateSidereal().orElseThrow())
        .isCloseTo(other.loop().guideRateSidereal().orElseThrow(), within(1e-6));
    assertThat(run.camera().exposureSeconds()).isEqualTo(other.camera().exposureSeconds());
    assertThat(
            Math.abs(
                run.start().orElseThrow().toEpochMilli()
                    - other.start().orElseThrow().toEpochMilli()))
        .isLessThanOrEqualTo(1);
    Frames ours = run.frames();
    Frames theirs = other.frames();
    for (int i = 0; i < ours.size(); i++) {
      assertThat(ours.timeSeconds(i)).isCloseTo(theirs.timeSeconds(i), within(2e-3));
      assertThat(ours.state(i)).isEqualTo(theirs.state(i));
      assertThat(ours.ditherStart(i)).isEqualTo(theirs.ditherStart(i));
      if (theirs.measured(i)) {
        assertThat(ours.raArcsec(i)).isCloseTo(theirs.raArcsec(i), within(2e-3));
        assertThat(ours.decArcsec(i)).isCloseTo(theirs.decArcsec(i), within(2e-3));
      }
      if (i < ours.size() - 1) {
        assertThat(ours.raPulseMillis(i)).isCloseTo(theirs.raPulseMillis(i), within(0.51));
        assertThat(ours.decPulseMillis(i)).isCloseTo(theirs.decPulseMillis(i), within(0.51));
      }
    }
  }

  @Test
  void everyRowIsAccountedFor() throws Exception {
    GuideLog log =
        read(
            "t,e,n,p\n1,0.5,0.5,E10\n2,,,\n3,x,0.1,0\n4,0.1\n5,0.1,0.2,7\n5,0.1,0.2,W7\n6,1,1,W1\n6,1,1,W1\n",
            PLAIN + SCALE);

    assertThat(log.source().rows()).isEqualTo(8);
    assertThat(log.source().unusableByReason())
        .containsEntry("text in a number", 2)
        .containsEntry("row cut short", 1);
    assertThat(log.runs().get(0).counts().rows()).isEqualTo(8);
    assertThat(log.runs().get(0).counts().lost()).isEqualTo(1);
    assertThat(log.runs().get(0).counts().duplicate()).isEqualTo(1);
    assertThat(log.runs().get(0).frames().raArcsec(0)).isEqualTo(1.0);
    assertThat(log.source().firstUnusable().get(2).reason())
        .contains("a pulse '7' without a direction");
  }

  @Test
  void pixelsWithoutScaleAskForIt() {
    assertThatThrownBy(() -> read("t,e,n,p\n1,0.5,0.5,E10\n", PLAIN))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageContaining("e is in px, but neither log nor layout tells the scale")
        .hasMessageContaining("means = \"scale\"");
  }

  @Test
  void namelessDirectionsAreKeptApartFromKnownOnes() throws Exception {
    String layout =
        (PLAIN + SCALE).replace("\"east\"", "\"other-way\"").replace("\"px\"", "\"arcsec\"");

    GuideRun run = read("t,e,n,p\n1,0.5,0.5,E10\n", layout).runs().get(0);

    assertThat(run.sense()).isEqualTo(new SkySense(false, true));
    assertThat(run.frames().raArcsec(0)).isEqualTo(-0.5);
  }

  @Test
  void changedScaleBeginsRun() throws Exception {
    String layout = PLAIN + "[[setting]]\nmeans = \"scale\"\nline = '^scale (?<value>.+)'\n";

    GuideLog log = read("scale 2\nt,e,n,p\n1,1,1,\n2,1,1,\nscale 3\n3,1,1,\n", layout);

    assertThat(log.runs()).hasSize(2);
    assertThat(log.runs().get(0).frames().raArcsec(1)).isEqualTo(2);
    assertThat(log.runs().get(1).frames().raArcsec(0)).isEqualTo(3);
  }

  @Test
  void linesMayEndInAnyWay() throws Exception {
    GuideLog log = read("t,e,n,p\r\n1,1,1,\r2,1,1,\n3,1,1,\r\n", PLAIN + SCALE);

    assertThat(log.runs().get(0).frames().size()).isEqualTo(3);
  }

  @Test
  void patternThatBacktracksWithoutEndIsRefused() {
    String layout = PLAIN + SCALE + "[runs]\nends = '.*a.*a.*a.*a.*a.*b'\n";

    assertThatThrownBy(() -> read("t,e,n,p\n1,1,1,\n" + "a".repeat(3000) + "\n", layout))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith("night.txt:3: ")
        .hasMessageContaining("takes too many steps");
  }
}
