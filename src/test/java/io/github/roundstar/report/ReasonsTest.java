package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.results.NotComputed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A missing figure finds its own reason before that of a relative. */
class ReasonsTest {
  private final Reasons reasons =
      new Reasons(
          List.of(
              new NotComputed("/runs/*/periodic", "too short"),
              new NotComputed("/night/guided/rmsRadialImagingPixels", "no imaging scale"),
              new NotComputed("/night/guided", "no frame was used")));

  @Test
  void ownEntryComesFirst() {
    assertThat(reasons.why("/night/guided")).isEqualTo("no frame was used");
    assertThat(reasons.why("/night/guided/rmsRadialImagingPixels")).isEqualTo("no imaging scale");
  }

  @Test
  void wholeExplainsItsParts() {
    assertThat(reasons.why("/runs/3/periodic/components")).isEqualTo("too short");
  }

  @Test
  void laterPointersStandIn() {
    assertThat(reasons.sentence("/night/periodic", "/runs/*/periodic")).isEqualTo("Too short.");
  }

  @Test
  void silenceIsAdmitted() {
    assertThat(reasons.why("/polarAxis")).contains("no reason");
  }
}
