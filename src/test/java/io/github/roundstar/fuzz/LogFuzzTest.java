package io.github.roundstar.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.ingest.InferredLog;
import io.github.roundstar.ingest.LayoutReader;
import io.github.roundstar.ingest.LogReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.ingest.layout.Inference;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.ingest.layout.LayoutText;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Tag;

/** Logs whose layout is worked out, and logs that do not fit the layout they are read by. */
@Tag("fuzz")
class LogFuzzTest {
  /** Read once: most of the time of an input went into it and into a second inference. */
  private static final Layout OTHER = other();

  private static Layout other() {
    try {
      return LayoutReader.layout(Path.of("sample-logs", "layouts", "barge.layout.toml"));
    } catch (UnusableInputException e) {
      throw new IllegalStateException(e);
    }
  }

  @FuzzTest(maxDuration = "2m")
  void readsOrRefuses(byte @NotNull [] log) throws Exception {
    Refusal.orReads(
        log,
        file -> {
          Inference found = InferredLog.infer(file);
          assertThat(found.decisions()).isNotEmpty();
          byte[] written = LayoutText.of(found.layout()).getBytes(UTF_8);
          Layout layout = LayoutFile.read(Refusal.FILE, written);
          Refusal.orReads(() -> Rows.areAccountedFor(LayoutReader.read(file, layout)));
          if (!LogReader.isGuideTable(file)) {
            Rows.areAccountedFor(InferredLog.readIfCertain(file, found));
          }
        });
    Refusal.orReads(
        log,
        file -> {
          if (LogReader.isGuideTable(file)) {
            Rows.areAccountedFor(LogReader.read(file, Optional.empty()));
          }
          Rows.areAccountedFor(LayoutReader.read(file, OTHER));
        });
  }
}
