package io.github.roundstar.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.ingest.GuideTableReader;
import org.junit.jupiter.api.Tag;

/** Guide tables: the YAML of their header, their columns, their rows. */
@Tag("fuzz")
class GuideTableFuzzTest {
  @FuzzTest(maxDuration = "2m")
  void readsOrRefuses(byte @NotNull [] table) {
    Refusal.orReads(table, file -> Rows.areAccountedFor(GuideTableReader.read(file)));
  }
}
