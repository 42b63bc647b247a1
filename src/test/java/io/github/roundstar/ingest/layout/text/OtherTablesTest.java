package io.github.roundstar.ingest.layout.text;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.ingest.layout.Decision;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.LinePattern;
import io.github.roundstar.ingest.layout.RunMarks;
import io.github.roundstar.ingest.layout.choice.LayoutInference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables that are no frames are left out where they can be told, else asked about. */
class OtherTablesTest {
  private static final String NAMES =
      "time s,east arcsec,north arcsec,push east ms,push north ms\n";
  private static final String MOVES =
      "step,across,up,length\n0,0.1,0.2,0.2\n1,2.1,0.2,2.0\n2,4.0,0.3,4.1\n";

  @TempDir Path folder;
  private final Random random = new Random(3);
  private int second;

  private String rows(int count) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < count; i++) {
      long east = Math.round(random.nextGaussian() * 400);
      long north = Math.round(random.nextGaussian() * 400);
      text.append(second += 3).append(',').append(east / 1000.0).append(',').append(north / 1000.0);
      text.append(',').append(east / 2).append(',').append(north / 2).append('\n');
    }
    return text.toString();
  }

  private Inference infer(String log) throws Exception {
    return LayoutInference.of(Files.write(folder.resolve("night.log"), log.getBytes(UTF_8)));
  }

  @Test
  void trialMovesBetweenTheirLinesAreLeftOut() throws Exception {
    String moves = "; trial moves begin\n" + MOVES + "; trial moves end\n";

    Inference found =
        infer(
            moves
                + "; go, declination 5\n"
                + NAMES
                + rows(60)
                + moves
                + "; go, declination 9\n"
                + NAMES
                + rows(60));

    RunMarks runs = found.layout().runs();
    assertThat(runs.leftOut())
        .containsExactly(
            new RunMarks.Block(
                LinePattern.of("^; trial moves begin"),
                Optional.of(LinePattern.of("^; trial moves end"))));
    assertThat(runs.begins().orElseThrow().expression()).isEqualTo("^; go, declination");
    assertThat(found.decisions())
        .extracting(Decision::line)
        .anyMatch(
            line ->
                line.startsWith(
                    "left out: a table of 3 rows and columns \"step,across,up,length\", 2 times"));
    assertThat(found.open()).isEmpty();
  }

  @Test
  void trialMovesEndBeforeLinesOfAnotherKind() throws Exception {
    Inference found = infer(NAMES + rows(60) + MOVES + "\n" + rows(60) + MOVES + NAMES + rows(60));

    assertThat(found.layout().runs().leftOut())
        .containsExactly(
            new RunMarks.Block(LinePattern.of("^\\s*step,across,up,length"), Optional.empty()));
    assertThat(found.open()).isEmpty();
  }

  @Test
  void tableWhoseEndIsNotToldIsAskedAbout() throws Exception {
    String five = "step,across,up,length,turn\n0,0.1,0.2,0.2,5\n1,2.1,0.2,2.0,6\n";

    Inference found = infer(NAMES + rows(60) + five + rows(60));

    assertThat(found.open()).extracting(Decision::about).contains("table in line 62");
    assertThat(found.open()).extracting(Decision::ask).anyMatch(a -> a.contains("[[leave_out]]"));
  }

  @Test
  void framesUnderOtherNamesAreNeverLeftOut() throws Exception {
    String other = "seconds,x pixels,y pixels,snr\n1,2,0.3,8\n2,1,0.2,9\n3,0,0.5,7\n";

    Inference found = infer(NAMES + rows(60) + "\n" + other + "\n");

    assertThat(found.layout().runs().leftOut()).isEmpty();
    assertThat(found.open()).extracting(Decision::about).contains("table in line 63");
  }
}
