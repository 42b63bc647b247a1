package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.results.Exposure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** How often the cause of trailed exposures is right, by fault, as a table on standard output. */
final class CauseTable {
  private CauseTable() {}

  /**
   * Plays the nights.
   *
   * @param arguments how many nights per fault, and the first letters of the faults if not all
   */
  public static void main(String[] arguments)
      throws IOException, FormatException, UnusableInputException {
    int nights = Integer.parseInt(arguments[0]);
    String prefix = arguments.length > 1 ? arguments[1] : "";
    Path folder = Files.createTempDirectory("causes");
    System.out.println("| fault | nights right | exposures spoilt | cause right | other causes |");
    System.out.println("|---|---|---|---|---|");
    for (SingleFault fault : SingleFault.values()) {
      if (fault.name().startsWith(prefix)) {
        System.out.println(row(fault, nights, folder));
      }
    }
  }

  private static String row(SingleFault fault, int nights, Path folder)
      throws IOException, FormatException, UnusableInputException {
    int goodNights = 0;
    int spoilt = 0;
    int right = 0;
    Map<String, Integer> others = new TreeMap<>();
    for (long seed = 201; seed <= 200 + nights; seed++) {
      int all = 0;
      int here = 0;
      for (Exposure e : FaultNight.judged(fault.scenario(seed), fault.equipment(), folder)) {
        if (e.verdict().equals(fault.verdict())) {
          all++;
          here += fault.cause.equals(e.cause()) ? 1 : 0;
          if (!fault.cause.equals(e.cause())) {
            others.merge(String.valueOf(e.cause()), 1, Integer::sum);
          }
        }
      }
      spoilt += all;
      right += here;
      goodNights += 2 * here > all ? 1 : 0;
    }
    return String.format(
        Locale.ROOT,
        "| %s | %d of %d | %d | %d | %s |",
        fault.name().toLowerCase(Locale.ROOT).replace('_', ' '),
        goodNights,
        nights,
        spoilt,
        right,
        others);
  }
}
