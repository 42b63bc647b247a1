package io.github.roundstar.pipeline;

import io.github.roundstar.results.SeasonJson;
import io.github.roundstar.results.SeasonNight;
import io.github.roundstar.results.SeasonResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** What an earlier call left: which logs went into which nights, by their content. */
final class SeasonMemory {
  private static final Pattern PLAIN_NAME = Pattern.compile("[a-z0-9-]+\\.(json|html)");

  private final Path out;
  private final List<SeasonNight> nights;
  private final Map<String, List<String>> namesByHash = new HashMap<>();

  private SeasonMemory(Path out, List<SeasonNight> nights) {
    this.out = out;
    this.nights = nights;
    for (SeasonNight night : nights) {
      for (String hash : night.sha256()) {
        namesByHash.computeIfAbsent(hash, any -> new ArrayList<>()).add(night.night());
      }
    }
  }

  /** Nothing where there is none, or where it was made by another version or other settings. */
  static SeasonMemory of(Path out, Path json, String version, String settingsSha256) {
    try {
      if (Files.exists(json)) {
        SeasonResult earlier = SeasonJson.read(Files.readAllBytes(json));
        boolean same =
            version.equals(earlier.version()) && settingsSha256.equals(earlier.settingsSha256());
        boolean ours = earlier.nights().stream().allMatch(SeasonMemory::liesBeside);
        return new SeasonMemory(out, same && ours ? earlier.nights() : List.of());
      }
    } catch (IOException e) {
      // A file that cannot be read tells nothing; every night is then analysed.
    }
    return new SeasonMemory(out, List.of());
  }

  /** Whether a night's files are named as this tool names them: no folder, here or elsewhere. */
  private static boolean liesBeside(SeasonNight night) {
    return night != null
        && PLAIN_NAME.matcher(String.valueOf(night.result())).matches()
        && PLAIN_NAME.matcher(String.valueOf(night.report())).matches();
  }

  boolean knows(String hash) {
    return namesByHash.containsKey(hash);
  }

  /** Names of the nights that a log went into. */
  List<String> names(String hash) {
    return namesByHash.getOrDefault(hash, List.of());
  }

  /** The nights that were made of exactly these logs and whose files are still there; else none. */
  List<SeasonNight> madeOf(Set<String> hashes) {
    List<SeasonNight> made = new ArrayList<>();
    Set<String> used = new HashSet<>();
    for (SeasonNight night : nights) {
      if (hashes.containsAll(night.sha256())) {
        made.add(night);
        used.addAll(night.sha256());
      }
    }
    boolean whole =
        used.equals(hashes)
            && made.stream()
                .allMatch(
                    night ->
                        Files.isRegularFile(out.resolve(night.result()))
                            && Files.isRegularFile(out.resolve(night.report())));
    return whole ? made : List.of();
  }

  /** Hashes of logs that went into earlier results and are no more. */
  Set<String> gone(Set<String> present) {
    Set<String> gone = new HashSet<>(namesByHash.keySet());
    gone.removeAll(present);
    return gone;
  }
}
