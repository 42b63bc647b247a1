package io.github.roundstar.pipeline;

import io.github.roundstar.formats.FitsHeader;
import io.github.roundstar.formats.FitsImage;
import io.github.roundstar.formats.FormatException;
import io.github.roundstar.ingest.FitsExposure;
import io.github.roundstar.results.Faults;
import io.github.roundstar.stars.ImageShape;
import io.github.roundstar.stars.Plane;
import io.github.roundstar.stars.Sampling;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;

/**
 * Measures the stars of many images, as many at a time as there are processors and as fit into
 * memory.
 */
public final class StarImages {
  /** Bytes per pixel of an image in work: a float, the file's own strip, bits and stars. */
  private static final int BYTES_PER_PIXEL = 6;

  private static final int MEGABYTE = 1 << 20;

  private final int megabytes =
      (int) Math.max(64, Runtime.getRuntime().maxMemory() / MEGABYTE * 2 / 3);
  private final Semaphore memory = new Semaphore(megabytes, true);

  /**
   * One image.
   *
   * @param file file name without folders
   * @param shape its stars; nothing when it could not be used
   * @param arcsecPerPixel scale that its header tells, else NaN
   * @param problem why it could not be used; empty otherwise
   */
  public record Measured(
      String file, Optional<ImageShape> shape, double arcsecPerPixel, String problem) {}

  private StarImages() {}

  /**
   * Measures all of them, in the order named; one that cannot be used carries its reason.
   *
   * @param faults hears of images that a fault of the tool took
   */
  public static List<Measured> measure(List<Path> files, Faults faults) {
    StarImages images = new StarImages();
    ExecutorService workers =
        Executors.newFixedThreadPool(
            Math.max(1, Math.min(files.size(), Runtime.getRuntime().availableProcessors())));
    try {
      List<Future<Measured>> running = new ArrayList<>();
      files.forEach(file -> running.add(workers.submit(() -> images.one(file, faults))));
      List<Measured> measured = new ArrayList<>();
      for (Future<Measured> future : running) {
        measured.add(future.get());
      }
      return measured;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while measuring stars", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("stars of an image could not be measured", e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }

  private Measured one(Path file, Faults faults) throws InterruptedException {
    String name = String.valueOf(file.getFileName());
    try (FitsImage image = FitsImage.open(file)) {
      int needed = Math.min(megabytes, megabytes(image));
      memory.acquire(needed);
      try {
        ImageShape shape = ImageShape.of(plane(image));
        double scale = FitsExposure.optics(image.header()).arcsecPerPixel().orElse(Double.NaN);
        return new Measured(name, Optional.of(shape), scale, "");
      } finally {
        memory.release(needed);
      }
    } catch (RuntimeException | StackOverflowError e) {
      faults.add("image " + name, e);
      String problem = name + ": not measured: " + Faults.BECAUSE;
      return new Measured(name, Optional.empty(), Double.NaN, problem);
    } catch (FormatException e) {
      return new Measured(name, Optional.empty(), Double.NaN, e.getMessage());
    } catch (IOException e) {
      String problem = FormatException.unreadable(file, e).getMessage();
      return new Measured(name, Optional.empty(), Double.NaN, problem);
    }
  }

  private static int megabytes(FitsImage image) {
    long pixels = (long) image.width() * image.height();
    return (int) (pixels * BYTES_PER_PIXEL / MEGABYTE) + 1;
  }

  private static Plane plane(FitsImage image) throws IOException, FormatException {
    float[] pixels = image.pixels();
    Optional<String> pattern = mosaic(image.header());
    if (pattern.isEmpty()) {
      return Plane.of(image.width(), image.height(), pixels);
    }
    Sampling green = Sampling.green(image.width(), image.height(), pixels, pattern.get());
    return Plane.ofMosaic(image.width(), image.height(), pixels, green);
  }

  /** Pattern of a colour mosaic; nothing for monochrome or separated colours. */
  private static Optional<String> mosaic(FitsHeader header) {
    boolean planes = header.number("NAXIS3").orElse(1) > 1;
    return header
        .text("BAYERPAT", "COLORTYP", "CFAPAT")
        .map(word -> word.toUpperCase(Locale.ROOT).replaceAll("[^RGB]", ""))
        .filter(word -> word.length() == 4 && !planes);
  }
}
