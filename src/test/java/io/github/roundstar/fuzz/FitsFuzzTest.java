package io.github.roundstar.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.formats.FitsImage;
import io.github.roundstar.formats.PhotoHeader;
import org.junit.jupiter.api.Tag;

/** Images: the keywords and pixels of FITS, the header of a photograph. */
@Tag("fuzz")
class FitsFuzzTest {
  /** Larger ones would only cost time [pixels]. */
  private static final long SMALL = 1 << 20;

  @FuzzTest(maxDuration = "2m")
  void readsOrRefuses(byte @NotNull [] bytes) {
    Refusal.orReads(
        bytes,
        file -> {
          try (FitsImage image = FitsImage.open(file)) {
            image.header().text("DATE-OBS");
            image.header().number("EXPTIME");
            if ((long) image.width() * image.height() <= SMALL) {
              assertThat(image.pixels()).hasSize(image.width() * image.height());
            }
          }
        });
    Refusal.orReads(bytes, file -> PhotoHeader.read(file));
  }
}
