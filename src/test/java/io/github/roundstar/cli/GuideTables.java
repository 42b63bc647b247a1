package io.github.roundstar.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/** Small guide tables for the tests. */
final class GuideTables {
  static final String NAMES = "time,ra_offset,dec_offset,ra_pulse,dec_pulse\n";

  private GuideTables() {}

  /** Rows of noise, 3 s apart. */
  static String rows(long seed, double firstSeconds, int count) {
    Random random = new Random(seed);
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < count; i++) {
      rows.append(
          String.format(
              Locale.ROOT,
              "%.3f,%.3f,%.3f,%d,%d\n",
              firstSeconds + 3 * i,
              0.4 * random.nextGaussian(),
              0.4 * random.nextGaussian(),
              random.nextInt(100) - 50,
              random.nextInt(100) - 50));
    }
    return rows.toString();
  }

  /** A plain table of noise without absolute time. */
  static String good(long seed) {
    return NAMES + rows(seed, 0, 60);
  }

  /** An ECSV header with the given entries of {@code meta}, and the columns of {@link #NAMES}. */
  static String header(String meta) {
    return """
        # %ECSV 1.0
        # ---
        # delimiter: ','
        # datatype:
        # - {name: time, unit: s, datatype: float64}
        # - {name: ra_offset, unit: arcsec, datatype: float64}
        # - {name: dec_offset, unit: arcsec, datatype: float64}
        # - {name: ra_pulse, unit: ms, datatype: int64}
        # - {name: dec_pulse, unit: ms, datatype: int64}
        # meta: {\
        """
        + meta
        + "}\n"
        + NAMES;
  }

  static Path write(Path folder, String name, String text) throws IOException {
    return Files.write(folder.resolve(name), text.getBytes(UTF_8));
  }
}
