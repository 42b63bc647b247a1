package io.github.roundstar.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.SeasonJson;
import java.io.IOException;
import org.junit.jupiter.api.Tag;

/** Earlier results, which compare and season read back: read, or refused as no result. */
@Tag("fuzz")
class JsonFuzzTest {
  private interface Reading {
    void of(byte[] json) throws IOException;
  }

  @FuzzTest(maxDuration = "2m")
  void readsOrRefuses(byte @NotNull [] json) {
    refusedOr(json, NightJson::schema);
    refusedOr(json, NightJson::inputHashes);
    refusedOr(json, SeasonJson::read);
    refusedOr(
        json,
        bytes -> {
          byte[] written = NightJson.write(NightJson.read(bytes));
          assertThat(NightJson.write(NightJson.read(written))).isEqualTo(written);
        });
  }

  private static void refusedOr(byte[] json, Reading reading) {
    try {
      reading.of(json);
    } catch (IOException e) {
      assertThat(e.getMessage()).isNotBlank();
    }
  }
}
