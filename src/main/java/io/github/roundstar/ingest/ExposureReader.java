package io.github.roundstar.ingest;

import io.github.roundstar.formats.FitsImage;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.formats.PhotoHeader;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureList;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Reads what the user named as exposures: a folder of FITS images, raw files or JPEGs, or one list.
 * A file that cannot be used becomes a problem; the others go on.
 */
public final class ExposureReader {
  private static final Set<String> FITS = Set.of("fits", "fit", "fts", "fz");
  private static final Set<String> PHOTOS =
      Set.of(
          "jpg", "jpeg", "tif", "tiff", "dng", "cr2", "cr3", "nef", "arw", "raf", "orf", "rw2",
          "pef", "heic");

  private ExposureReader() {}

  /**
   * Reads a folder or a list.
   *
   * @throws UnusableInputException if there is nothing to read there, or the list is no table
   */
  public static ExposureList read(Path path) throws UnusableInputException {
    List<String> problems = new ArrayList<>();
    List<ExposureFrame> frames;
    try {
      frames =
          Files.isDirectory(path)
              ? folder(path, problems)
              : isImage(path)
                  ? images(List.of(path), problems)
                  : ExposureTable.read(path, problems);
    } catch (FormatException e) {
      throw new UnusableInputException(e);
    } catch (IOException e) {
      throw new UnusableInputException(path, e);
    }
    return new ExposureList(withoutTwins(frames, problems), problems);
  }

  private static List<ExposureFrame> folder(Path folder, List<String> problems)
      throws IOException, FormatException {
    List<Path> files = new ArrayList<>();
    try (DirectoryStream<Path> all = Files.newDirectoryStream(folder)) {
      for (Path file : all) {
        if (isImage(file)) {
          files.add(file);
        }
      }
    }
    if (files.isEmpty()) {
      throw new FormatException(
          String.valueOf(folder.getFileName()),
          0,
          "holds no image",
          "name a folder of FITS, raw or JPEG files, or a list of exposures");
    }
    files.sort(Comparator.comparing(file -> String.valueOf(file.getFileName())));
    return images(files, problems);
  }

  private static List<ExposureFrame> images(List<Path> files, List<String> problems) {
    List<ExposureFrame> frames = new ArrayList<>();
    for (Path file : files) {
      try {
        frames.add(image(file));
      } catch (FormatException e) {
        problems.add(e.getMessage());
      } catch (IOException e) {
        problems.add(FormatException.unreadable(file, e).getMessage());
      }
    }
    return frames;
  }

  private static ExposureFrame image(Path file) throws IOException, FormatException {
    if (!FITS.contains(ending(file))) {
      return PhotoExposure.of(file, PhotoHeader.read(file));
    }
    try (FitsImage image = FitsImage.open(file)) {
      return FitsExposure.of(file, image.header());
    }
  }

  /** Two files of one start cannot both be right: the first by name is kept. */
  private static List<ExposureFrame> withoutTwins(
      List<ExposureFrame> frames, List<String> problems) {
    Map<Instant, String> seen = new HashMap<>();
    List<ExposureFrame> kept = new ArrayList<>();
    for (ExposureFrame frame : frames) {
      String twin = seen.putIfAbsent(frame.start(), frame.file());
      if (twin == null) {
        kept.add(frame);
      } else {
        problems.add(
            FormatException.located(
                frame.file(),
                0,
                "starts at the same time as " + twin,
                "keep one of the two; " + twin + " was used"));
      }
    }
    kept.sort(Comparator.comparing(ExposureFrame::start));
    return kept;
  }

  private static boolean isImage(Path file) {
    return FITS.contains(ending(file)) || PHOTOS.contains(ending(file));
  }

  /** Whether a FITS image lies there. */
  static boolean isFitsFile(Path file) {
    return FITS.contains(ending(file)) && Files.isRegularFile(file);
  }

  private static String ending(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    return name.substring(name.lastIndexOf('.') + 1);
  }
}
