package io.github.roundstar.pipeline;

import io.github.roundstar.compare.OwnNights;
import io.github.roundstar.compare.PromiseJudge;
import io.github.roundstar.model.Night;
import io.github.roundstar.model.SourceFile;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.FiniteNumbers;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.Usual;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The nights before a night: those of the same call, and the results in the output folder.
 *
 * <p>What counts, so that the same logs in the same folder give the same bytes: a night that ended
 * before this one began, with the same mount and optics, and the {@value #MOST} latest of them. A
 * result in the folder that shares a log with the call is passed over, since the call makes it
 * anew; of two results that share a log the later one counts. Both kinds are read from the JSON
 * that is written. Nights of a call begin in order of time, and a night waits for the figures of
 * those before it.
 */
final class EarlierNights {
  /** So many earlier nights tell what is usual; a year's work on the mount is another mount. */
  static final int MOST = 30;

  private static final Pattern NAME =
      Pattern.compile("\\d{4}-\\d\\d-\\d\\d(-[0-9a-f]{8,64})?\\.json");
  private static final int DATE_LETTERS = 10;

  private final Path folder;
  private final Set<String> logs;
  private final List<CompletableFuture<Optional<NightResult>>> ofCall;
  private final Map<Path, Optional<NightResult>> read = new ConcurrentHashMap<>();
  private final Set<String> damaged = Collections.synchronizedSet(new TreeSet<>());

  /**
   * Earlier nights of a call.
   *
   * @param folder where results go
   * @param nights of the call, in order of time
   */
  EarlierNights(Path folder, List<Night> nights) {
    this.folder = folder;
    this.logs =
        nights.stream()
            .flatMap(night -> night.sources().stream())
            .map(SourceFile::sha256)
            .collect(Collectors.toSet());
    this.ofCall =
        nights.stream().map(night -> new CompletableFuture<Optional<NightResult>>()).toList();
  }

  /**
   * A night of the call beside those before it.
   *
   * @param faults hears of what a fault of the tool took
   */
  NightResult beside(int index, NightResult night, Faults faults) {
    if (index < ofCall.size() - 1) {
      ofCall
          .get(index)
          .complete(
              faults.within(
                  "what later nights see", () -> asRead(night), Optional.<NightResult>empty()));
    }
    return faults.withinOrElse(
        "earlier nights",
        () -> {
          List<NightResult> before = before(index, night);
          PromiseKept kept = PromiseJudge.ofLast(before, List.of(night)).orElse(null);
          Usual usual = OwnNights.of(night, before).orElse(null);
          return night.beside(kept, usual);
        },
        () -> night.beside(null, null));
  }

  /** A night of the call is over, whatever came of it: none waits for it any longer. */
  void over(int index) {
    ofCall.get(index).complete(Optional.empty());
  }

  /** Results that could not be read, each with its remedy. */
  List<String> warnings() {
    return List.copyOf(damaged);
  }

  /** As it will be read back from its file. */
  private static Optional<NightResult> asRead(NightResult night) {
    try {
      return Optional.of(
          NightJson.readForOthers(NightJson.write(FiniteNumbers.of(night, new Faults()))));
    } catch (IOException e) {
      throw new IllegalStateException("a result that cannot be read back", e);
    }
  }

  private List<NightResult> before(int index, NightResult night) {
    if (night.night().startUtc() == null) {
      return List.of();
    }
    List<NightResult> found = new ArrayList<>();
    for (int i = 0; i < index; i++) {
      ofCall.get(i).join().filter(earlier -> counts(earlier, night)).ifPresent(found::add);
    }
    Set<String> seen = new HashSet<>(logs);
    int ofFolder = 0;
    for (Path file : filesUpTo(night.night().date())) {
      if (ofFolder == MOST) {
        break;
      }
      Optional<NightResult> earlier =
          read.computeIfAbsent(file, this::read).filter(other -> counts(other, night));
      if (earlier.isPresent() && Collections.disjoint(seen, hashes(earlier.get()))) {
        seen.addAll(hashes(earlier.get()));
        found.add(earlier.get());
        ofFolder++;
      }
    }
    found.sort(
        Comparator.comparing((NightResult other) -> Instant.parse(other.night().endUtc()))
            .thenComparing(other -> other.night().date()));
    return List.copyOf(found.subList(Math.max(0, found.size() - MOST), found.size()));
  }

  private static boolean counts(NightResult earlier, NightResult night) {
    return earlier.night().startUtc() != null
        && earlier.night().endUtc() != null
        && Instant.parse(earlier.night().endUtc()).isBefore(Instant.parse(night.night().startUtc()))
        && OwnNights.sameTelescope(earlier, night);
  }

  private static Set<String> hashes(NightResult night) {
    return night.inputs().stream().map(Input::sha256).collect(Collectors.toSet());
  }

  /** Results of nights up to a night's evening, the latest first. */
  private List<Path> filesUpTo(String night) {
    String date = night.substring(0, Math.min(DATE_LETTERS, night.length()));
    List<Path> files = new ArrayList<>();
    try (DirectoryStream<Path> all = Files.newDirectoryStream(folder, "*.json")) {
      for (Path file : all) {
        String name = String.valueOf(file.getFileName());
        if (NAME.matcher(name).matches() && name.substring(0, DATE_LETTERS).compareTo(date) <= 0) {
          files.add(file);
        }
      }
    } catch (IOException e) {
      return List.of(); // No folder yet, so no earlier nights.
    }
    files.sort(Comparator.comparing((Path file) -> String.valueOf(file.getFileName())).reversed());
    return files;
  }

  private Optional<NightResult> read(Path file) {
    try {
      return Optional.of(NightJson.readForOthers(ResultReader.bytes(file)));
    } catch (IOException e) {
      damaged.add(
          file.getFileName()
              + ": not a night's result that can be read, so it does not count among your earlier"
              + " nights: analyse its log again, or remove the file");
      return Optional.empty();
    }
  }
}
