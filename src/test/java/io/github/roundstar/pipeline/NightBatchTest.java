package io.github.roundstar.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.roundstar.model.Night;
import io.github.roundstar.results.Faults;
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
    Faults faults = new Faults();
    NightBatch batch =
        NightBatch.of(
            NIGHTS,
            (i, ofNight) -> {
              if (i == 3) {
                ofNight.add("/runs/0/periodic", new ArithmeticException("half broken"));
              }
              if (i == 1) {
                throw new IllegalStateException("broken");
              }
              if (i == 2) {
                throw new OutOfMemoryError();
              }

              return finished(i);
            },
            Progress.SILENT,
            faults);
    assertThat(batch.finished())
        .extracting(FinishedNight::report)
        .containsExactly(finished(0).report(), finished(3).report());
    assertThat(batch.lost()).containsExactly("b");
    assertThat(faults.all())
        .extracting(Faults.Caught::part)
        .containsExactly("night b: its report", "night d: /runs/0/periodic");
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
                    (i, ofNight) -> {
                      throw new UnwritableOutputException(Path.of("out" + i), "full");
                    },
                    Progress.SILENT,
                    new Faults()))
        .isInstanceOf(UnwritableOutputException.class)
        .hasMessageContaining("out0");
  }

  private static FinishedNight finished(int i) {
    return new FinishedNight(
        null, Path.of(i + ".html"), Path.of(i + ".json"), new double[0], Optional.empty());
  }
}
