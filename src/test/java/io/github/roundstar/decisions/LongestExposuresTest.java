package io.github.roundstar.decisions;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.roundstar.decisions.TrueLadder.Count;
import io.github.roundstar.pipeline.AnalysisOutcome;
import io.github.roundstar.worlds.Kind;
import io.github.roundstar.worlds.WorldNight;
import io.github.roundstar.worlds.WorldNight.Exposure;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The longest exposure that is told to stay round, against images of the simulated night at both
 * ends of its interval: at the lower nine in ten are round, at the upper no more. One image more or
 * less is chance.
 */
@Tag("identity")
@Tag("slow")
class LongestExposuresTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final int NIGHTS = Integer.getInteger("nights", 6);
  private static final long FIRST_SEED = Long.getLong("firstSeed", 7100);
  private static final double HELD_SHARE = 0.9;

  /** Images follow one another within so much where no dither lies between [s]. */
  private static final double READ_OUT_SECONDS = 8.5;

  /** What the images of a length come to, as many as fit between the dithers. */
  private static Count images(Kind.Drawn drawn, double seconds) {
    WorldNight night = drawn.night();
    List<Exposure> images = new ArrayList<>();
    List<Exposure> taken = night.exposures();
    for (int i = 0; i < taken.size(); ) {
      double from = taken.get(i).startSeconds();
      double to = from + taken.get(i).seconds();
      for (i++; i < taken.size() && taken.get(i).startSeconds() - to < READ_OUT_SECONDS; i++) {
        to = taken.get(i).startSeconds() + taken.get(i).seconds();
      }
      for (double start = from; start + seconds <= to + 1e-9; start += seconds) {
        images.add(new Exposure(start, seconds));
      }
    }
    return new Count(night.images().round(images, drawn.limit()), images.size());
  }

  /** Nothing is told of so few. */
  private static boolean few(Count count) {
    return count.units() < 4;
  }

  private static boolean mayBeRound(Count count) {
    return few(count) || new Count(count.round() + 1, count.units()).meets();
  }

  private static boolean mayBeLost(Count count) {
    return few(count) || !new Count(count.round() - 1, count.units()).meets();
  }

  private static JsonNode told(Kind.Drawn drawn) throws Exception {
    Path folder = Files.createTempDirectory("longest");
    try {
      AnalysisOutcome outcome = Analysed.run(List.of(drawn.night()), drawn, folder);
      return MAPPER
          .readTree(Files.readAllBytes(outcome.nights().get(0).json()))
          .path("planning")
          .path("longestExposure");
    } finally {
      Analysed.delete(folder);
    }
  }

  @Test
  void whatIsToldToStayRoundDoes() throws Exception {
    int judged = 0;
    int held = 0;
    StringBuilder table = new StringBuilder();
    for (int n = 0; n < NIGHTS; n++) {
      Kind kind = Kind.values()[n % Kind.values().length];
      Kind.Drawn drawn = kind.night(FIRST_SEED + n);
      JsonNode longest = told(drawn);
      if (!longest.isObject()) {
        table.append(drawn).append(": nothing told\n");
        continue;
      }
      JsonNode length = longest.get("asItWas");
      boolean anyLow = length.get("lowSeconds").isNumber();
      boolean anyHigh = length.get("highSeconds").isNumber();
      Count low = anyLow ? images(drawn, length.get("lowSeconds").asDouble()) : new Count(0, 0);
      Count high = anyHigh ? images(drawn, length.get("highSeconds").asDouble()) : new Count(0, 0);
      boolean holds = mayBeRound(low) && mayBeLost(high);
      boolean seen = !few(low) || !few(high);
      judged += seen ? 1 : 0;
      held += seen && holds ? 1 : 0;
      table.append(
          String.format(
              Locale.ROOT,
              "%s: %s %s (%s .. %s): round %s, then %s%s%n",
              drawn,
              length.get("stays").asText(),
              length.get("seconds"),
              length.get("lowSeconds"),
              length.get("highSeconds"),
              low,
              high,
              holds ? seen ? "" : " (too few images to tell)" : " MISSED"));
    }
    table.append(held).append(" of ").append(judged).append(" held\n");
    System.out.print(table);
    assertThat(judged).as(table.toString()).isPositive();
    // One night of a few may be missed by chance alone.
    assertThat(held).as(table.toString()).isGreaterThanOrEqualTo((int) (HELD_SHARE * judged));
  }
}
