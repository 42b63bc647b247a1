package io.github.roundstar.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.model.SourceFile;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files become nights, in whatever order they are given, and no row is lost or counted twice. */
class NightGroupingTest {
  private static final OptionalDouble NO_LONGITUDE = OptionalDouble.empty();

  @TempDir Path folder;
  private LogFiles files;

  @BeforeEach
  void inFolder() {
    files = new LogFiles(folder);
  }

  private GuideLog log(String name, String meta, String... rows) throws Exception {
    return GuideTableReader.read(files.write(name, LogFiles.ecsv(meta, rows)));
  }

  private static String[] rows(int from, int to) {
    String[] rows = new String[to - from];
    for (int i = from; i < to; i++) {
      rows[i - from] = String.format(Locale.ROOT, "%d,%.1f,0.5,1,%d,0,", i, i * 0.1, i);
    }
    return rows;
  }

  private static Nights group(GuideLog... logs) {
    return NightGrouping.group(List.of(logs), NO_LONGITUDE, Optional.empty());
  }

  private static void accountsFor(Night night) {
    int rows = night.sources().stream().mapToInt(SourceFile::rows).sum();
    int used = night.sources().stream().mapToInt(SourceFile::used).sum();
    RowCounts counts =
        night.runs().stream().map(GuideRun::counts).reduce(RowCounts.NONE, RowCounts::plus);
    assertThat(counts.rows()).isEqualTo(rows);
    assertThat(counts.used()).isEqualTo(used);
    for (GuideRun run : night.runs()) {
      RowCounts states =
          RowCounts.of(run.frames(), run.counts().duplicate(), run.counts().unusable());
      assertThat(run.counts()).isEqualTo(states);
    }
  }

  /**
   * Noon of local mean solar time comes 4 minutes earlier per degree of east longitude: at 15 deg
   * east it is 11:00 UTC.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({
    "2026-03-14T10:59:59Z, 15, 2026-03-13",
    "2026-03-14T11:00:00Z, 15, 2026-03-14",
    "2026-03-15T10:59:59Z, 15, 2026-03-14",
    "2026-03-15T03:00:00Z, -105, 2026-03-14",
    "2026-03-14T18:59:59Z, -105, 2026-03-13",
    "2026-03-14T19:00:00Z, -105, 2026-03-14",
    "2026-03-14T09:00:00Z, 150, 2026-03-14",
    "2026-03-01T01:00:00Z, 0, 2026-02-28"
  })
  void longitudeGivesNoon(String start, double longitude, String name) throws Exception {
    GuideLog log = log("a.log", "start: " + start, "0,0,0,1,0,0,");
    Nights nights =
        NightGrouping.group(List.of(log), OptionalDouble.of(longitude), Optional.empty());
    assertThat(nights.nights()).extracting(Night::name).containsExactly(name);
  }

  @Test
  void elseTheOffsetOfTheLogOrOfTheUser() throws Exception {
    GuideLog log = log("a.log", "start: 2026-03-14T11:30:00+10:00", "0,0,0,1,0,0,");
    assertThat(group(log).nights().get(0).name()).isEqualTo("2026-03-13");
    GuideLog evening = log("b.log", "start: 2026-03-14T12:00:00+10:00", "0,0,0,1,0,0,");
    assertThat(group(evening).nights().get(0).name()).isEqualTo("2026-03-14");
    Nights byUser =
        NightGrouping.group(List.of(evening), NO_LONGITUDE, Optional.of(ZoneOffset.ofHours(9)));
    assertThat(byUser.nights().get(0).name()).isEqualTo("2026-03-13");
  }

  @Test
  void elseNightsEndAtGapsOfSixHours() throws Exception {
    GuideLog log =
        log(
            "a.log",
            "start: 2026-03-14T08:00:00Z",
            "0,0,0,1,0,0,",
            "21599,0,0,2,0,0,",
            "43000,0,0,3,0,0,",
            "64600,0,0,4,0,0,",
            "86200,0,0,5,0,0,");
    List<Night> nights = group(log).nights();
    String hash = log.source().sha256().substring(0, 8);
    assertThat(nights)
        .extracting(Night::name)
        .containsExactly("2026-03-13", "2026-03-14", "2026-03-14-" + hash);
    assertThat(nights).extracting(night -> night.runs().size()).containsExactly(3, 1, 1);
  }

  @Test
  void undatedLogsAreNightsOfTheirOwn() throws Exception {
    GuideLog one = log("a.log", "", rows(0, 10));
    GuideLog two = log("b.log", "", rows(10, 20));
    List<Night> nights = group(one, two).nights();
    assertThat(nights)
        .extracting(Night::name)
        .containsExactlyInAnyOrder(
            "undated-" + one.source().sha256().substring(0, 8),
            "undated-" + two.source().sha256().substring(0, 8));
  }

  private static final String START = "start: 2026-03-14T20:00:00+00:30";

  @Test
  void runsAreNumberedInOrderOfTime() throws Exception {
    GuideLog late = log("a.log", START, rows(20, 30));
    GuideLog early = log("b.log", START, rows(0, 10));
    Night night = group(late, early).nights().get(0);
    assertThat(night.runs()).extracting(GuideRun::id).containsExactly(1, 2);
    assertThat(night.runs().get(0).start().orElseThrow())
        .isBefore(night.runs().get(1).start().orElseThrow());
    assertThat(night.sources()).extracting(SourceFile::name).containsExactly("b.log", "a.log");
    accountsFor(night);
  }

  @Test
  void duplicatesAreCountedInTheLaterFile() throws Exception {
    GuideLog first = log("a.log", START + ", hour_angle: 1", rows(0, 60));
    GuideLog second = log("b.log", START + ", hour_angle: 2", rows(40, 100));
    Nights nights = group(second, first);
    assertThat(nights.warnings()).isEmpty();
    Night night = nights.nights().get(0);
    assertThat(night.runs()).hasSize(2);
    assertThat(night.runs().get(0).counts().used()).isEqualTo(60);
    GuideRun rest = night.runs().get(1);
    assertThat(rest.counts()).isEqualTo(new RowCounts(40, 0, 0, 0, 0, 20, 0, 0));
    assertThat(rest.start()).hasValue(Instant.parse("2026-03-14T19:31:00Z"));
    assertThat(rest.frames().timeSeconds(0)).isZero();
    assertThat(rest.frames().raArcsec(0)).isEqualTo(6.0);
    assertThat(rest.frames().raPulseMillis(0)).isEqualTo(60);
    assertThat(Duration.between(night.runs().get(0).start().orElseThrow(), rest.start().get()))
        .hasSeconds(60);
    // The hour angle at its own first frame, 20 s after the one that was dropped.
    assertThat(rest.pointing().hourAngleHours().getAsDouble()).isBetween(2.00556, 2.00558);
    assertThat(night.sources()).extracting(SourceFile::used).containsExactly(60, 40);
    accountsFor(night);
  }

  @Test
  void aFileInsideAnotherIsAllDuplicates() throws Exception {
    GuideLog whole = log("a.log", START, rows(0, 60));
    GuideLog part = log("b.log", START, rows(10, 30));
    Nights nights = group(part, whole);
    Night night = nights.nights().get(0);
    assertThat(nights.nights()).hasSize(1);
    assertThat(night.runs()).hasSize(1);
    assertThat(night.runs().get(0).counts()).isEqualTo(new RowCounts(60, 0, 0, 0, 0, 20, 0, 0));
    assertThat(night.sources()).extracting(SourceFile::used).containsExactly(60, 0);
    accountsFor(night);
  }

  @Test
  void theSameBytesAreReadOnce() throws Exception {
    GuideLog one = log("a.log", START, rows(0, 10));
    GuideLog two = log("b.log", START, rows(0, 10));
    Nights nights = group(two, one);
    assertThat(nights.nights()).hasSize(1);
    assertThat(nights.nights().get(0).sources())
        .extracting(SourceFile::name)
        .containsExactly("a.log");
    assertThat(nights.warnings())
        .containsExactly("b.log: the same bytes as a.log, read once: give it once");
    accountsFor(nights.nights().get(0));
  }

  @Test
  void pulsesHiddenByTheEndOfAFileAreNoDifference() throws Exception {
    GuideLog first = log("a.log", START + ", pulse_row: next", rows(0, 60));
    GuideLog second = log("b.log", START + ", pulse_row: next", rows(40, 100));
    Nights nights = group(first, second);
    assertThat(nights.warnings()).isEmpty();
    assertThat(nights.nights().get(0).runs().get(1).counts().duplicate()).isEqualTo(20);
  }

  @Test
  void aFileThatOverlapsAnotherIsANightOfItsOwn() throws Exception {
    GuideLog one = log("a.log", START, rows(0, 60));
    GuideLog other = log("b.log", "start: 2026-03-14T20:00:10.25+00:30", rows(0, 20));
    Nights nights = group(one, other);
    String hash = other.source().sha256().substring(0, 8);
    assertThat(nights.nights())
        .extracting(Night::name)
        .containsExactly("2026-03-14", "2026-03-14-" + hash);
    assertThat(nights.warnings()).hasSize(1);
    assertThat(nights.warnings().get(0))
        .startsWith(
            "b.log: overlaps another file of the night 2026-03-14, so it becomes the night");
    nights.nights().forEach(NightGroupingTest::accountsFor);
  }

  @Test
  void notesGoWithTheirFrames() throws Exception {
    GuideLog first = log("a.log", START, "0,0,0,1,0,0,", "1,0,0,1,0,0,note: one", "2,0,0,1,0,0,");
    GuideLog second =
        log("b.log", START, "1,0,0,1,0,0,note: one", "2,0,0,1,0,0,", "5,0,0,1,0,0,note: two");
    Night night = group(first, second).nights().get(0);
    assertThat(night.runs().get(1).notes()).hasSize(1);
    assertThat(night.runs().get(1).notes().get(0).text()).isEqualTo("two");
    assertThat(night.runs().get(1).notes().get(0).timeSeconds()).isZero();
  }

  @Tag("identity")
  @Test
  void theOrderOfTheFilesDoesNotMatter() throws Exception {
    List<GuideLog> logs = new ArrayList<>();
    logs.add(log("a.log", START, rows(0, 60)));
    logs.add(log("b.log", START, rows(40, 100)));
    logs.add(log("c.log", START, rows(0, 61)));
    logs.add(log("d.log", "start: 2026-03-14T20:00:10.25+00:30", rows(0, 20)));
    logs.add(log("e.log", "", rows(0, 20)));
    logs.add(log("f.log", "start: 2026-03-15T20:00:10.25Z", rows(0, 20)));
    logs.add(log("g.log", START, rows(0, 60)));
    String expected = describe(NightGrouping.group(logs, OptionalDouble.of(10), Optional.empty()));
    Random random = new Random(4);
    for (int i = 0; i < 20; i++) {
      Collections.shuffle(logs, random);
      Nights nights = NightGrouping.group(logs, OptionalDouble.of(10), Optional.empty());
      assertThat(describe(nights)).isEqualTo(expected);
      nights.nights().forEach(NightGroupingTest::accountsFor);
    }
  }

  private static String describe(Nights nights) {
    StringBuilder all = new StringBuilder(nights.warnings().toString());
    for (Night night : nights.nights()) {
      all.append(night.name()).append(night.sources());
      night.runs().forEach(run -> all.append(run.id()).append(run.start()).append(run.counts()));
    }
    return all.toString();
  }

  @Test
  void theNightKeepsTheLogsOffsetAndTheUsersGoesBeforeIt() throws Exception {
    GuideLog log = log("a.ecsv", "start: '2026-10-15T20:20:00+02:00'", rows(0, 5));

    assertThat(group(log).nights().get(0).utcOffset()).contains(ZoneOffset.ofHours(2));
    assertThat(
            NightGrouping.group(
                    List.of(log), NO_LONGITUDE, Optional.of(ZoneOffset.ofHoursMinutes(5, 30)))
                .nights()
                .get(0)
                .utcOffset())
        .contains(ZoneOffset.ofHoursMinutes(5, 30));
  }
}
