package io.github.roundstar.cli;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.pipeline.LogFiles;
import io.github.roundstar.pipeline.StarImages;
import io.github.roundstar.pipeline.StarTables;
import io.github.roundstar.pipeline.UnwritableOutputException;
import io.github.roundstar.results.Faults;
import io.github.roundstar.stars.ImageShape;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code roundstar stars}: star shapes per image. */
@Command(
    name = "stars",
    description = "Measures the star shapes of FITS images.",
    footer = {"", "Example:", "  roundstar stars --out shapes sample-logs/bending-guide-scope"})
final class StarsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Parameters(
      arity = "1..*",
      paramLabel = "FITS",
      description = "An image of the main camera, a folder of them, or a pattern.")
  private List<String> images;

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where tables of images and stars go (default: none are written).")
  private Path out;

  @Override
  public Integer call() throws UnwritableOutputException {
    Faults faults = new Faults();
    LogFiles named = LogFiles.images(images);
    List<StarImages.Measured> measured = StarImages.measure(named.files(), faults);
    PrintWriter stdout = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    named.missing().forEach(err::println);
    for (StarImages.Measured image : measured) {
      if (image.shape().isEmpty()) {
        err.println(image.problem());
      } else if (!loudness.quiet()) {
        stdout.println(line(image.file(), image.shape().get(), image.arcsecPerPixel()));
      }
    }
    if (out != null) {
      StarTables.write(out, measured).forEach(stdout::println);
    }
    Complaint.print(err, faults.all(), loudness.verbose());
    return ExitCode.of(
            faults.all(),
            Stream.concat(
                    named.missing().stream(),
                    measured.stream().filter(m -> m.shape().isEmpty()).map(m -> m.problem()))
                .toList())
        .number();
  }

  private static String line(String file, ImageShape shape, double scale) {
    if (shape.elongation().isEmpty()) {
      return file + "  no star that could be measured" + shape.rejectedWords();
    }
    Estimate elongation = shape.elongation().get();
    double fwhm = shape.fwhmPixels().orElseThrow().value();
    String angle =
        shape.angleDegrees().isPresent()
            ? format(" along %.0f deg from +x to +y", shape.angleDegrees().getAsDouble())
            : "";
    return format(
            "%s  %d stars, FWHM %.2f px%s, elongation %.3f (%.3f .. %.3f)%s, field %s",
            file,
            shape.stars().size(),
            fwhm,
            Double.isNaN(scale) ? "" : format(" = %.2f arcsec", fwhm * scale),
            elongation.value(),
            elongation.lo95(),
            elongation.hi95(),
            angle,
            shape.pattern().kind().name().toLowerCase(Locale.ROOT).replace('_', '-'))
        + shape.rejectedWords();
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
