package io.github.roundstar.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.layout.Layout;
import io.github.roundstar.ingest.layout.LayoutFile;
import io.github.roundstar.ingest.layout.LayoutText;
import io.github.roundstar.simulate.ScenarioReader;
import org.junit.jupiter.api.Tag;

/** All that users write in TOML: layouts, equipment, scenarios. */
@Tag("fuzz")
class TomlFuzzTest {
  @FuzzTest(maxDuration = "2m")
  void readsOrRefuses(byte @NotNull [] toml) {
    Refusal.orReads(
        () -> {
          Layout layout = LayoutFile.read(Refusal.FILE, toml);
          byte[] written = LayoutText.of(layout).getBytes(UTF_8);
          assertThat(LayoutFile.read(Refusal.FILE, written)).isEqualTo(layout);
        });
    Refusal.orReads(toml, file -> EquipmentReader.read(file));
    Refusal.orReads(toml, file -> ScenarioReader.read(file));
  }
}
