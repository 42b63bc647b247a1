package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import io.github.roundstar.results.Faults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Exposures of several nights in one list come to the night they belong to. */
class NightExposuresTest {
  private static final Instant EVENING = Instant.parse("2026-03-14T20:00:00Z");
  private static final int EXPOSURES = 8;

  @TempDir private Path folder;
  private final List<String> unusable = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();

  /** Two hours on each of three evenings; every evening's dithers come at other times. */
  private static List<Night> nights(boolean dithers) {
    return IntStream.range(0, 3)
        .mapToObj(n -> new Night("night " + n, List.of(run(n, dithers)), List.of()))
        .toList();
  }

  private static GuideRun run(int night, boolean dithers) {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 2400; i++) {
      frames.add(3 * i, 0, 0);
      if (dithers && (i - 60 * night) % 300 == 299) {
        frames.dither(3, 3);
      }
    }
    Frames built = frames.build();
    return new GuideRun(
        1,
        Optional.of(EVENING.plus(Duration.ofDays(night))),
        Pointing.UNKNOWN,
        GuideCamera.UNKNOWN,
        LoopSettings.UNKNOWN,
        built,
        RowCounts.of(built, 0, 0),
        List.of());
  }

  private NightExposures listed(Duration ahead, int... nights) throws IOException {
    StringBuilder list = new StringBuilder("file,start,seconds\n");
    for (int night : nights) {
      for (int e = 0; e < EXPOSURES; e++) {
        Instant start =
            EVENING.plus(Duration.ofDays(night)).plusSeconds(180 * night + 900 * e + 20);
        list.append(night).append('-').append(e).append(".fits,");
        list.append(start.plus(ahead)).append(",860\n");
      }
    }
    Path file = folder.resolve("exposures.csv");
    Files.writeString(file, list);
    NightExposures read =
        NightExposures.read(Optional.of(file), unusable, new Faults()).orElseThrow();
    assertThat(unusable).isEmpty();
    return read;
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 24, -24, 48, 25, -1})
  void clockThatIsWrongByADayMovesNoExposureToAnotherNight(long hoursAhead) throws IOException {
    List<MainCamera> dealt =
        listed(Duration.ofHours(hoursAhead), 0, 1, 2).dealt(nights(true), warnings);
    for (int night = 0; night < 3; night++) {
      String first = night + "-";
      assertThat(dealt.get(night).frames())
          .hasSize(EXPOSURES)
          .allMatch(frame -> frame.file().startsWith(first));
    }
    assertThat(warnings).isEmpty();
  }

  @Test
  void whereDatesAloneTellTheNightsApartItIsSaid() throws IOException {
    List<MainCamera> dealt = listed(Duration.ZERO, 1).dealt(nights(false), warnings);
    assertThat(dealt.get(1).frames()).hasSize(EXPOSURES);
    assertThat(warnings).singleElement().asString().contains("could not be told: check that");
  }

  @Test
  void singleNightGetsAll() throws IOException {
    List<ExposureFrame> frames =
        listed(Duration.ofDays(9), 0, 2)
            .dealt(nights(true).subList(0, 1), warnings)
            .get(0)
            .frames();
    assertThat(frames).hasSize(2 * EXPOSURES);
    assertThat(warnings).isEmpty();
  }
}
