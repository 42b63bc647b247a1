package io.github.roundstar.ingest;

import static io.github.roundstar.ingest.LogFiles.csv;
import static io.github.roundstar.ingest.LogFiles.ecsv;
import static io.github.roundstar.ingest.LogFiles.total;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.DecDirection;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.model.RowCounts;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A good guide table becomes the model: units, times, pulses, runs, states and settings. */
class GuideTableReaderTest {
  @TempDir Path folder;
  private LogFiles files;

  @BeforeEach
  void inFolder() {
    files = new LogFiles(folder);
  }

  private static List<FrameState> states(Frames frames) {
    return IntStream.range(0, frames.size()).mapToObj(frames::state).toList();
  }

  @Test
  void plainTableIsUndatedAndInStandardUnits() throws Exception {
    GuideLog log =
        files.read(csv(",ra_pulse,dec_pulse,snr,flux", "10,0.5,-0.25,120,-30,22.5,9000"));
    GuideRun run = log.runs().get(0);
    assertThat(log.warnings()).isEmpty();
    assertThat(log.utcOffset()).isEmpty();
    assertThat(log.source().layout()).isEqualTo("guide-table/csv");
    assertThat(run.id()).isEqualTo(1);
    assertThat(run.start()).isEmpty();
    Frames frames = run.frames();
    assertThat(frames.timeSeconds(0)).isEqualTo(10);
    assertThat(frames.raArcsec(0)).isEqualTo(0.5);
    assertThat(frames.decArcsec(0)).isEqualTo(-0.25);
    assertThat(frames.raPulseMillis(0)).isEqualTo(120);
    assertThat(frames.decPulseMillis(0)).isEqualTo(-30);
    assertThat(frames.snr(0)).isEqualTo(22.5);
    assertThat(frames.fluxAdu(0)).isEqualTo(9000);
  }

  @Test
  void withoutPulseColumnsThereAreNoPulses() throws Exception {
    assertThat(files.read(csv("", "1,0,0")).runs().get(0).frames().hasPulses()).isFalse();
    Frames frames = files.read(csv(",ra_pulse", "1,0,0,", "2,0,0,5")).runs().get(0).frames();
    assertThat(frames.hasPulses()).isTrue();
    assertThat(frames.raPulseMillis(0)).isZero();
    assertThat(frames.raPulseMillis(1)).isEqualTo(5);
  }

  @Test
  void everyHeaderKeyArrives() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "start: 2026-03-14T20:15:00+01:00, guide_scale: 1.5, declination: 41.5,"
                    + " hour_angle: -1.25, pier_side: west, guide_rate: 0.5, guide_exposure: 2.0,"
                    + " time_mark: middle, pulse_row: same, gain_ra: 0.7, gain_dec: 0.6,"
                    + " deadband_ra: 0.1, deadband_dec: 0.2, pulse_limit: 2000,"
                    + " dec_direction: north, site_latitude: 48.2, site_longitude: -70.5,"
                    + " right_ascension: 5.59",
                "0,0.1,0.2,1,5,6,"));
    GuideRun run = log.runs().get(0);
    assertThat(log.warnings()).isEmpty();
    assertThat(log.source().layout()).isEqualTo("guide-table/ecsv");
    assertThat(log.utcOffset()).hasValue(ZoneOffset.ofHours(1));
    assertThat(run.start()).hasValue(Instant.parse("2026-03-14T19:15:00Z"));
    assertThat(run.camera().scaleArcsecPerPixel()).hasValue(1.5);
    assertThat(run.camera().exposureSeconds()).hasValue(2);
    assertThat(run.pointing().declinationDegrees()).hasValue(41.5);
    assertThat(run.pointing().hourAngleHours()).hasValue(-1.25);
    assertThat(run.pointing().pierSide()).hasValue(PierSide.WEST);
    assertThat(run.pointing().latitudeDegrees()).hasValue(48.2);
    assertThat(run.pointing().longitudeDegrees()).hasValue(-70.5);
    assertThat(run.pointing().rightAscensionHours()).hasValue(5.59);
    assertThat(run.loop().guideRateSidereal()).hasValue(0.5);
    assertThat(run.loop().ra().gain()).hasValue(0.7);
    assertThat(run.loop().dec().gain()).hasValue(0.6);
    assertThat(run.loop().ra().deadbandArcsec()).hasValue(0.1);
    assertThat(run.loop().dec().deadbandArcsec()).hasValue(0.2);
    assertThat(run.loop().pulseLimitMillis()).hasValue(2000);
    assertThat(run.loop().decDirection()).hasValue(DecDirection.NORTH);
  }

  /** The hour angle of one star says nothing of another. */
  @Test
  void hourAngleIsNotCarriedToAnotherStar() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "hour_angle: -1, right_ascension: 5, runs: [{run: 2, right_ascension: 9}]",
                "0,0,0,1,0,0,",
                "3600,0,0,2,0,0,"));
    assertThat(log.runs().get(0).pointing().hourAngleHours()).hasValue(-1);
    assertThat(log.runs().get(1).pointing().hourAngleHours()).isEmpty();
    assertThat(log.runs().get(1).pointing().rightAscensionHours()).hasValue(9);
  }

  @Test
  void aDatedRunCountsFromItsFirstFrame() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "start: 2026-03-14T20:00:00Z",
                "10.5,0,0,1,0,0,",
                "13,0,0,1,0,0,",
                "99,0,0,2,0,0,"));
    assertThat(log.utcOffset()).isEmpty();
    GuideRun first = log.runs().get(0);
    assertThat(first.start()).hasValue(Instant.parse("2026-03-14T20:00:10.500Z"));
    assertThat(first.frames().timeSeconds(0)).isZero();
    assertThat(first.frames().timeSeconds(1)).isEqualTo(2.5);
    GuideRun second = log.runs().get(1);
    assertThat(second.start()).hasValue(Instant.parse("2026-03-14T20:01:39Z"));
    assertThat(second.id()).isEqualTo(2);
  }

  @Test
  void utcColumnGivesInstants() throws Exception {
    GuideLog log =
        files.read(
            """
            utc,ra_offset,dec_offset
            2026-03-14T20:00:10.5Z,0,0
            2026-03-14T21:00:13.000+01:00,0,0
            """);
    GuideRun run = log.runs().get(0);
    assertThat(run.start()).hasValue(Instant.parse("2026-03-14T20:00:10.500Z"));
    assertThat(run.frames().timeSeconds(1)).isEqualTo(2.5);
  }

  @Test
  void timeMarkMovesTimesToTheMiddleOfTheExposure() throws Exception {
    String start = "start: 2026-03-14T20:00:00Z, guide_exposure: 3, time_mark: ";
    assertThat(files.read(ecsv(start + "start", "1,0,0,1,0,0,")).runs().get(0).start())
        .hasValue(Instant.parse("2026-03-14T20:00:02.500Z"));
    assertThat(files.read(ecsv(start + "end", "1,0,0,1,0,0,")).runs().get(0).start())
        .hasValue(Instant.parse("2026-03-14T19:59:59.500Z"));
    GuideRun undated =
        files.read(ecsv("guide_exposure: 3, time_mark: start", "1,0,0,1,0,0,")).runs().get(0);
    assertThat(undated.frames().timeSeconds(0)).isEqualTo(2.5);
    assertThat(files.read(ecsv("time_mark: start", "1,0,0,1,0,0,")).warnings())
        .containsExactly(
            "night.log: time_mark is start, but without guide_exposure the times stay as logged:"
                + " add guide_exposure, in seconds, to meta");
  }

  @Test
  void pulsesOfTheRowBeforeMoveBackWithinTheRun() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "pulse_row: next",
                "1,0,0,1,9,9,",
                "2,0,0,1,10,-10,",
                "3,0,0,1,20,-20,",
                "4,0,0,2,9,9,",
                "5,0,0,2,30,-30,"));
    Frames first = log.runs().get(0).frames();
    assertThat(first.raPulseMillis(0)).isEqualTo(10);
    assertThat(first.decPulseMillis(1)).isEqualTo(-20);
    assertThat(first.raPulseMillis(2)).isZero();
    Frames second = log.runs().get(1).frames();
    assertThat(second.raPulseMillis(0)).isEqualTo(30);
    assertThat(second.raPulseMillis(1)).isZero();
  }

  @Test
  void unitsAreConverted() throws Exception {
    GuideLog log =
        files.read(
            """
            # %ECSV 1.0
            # ---
            # datatype:
            # - {name: time, unit: min, datatype: float64}
            # - {name: ra_offset, unit: pix, datatype: float64}
            # - {name: dec_offset, unit: arcsec, datatype: float64}
            # - {name: ra_pulse, unit: s, datatype: float64}
            # - {name: dec_pulse, unit: ms, datatype: float64}
            # - {name: dither_ra, unit: pix, datatype: float64}
            # meta: {guide_scale: 2.0}
            time ra_offset dec_offset ra_pulse dec_pulse dither_ra
            0.5 0.25 0.25 0.1 100 ""
            1.0 0.25 0.25 0.1 100 3
            """);
    Frames frames = log.runs().get(0).frames();
    assertThat(frames.timeSeconds(0)).isEqualTo(30);
    assertThat(frames.raArcsec(0)).isEqualTo(0.5);
    assertThat(frames.decArcsec(0)).isEqualTo(0.25);
    assertThat(frames.raPulseMillis(0)).isEqualTo(100);
    assertThat(frames.decPulseMillis(0)).isEqualTo(100);
    assertThat(frames.ditherRaArcsec(1)).isEqualTo(6);
    assertThat(frames.ditherDecArcsec(1)).isNaN();
  }

  @Test
  void aUnitThatIsLeftOutIsAssumedWithAWarning() throws Exception {
    String text = ecsv("", "0,0,0,1,0,0,").replace("ra_offset, unit: arcsec", "ra_offset");
    assertThat(files.read(text).warnings())
        .containsExactly(
            "night.log:6: column ra_offset has no unit, arcsec assumed: add unit: arcsec");
  }

  @Test
  void runsTakeTheirOwnEntryBeforeTheCommonOne() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "declination: 10, runs: [{run: 2, declination: 20, gain_ra: 0.5},"
                    + " {run: 3, guide_rate: 0.9}]",
                "0,0,0,1,0,0,",
                "1,0,0,2,0,0,",
                "2,0,0,3,0,0,"));
    assertThat(log.runs())
        .extracting(run -> run.pointing().declinationDegrees().getAsDouble())
        .containsExactly(10.0, 20.0, 10.0);
    assertThat(log.runs().get(1).loop().ra().gain()).hasValue(0.5);
    assertThat(log.runs().get(2).loop().guideRateSidereal()).hasValue(0.9);
    assertThat(log.warnings()).isEmpty();
  }

  @Test
  void runsMayHaveAStartOfTheirOwn() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "runs: [{run: 1, start: 2026-03-14T20:00:00Z}, {run: 2, start:"
                    + " 2026-03-14T21:00:00Z}]",
                "5,0,0,1,0,0,",
                "5,0,0,2,0,0,"));
    assertThat(log.runs())
        .extracting(run -> run.start().orElseThrow().toString())
        .containsExactly("2026-03-14T20:00:05Z", "2026-03-14T21:00:05Z");
  }

  @Test
  void inAnUndatedLogARunMayBeginItsOwnClock() throws Exception {
    GuideLog log = files.read(csv(",run", "0,0,0,1", "5,0,0,1", "0,1,1,2", "5,1,1,2", "3,2,2,2"));
    assertThat(log.runs()).hasSize(2);
    assertThat(log.runs().get(1).frames().size()).isEqualTo(2);
    assertThat(total(log).unusable()).isEqualTo(1);
  }

  @Test
  void aFlipStartsARunOnTheOtherSide() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "start: 2026-03-14T20:00:00Z, pier_side: west, hour_angle: -0.5",
                "0,0,0,1,0,0,",
                "3590.1704,0,0,1,0,0,flip",
                "3600,0,0,1,0,0,"));
    assertThat(log.runs()).hasSize(2);
    assertThat(log.runs())
        .extracting(run -> run.pointing().pierSide().orElseThrow())
        .containsExactly(PierSide.WEST, PierSide.EAST);
    assertThat(log.runs().get(1).frames().size()).isEqualTo(2);
    // One hour of hour angle is 86164.0905 s / 24 = 3590.1704 s.
    assertThat(log.runs().get(1).pointing().hourAngleHours().getAsDouble())
        .isCloseTo(0.5, within(1e-6));
  }

  @Test
  void anUnknownSideStaysUnknownAfterAFlip() throws Exception {
    GuideLog log = files.read(csv(",event", "0,0,0,", "1,0,0,flip"));
    assertThat(log.runs()).hasSize(2);
    assertThat(log.runs().get(1).pointing().pierSide()).isEmpty();
  }

  @Test
  void theSideAfterAFlipHoldsUntilTheHeaderSaysOtherwise() throws Exception {
    GuideLog log =
        files.read(
            ecsv(
                "pier_side: west, runs: [{run: 3, pier_side: west}]",
                "0,0,0,1,0,0,",
                "1,0,0,1,0,0,flip",
                "2,0,0,2,0,0,",
                "3,0,0,3,0,0,",
                "4,0,0,3,0,0,flip"));
    assertThat(log.runs())
        .extracting(run -> run.pointing().pierSide().orElseThrow())
        .containsExactly(PierSide.WEST, PierSide.EAST, PierSide.EAST, PierSide.WEST, PierSide.EAST);
  }

  @Test
  void statesFollowEventsAndOffsets() throws Exception {
    GuideLog log =
        files.read(
            csv(
                ",event",
                "0,0,0,",
                "1,0,0,settling",
                "2,0,0,lost",
                "3,,,idle",
                "4,5,5,dither",
                "5,,,dither",
                "6,,0,",
                "7,nan,nan,settling",
                "8,inf,0,",
                "9,0,-inf,",
                "10,inf,nan,",
                "11,0,0,note: clouds from the west"));
    GuideRun run = log.runs().get(0);
    assertThat(states(run.frames()))
        .containsExactly(
            FrameState.USED,
            FrameState.SETTLING,
            FrameState.LOST,
            FrameState.IDLE,
            FrameState.DITHER,
            FrameState.LOST,
            FrameState.LOST,
            FrameState.LOST,
            FrameState.REJECTED,
            FrameState.REJECTED,
            FrameState.LOST,
            FrameState.USED);
    assertThat(run.counts()).isEqualTo(new RowCounts(2, 1, 5, 1, 1, 0, 2, 0));
    assertThat(run.frames().ditherStart(5)).isTrue();
    assertThat(run.frames().measured(8)).isFalse();
    assertThat(run.notes()).hasSize(1);
    assertThat(run.notes().get(0).text()).isEqualTo("clouds from the west");
    assertThat(run.notes().get(0).timeSeconds()).isEqualTo(11);
  }

  @Test
  void longNotesAreCut() throws Exception {
    GuideLog log = files.read(csv(",event", "0,0,0,note: " + "x".repeat(500)));
    assertThat(log.runs().get(0).notes().get(0).text()).hasSize(200);
  }

  @Test
  void shiftsMakeADitherEvenWithoutTheEvent() throws Exception {
    GuideLog log =
        files.read(csv(",dither_ra,dither_dec", "0,0,0,,", "1,3,2,3,-2", "2,0,0,0,0", "3,0,0,,1"));
    Frames frames = log.runs().get(0).frames();
    assertThat(frames.ditherStart(1)).isTrue();
    assertThat(frames.ditherRaArcsec(1)).isEqualTo(3);
    assertThat(frames.ditherDecArcsec(1)).isEqualTo(-2);
    assertThat(frames.ditherStart(2)).isFalse();
    assertThat(frames.ditherStart(3)).isTrue();
    assertThat(frames.ditherRaArcsec(3)).isNaN();
  }

  @Test
  void aClockJumpForwardIsAGapWithAWarning() throws Exception {
    GuideLog log = files.read(csv("", "0,0,0", "1,0,0", "9000,0,0"));
    assertThat(log.runs()).hasSize(1);
    assertThat(total(log).used()).isEqualTo(3);
    assertThat(log.warnings()).hasSize(1);
    assertThat(log.warnings().get(0))
        .startsWith("night.log:4: the time jumps ahead by 8999 s within a run: ");
  }

  @Test
  void aClockJumpOfHoursBeginsANewRun() throws Exception {
    GuideLog log = files.read(csv("", "0,0,0", "1,0,0", "22000,0,0", "22001,0,0"));
    assertThat(log.runs()).hasSize(2);
    assertThat(total(log).used()).isEqualTo(4);
    assertThat(log.warnings()).hasSize(1);
    assertThat(log.warnings().get(0))
        .startsWith("night.log:4: the time jumps ahead by 21999 s, so a new run begins here: ");
  }

  @Test
  void aGapOfAFewSlowFramesIsNoClockJump() throws Exception {
    GuideLog log = files.read(csv("", "0,0,0", "1800,0,0", "3600,0,0", "90000,0,0"));
    assertThat(log.runs()).hasSize(1);
    assertThat(log.warnings()).isEmpty();
  }

  @Test
  void constantOffsetsAreGoodFrames() throws Exception {
    GuideLog log =
        files.read(csv(",event", "0,1,1,", "1,1,1,dither", "2,1,1,", "3,1,1,", "4,1,1,"));
    assertThat(total(log)).isEqualTo(new RowCounts(4, 0, 0, 1, 0, 0, 0, 0));
  }

  @Test
  void oneFrameIsARun() throws Exception {
    GuideLog log = files.read(csv(",run", "0,0,0,1", "1,0,0,2", "2,0,0,3"));
    assertThat(log.runs()).extracting(run -> run.frames().size()).containsExactly(1, 1, 1);
  }

  @Test
  void aRunThatIsAllLostIsKeptBesideAGoodOne() throws Exception {
    GuideLog log = files.read(csv(",run", "0,,,1", "1,,,1", "2,0,0,2"));
    assertThat(log.runs().get(0).counts().lost()).isEqualTo(2);
    assertThat(log.runs().get(0).counts().used()).isZero();
  }

  @Tag("identity")
  @Test
  void rowCountsSumToTheRows() throws Exception {
    GuideLog log =
        files.read(csv(",event", "0,0,0,", "0,0,0,", "1,x,0,", "2,,,", "3,0,0,idle", "4,1"));
    assertThat(log.source().rows()).isEqualTo(6);
    assertThat(total(log).rows()).isEqualTo(6);
    assertThat(log.source().used()).isEqualTo(total(log).used());
    assertThat(log.source().unusable()).isEqualTo(total(log).unusable());
  }
}
