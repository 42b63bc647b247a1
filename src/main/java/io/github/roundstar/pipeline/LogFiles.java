package io.github.roundstar.pipeline;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Finds the files that the user named: files, folders, or patterns for the last part of a path. */
public final class LogFiles {
  static final String LOG_NAMES = "*.{csv,ecsv,txt,log,csv.gz,ecsv.gz,txt.gz,log.gz}";

  private static final String LOG_AND_RESULT_NAMES =
      "*.{csv,ecsv,txt,log,csv.gz,ecsv.gz,txt.gz,log.gz,json}";

  private static final String FITS_NAMES = "*.{fits,fit,fts,fits.fz,fits.gz,FITS,FIT,FTS,fits.FZ}";

  private final Set<Path> files = new LinkedHashSet<>();
  private final List<String> missing = new ArrayList<>();
  private final String namesInFolders;

  private LogFiles(String namesInFolders) {
    this.namesInFolders = namesInFolders;
  }

  static LogFiles named(List<String> names) {
    return new LogFiles(LOG_NAMES).add(names);
  }

  /** Logs, and JSON results where a folder holds them. */
  static LogFiles withResults(List<String> names) {
    return new LogFiles(LOG_AND_RESULT_NAMES).add(names);
  }

  /** FITS images, all of them where a folder is named. */
  public static LogFiles images(List<String> names) {
    return new LogFiles(FITS_NAMES).add(names);
  }

  private LogFiles add(List<String> names) {
    names.forEach(this::add);
    return this;
  }

  /** The files, each once, in the order named; those of a folder by name. */
  public List<Path> files() {
    return List.copyOf(files);
  }

  /** What could not be found, each with its remedy. */
  public List<String> missing() {
    return List.copyOf(missing);
  }

  private void add(String name) {
    if (name.isBlank()) {
      missing.add("'" + name + "': an empty name: name a log, or . for this folder");
      return;
    }
    try {
      Path path = Path.of(name);
      if (Files.isDirectory(path)) {
        addMatching(name, path, namesInFolders);
      } else if (Files.exists(path) || !isPattern(name)) {
        files.add(path);
      } else {
        Path folder = path.getParent() == null ? Path.of("") : path.getParent();
        if (isPattern(folder.toString())) {
          missing.add(
              name + ": a pattern in a folder's name: give the pattern for the last part only");
          return;
        }
        addMatching(name, folder, String.valueOf(path.getFileName()));
      }
    } catch (InvalidPathException e) {
      missing.add(name + ": not a path: check for odd characters");
    }
  }

  private void addMatching(String name, Path folder, String pattern) {
    List<Path> matching = new ArrayList<>();
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder, pattern)) {
      stream.forEach(matching::add);
    } catch (IOException e) {
      missing.add(name + ": the folder cannot be read: check the path and its permissions");
      return;
    }
    if (matching.isEmpty()) {
      String wanted = namesInFolders.equals(FITS_NAMES) ? "no image" : "no log file";
      missing.add(name + ": " + wanted + " here: name a file, or a folder that holds " + pattern);
    }
    matching.stream().filter(Files::isRegularFile).sorted().forEach(files::add);
  }

  private static boolean isPattern(String name) {
    return name.chars().anyMatch(c -> "*?[{".indexOf(c) >= 0);
  }
}
