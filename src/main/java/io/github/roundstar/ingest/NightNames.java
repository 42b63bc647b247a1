package io.github.roundstar.ingest;

import io.github.roundstar.model.GuideLog;
import io.github.roundstar.model.GuideRun;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The evening's date of every run. A night goes from noon to noon: of local mean solar time where
 * the longitude is known, else at the offset that the user or the log gives. With neither, nights
 * end at gaps of 6 h or more and are named as if noon were 12:00 UTC; should two of them then have
 * one date, the later takes the hash of its first file behind it.
 */
final class NightNames {
  private static final Duration HALF_DAY = Duration.ofHours(12);
  private static final Duration GAP = Duration.ofHours(6);
  private static final double SECONDS_PER_DEGREE = 240;

  private final Map<GuideRun, String> names = new IdentityHashMap<>();

  NightNames(
      List<GuideLog> dated, OptionalDouble longitudeDegrees, Optional<ZoneOffset> utcOffset) {
    List<RunOfLog> withoutNoon = new ArrayList<>();
    for (GuideLog log : dated) {
      Optional<ZoneOffset> offset = utcOffset.or(log::utcOffset);
      for (GuideRun run : log.runs()) {
        Instant first = RunSpan.of(run).first();
        if (longitudeDegrees.isPresent()) {
          double seconds = longitudeDegrees.getAsDouble() * SECONDS_PER_DEGREE;
          names.put(run, date(first.plusMillis(Math.round(seconds * 1000))).toString());
        } else if (offset.isPresent()) {
          names.put(run, date(first.plusSeconds(offset.get().getTotalSeconds())).toString());
        } else {
          withoutNoon.add(new RunOfLog(log, run, RunSpan.of(run)));
        }
      }
    }
    cutAtGaps(withoutNoon);
  }

  private record RunOfLog(GuideLog log, GuideRun run, RunSpan span) {}

  private static LocalDate date(Instant local) {
    return local.minus(HALF_DAY).atOffset(ZoneOffset.UTC).toLocalDate();
  }

  private void cutAtGaps(List<RunOfLog> runs) {
    runs.sort(Comparator.comparing(entry -> entry.span().first()));
    Set<String> taken = new HashSet<>();
    Instant end = null;
    String name = "";
    for (RunOfLog entry : runs) {
      Instant first = entry.span().first();
      if (end == null || Duration.between(end, first).compareTo(GAP) >= 0) {
        name = date(first).toString();
        if (!taken.add(name)) {
          name = withHash(name, entry.log());
        }
      }
      names.put(entry.run(), name);
      Instant last = entry.span().last();
      end = end == null || last.isAfter(end) ? last : end;
    }
  }

  /** A name made unique by the first eight digits of the file's hash. */
  static String withHash(String name, GuideLog log) {
    return name + "-" + log.source().sha256().substring(0, 8);
  }

  String of(GuideRun run) {
    return names.get(run);
  }
}
