package io.github.roundstar.cli;

import io.github.roundstar.diagnosis.Tolerance;
import io.github.roundstar.diagnosis.ToleranceQuestion;
import io.github.roundstar.ingest.EquipmentReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Equipment.GuideOptics;
import io.github.roundstar.model.Equipment.ImagingOptics;
import io.github.roundstar.model.Equipment.Limits;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code roundstar tolerance}: what optics demand of a mount, without any log. */
@Command(
    name = "tolerance",
    description =
        "Tells what optics demand of mount and guiding: guide RMS, polar axis, unguided exposure.",
    footer = {
      "",
      "Options win over the equipment file. A star counts as round as analyze has it: up to the same",
      "elongation, of air and motion together.",
      "",
      "Example:",
      "  roundstar tolerance --focal-length 750 --pixel 3.8 --seeing 2.5 \\",
      "      --sensor 6000x4000 --exposure 300 --declination 41"
    })
final class ToleranceCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Loudness loudness;

  @Option(names = "--equipment", paramLabel = "FILE", description = "TOML file with the optics.")
  private Path equipment;

  @Option(names = "--focal-length", paramLabel = "MM", description = "Of the main telescope.")
  private Double focalLength;

  @Option(names = "--pixel", paramLabel = "UM", description = "Pixel of the main camera.")
  private Double pixel;

  @Option(names = "--binning", paramLabel = "N", description = "Pixels binned per side.")
  private Integer binning;

  @Option(names = "--sensor", paramLabel = "WxH", description = "Its pixels, such as 6000x4000.")
  private String sensor;

  @Option(names = "--exposure", paramLabel = "S", description = "Exposure of the main camera.")
  private Double exposure;

  @Option(names = "--aperture", paramLabel = "MM", description = "Of the main telescope.")
  private Double aperture;

  @Option(names = "--seeing", paramLabel = "ARCSEC", description = "Usual FWHM of stars.")
  private Double seeing;

  @Option(names = "--elongation", paramLabel = "RATIO", description = "Still round (1.15).")
  private Double elongation;

  @Option(
      names = "--ratio",
      paramLabel = "SHARE",
      description = "RMS of the better axis over that of the worse, 0 to 1.")
  private Double ratio;

  @Option(
      names = "--declination",
      paramLabel = "DEG",
      description = "Of the field, for polar axis and unguided exposure.")
  private Double declination;

  @Option(
      names = "--periodic-error",
      paramLabel = "ARCSEC",
      description = "Half of peak to peak at the axis.")
  private Double periodicError;

  @Option(names = "--period", paramLabel = "S", description = "Its period.")
  private Double period;

  @Option(names = "--guide-focal-length", paramLabel = "MM", description = "Of the guide scope.")
  private Double guideFocalLength;

  @Option(names = "--guide-pixel", paramLabel = "UM", description = "Pixel of the guide camera.")
  private Double guidePixel;

  @Override
  public Integer call() throws UnusableInputException {
    Equipment given = equipment == null ? Equipment.UNKNOWN : EquipmentReader.read(equipment);
    Equipment asked =
        new Equipment(
            given.site(),
            given.mount(),
            guide(given.guide()),
            imaging(given.imaging()),
            or("--seeing", seeing, 0.1, 30, given.seeingFwhmArcsec()),
            new Limits(
                or(
                        "--elongation",
                        elongation,
                        1.001,
                        10,
                        OptionalDouble.of(given.limits().elongation()))
                    .getAsDouble(),
                given.limits().rmsArcsec()));
    refuseWithoutOptics(asked);
    refuseWithoutDeclination(asked);
    OptionalDouble none = OptionalDouble.empty();
    Tolerance tolerance =
        Tolerance.of(
            new ToleranceQuestion(
                asked,
                or("--aperture", aperture, 1, 50_000, none),
                or("--declination", declination, -89, 89, none),
                or("--ratio", ratio, 0, 1, none),
                or("--periodic-error", periodicError, 0.001, 10_000, none),
                or("--period", period, 1, 86_400, given.mount().wormPeriodSeconds())));
    ToleranceLines.of(tolerance, asked.limits()).forEach(spec.commandLine().getOut()::println);
    return ExitCode.DONE.number();
  }

  /** Without scale and seeing not one line could be answered. */
  private void refuseWithoutOptics(Equipment asked) {
    if (asked.imaging().arcsecPerPixel().isEmpty() && asked.seeingFwhmArcsec().isEmpty()) {
      throw wrong(
          "tolerance needs the optics: give --focal-length and --pixel, and --seeing, or name a file"
              + " that holds them with --equipment");
    }
  }

  /** Polar axis and unguided exposure hang on it; no field is taken to lie on the equator. */
  private void refuseWithoutDeclination(Equipment asked) {
    boolean corners =
        asked.imaging().arcsecPerPixel().isPresent()
            && asked.imaging().widthPixels().isPresent()
            && asked.imaging().heightPixels().isPresent()
            && asked.imaging().exposureSeconds().isPresent();
    boolean swing =
        periodicError != null && (period != null || asked.mount().wormPeriodSeconds().isPresent());
    if (declination == null && (corners || swing)) {
      throw wrong(
          "tolerance needs the declination of the field for "
              + (corners && swing
                  ? "polar axis and unguided exposure"
                  : corners ? "the polar axis" : "the unguided exposure")
              + ": add --declination, such as --declination 41");
    }
  }

  private GuideOptics guide(GuideOptics given) {
    return new GuideOptics(
        or("--guide-focal-length", guideFocalLength, 1, 100_000, given.focalLengthMillimetres()),
        or("--guide-pixel", guidePixel, 0.1, 100, given.pixelMicrometres()),
        given.binning(),
        given.apertureMillimetres(),
        given.mirrored(),
        given.starXArcmin(),
        given.starYArcmin(),
        given.arrangement());
  }

  private ImagingOptics imaging(ImagingOptics given) {
    int[] size = size();
    return new ImagingOptics(
        or("--focal-length", focalLength, 1, 100_000, given.focalLengthMillimetres()),
        or("--pixel", pixel, 0.1, 100, given.pixelMicrometres()),
        size.length == 0 ? given.widthPixels() : OptionalInt.of(size[0]),
        size.length == 0 ? given.heightPixels() : OptionalInt.of(size[1]),
        binning == null
            ? given.binning()
            : OptionalInt.of((int) within("--binning", binning, 1, 64)),
        or("--exposure", exposure, 0.001, 86_400, given.exposureSeconds()),
        given.positionAngleDegrees(),
        given.mirrored());
  }

  private int[] size() {
    if (sensor == null) {
      return new int[0];
    }
    if (!sensor.matches("[1-9]\\d{0,5}[xX][1-9]\\d{0,5}")) {
      throw wrong("--sensor: found '" + sensor + "', expected pixels such as 6000x4000");
    }
    String[] parts = sensor.toLowerCase(java.util.Locale.ROOT).split("x");
    return new int[] {Integer.parseInt(parts[0]), Integer.parseInt(parts[1])};
  }

  private OptionalDouble or(
      String option, Double value, double low, double high, OptionalDouble otherwise) {
    return value == null ? otherwise : OptionalDouble.of(within(option, value, low, high));
  }

  private double within(String option, double value, double low, double high) {
    if (!(value >= low && value <= high)) {
      throw wrong(option + ": " + value + " is outside " + low + " to " + high);
    }
    return value;
  }

  private ParameterException wrong(String words) {
    return new ParameterException(spec.commandLine(), words);
  }
}
