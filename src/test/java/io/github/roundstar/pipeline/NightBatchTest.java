package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.model.Night;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class NightBatchTest {
  private static final List<Night> NIGHTS =
      Stream.of("a", "b", "c", "d").map(name -> new Night(name, List.of(), List.of())).toList();

  @Test
  void nightsComeInTheirOrderWhateverStopsTheOthers() throws Exception {
    NightBatch batch =
        NightBatch.of(
            NIGHTS,
            i -> {
              if (i == 1) {
                throw new IllegalStateException("broken");
              }
              if (i == 2) {
                throw new OutOfMemoryError();
              }

              return finished(i);
            },
            Progress.SILENT);
    assertThat(batch.finished()).containsExactly(finished(0), finished(3));
    assertThat(batch.faults()).extracting(NightFault::night).containsExactly("b");
    assertThat(batch.tooLong())
        .singleElement()
        .asString()
        .matches("night c: too long for the [0-9]+ MiB of memory .*: let it use more, .*");
  }

  @Test
  void aFolderThatCannotBeWrittenToStopsTheJob() {
    assertThatThrownBy(
            () ->
                NightBatch.of(
                    NIGHTS,
                    i -> {
                      throw new UnwritableOutputException(Path.of("out" + i), "full");
                    },
                    Progress.SILENT))
        .isInstanceOf(UnwritableOutputException.class)
        .hasMessageContaining("out0");
  }

  private static FinishedNight finished(int i) {
    return new FinishedNight(null, Path.of(i + ".html"), Path.of(i + ".json"), Optional.empty());
  }
}
