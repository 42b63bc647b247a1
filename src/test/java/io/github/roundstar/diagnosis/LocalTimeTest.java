package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.results.LocalTime;
import io.github.roundstar.results.LocalTime.Source;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Where the local time of a night comes from. */
class LocalTimeTest {
  private static final OptionalDouble NO = OptionalDouble.empty();
  private static final Optional<ZoneOffset> OFFSET = Optional.of(ZoneOffset.ofHours(2));
  private static final Optional<Instant> START = Optional.of(Instant.parse("2026-10-15T18:20:00Z"));

  private static Optional<LocalTime> of(
      Optional<Instant> start, Optional<ZoneOffset> offset, OptionalDouble east, boolean shown) {
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < 40; i++) {
      builder.add(3.0 * i, 0.1 * (i % 3), 0.1 * (i % 2));
    }
    Frames frames = builder.build();
    GuideRun run =
        new GuideRun(
            1,
            start,
            new Pointing(NO, NO, Optional.empty(), NO, NO, east),
            new GuideCamera(NO, NO),
            LoopSettings.UNKNOWN,
            frames,
            RowCounts.of(frames, 0, 0),
            List.of());
    return NightAnalysis.of(
            new Night("n", List.of(run), List.of(), offset), Equipment.UNKNOWN, "test", shown)
        .evidence()
        .localTime();
  }

  @Test
  void theLogsOffsetGoesBeforeTheLongitude() {
    assertThat(of(START, OFFSET, OptionalDouble.of(11.6), true))
        .contains(new LocalTime(7200, Source.LOG));
  }

  /** The sky turns by 15 degrees an hour: 11.6 degrees are 46.4 minutes. */
  @Test
  void withoutAnOffsetItIsMeanSolarTimeByTheLongitude() {
    assertThat(of(START, Optional.empty(), OptionalDouble.of(11.6), true))
        .contains(new LocalTime(2784, Source.LONGITUDE));
  }

  @Test
  void whatTellsNothingOrIsToBeKeptBackGivesNoLocalTime() {
    assertThat(of(START, Optional.empty(), NO, true)).isEmpty();
    assertThat(of(START, OFFSET, OptionalDouble.of(11.6), false)).isEmpty();
    assertThat(of(Optional.empty(), OFFSET, OptionalDouble.of(11.6), true)).isEmpty();
  }
}
