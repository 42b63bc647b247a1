package io.github.roundstar.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.model.ExposureFrame;
import org.junit.jupiter.api.Tag;

/** Lists of exposures: their header, their times, the names of images in them. */
@Tag("fuzz")
class ExposureListFuzzTest {
  @FuzzTest(maxDuration = "2m")
  void readsOrRefuses(byte @NotNull [] list) {
    Refusal.orReads(
        list,
        file -> {
          for (ExposureFrame frame : ExposureReader.read(file).frames()) {
            assertThat(frame.seconds()).isPositive();
            // Whatever folder a list names, an image is looked for beside the list only.
            frame.image().ifPresent(image -> assertThat(image).hasParentRaw(file.getParent()));
          }
        });
  }
}
