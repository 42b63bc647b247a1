package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.results.Faults;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.sky.DifferentialRefraction;
import io.github.roundstar.stars.ImageShape;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** All exposures of a night against its guide log. */
public final class ExposureStudy {
  /** Less than this share of an exposure in the log tells too little of its stars. */
  private static final double ENOUGH_COVERAGE = 0.9;

  /** Share of the measured stretch that the log must give to be its explanation. */
  private static final double EXPLAINS = 0.5;

  /** Long axes that are farther apart have different causes [deg]. */
  private static final double SAME_ANGLE_DEGREES = 30;

  /** Taken off where the refraction is not known; the evidence then says so. */
  private static final DifferentialRefraction.Offset STILL_AIR =
      new DifferentialRefraction.Offset(0, 0);

  private final MainCamera camera;
  private final List<GuidedRun> runs;
  private final Equipment equipment;
  private final Optional<FieldTurn> turn;
  private final CameraClock clock;
  private final RoundWidth width;
  private final List<Window> windows = new ArrayList<>();
  private final Optional<Flexure> flexure;
  private final Faults faults;
  private final List<String> problems;

  private ExposureStudy(
      MainCamera camera,
      List<GuidedRun> runs,
      Equipment equipment,
      Optional<FieldTurn> turn,
      Faults faults) {
    this.faults = faults;
    this.problems = new ArrayList<>(camera.problems());
    this.camera = camera;
    this.runs = runs;
    this.equipment = equipment;
    this.turn = turn;
    clock = CameraClock.of(camera.frames(), runs.stream().map(GuidedRun::run).toList());
    Optional<ImageShape> before = Optional.empty();
    for (ExposureFrame frame : camera.frames()) {
      Optional<ImageShape> shape = Optional.ofNullable(camera.shapes().get(frame.file()));
      Optional<ImageShape> last = before;
      faults
          .within(
              "exposure " + frame.file(),
              () ->
                  Optional.of(
                      Window.of(
                          frame,
                          clock.inLog(frame.start()),
                          runs,
                          MeasuredShape.of(frame, shape, last, equipment))),
              Optional.<Window>empty())
          .ifPresentOrElse(
              windows::add, () -> problems.add(frame.file() + ": left out: " + Faults.BECAUSE));
      before = shape;
    }
    width = RoundWidth.of(widths(), equipment.seeingFwhmArcsec());
    flexure =
        faults.within("/exposures flexure", () -> Flexure.of(pairs()), Optional.<Flexure>empty());
  }

  /**
   * Judges the exposures.
   *
   * @param runs the night's runs in order of time
   * @param turn how the field turns, where that is known
   * @param faults hears of exposures that a fault of the tool took
   */
  public static ExposureReport of(
      MainCamera camera,
      List<GuidedRun> runs,
      Equipment equipment,
      Optional<FieldTurn> turn,
      Faults faults) {
    return new ExposureStudy(camera, runs, equipment, turn, faults).report();
  }

  private List<Double> widths() {
    List<Double> widths = new ArrayList<>();
    for (Window window : windows) {
      boolean told =
          window.coverage() >= ENOUGH_COVERAGE
              && window.measured().isPresent()
              && window.measured().get().fwhmArcsec().isPresent();
      if (told) {
        double fwhm = window.measured().get().fwhmArcsec().getAsDouble();
        widths.add(RoundWidth.withoutMotion(fwhm, window, window.turned(turn, equipment)));
      }
    }
    return widths;
  }

  private List<Flexure.Pair> pairs() {
    List<Flexure.Pair> pairs = new ArrayList<>();
    for (int i = 1; i < windows.size(); i++) {
      Window before = windows.get(i - 1);
      Window now = windows.get(i);
      boolean usable =
          before.run().isPresent()
              && before.run().equals(now.run())
              && before.coverage() >= ENOUGH_COVERAGE
              && now.coverage() >= ENOUGH_COVERAGE
              && now.measured().flatMap(MeasuredShape::shift).isPresent();
      if (usable) {
        var shift = now.measured().orElseThrow().shift().orElseThrow();
        var air =
            now.air(equipment)
                .value()
                .flatMap(a -> a.shift(before.middleSeconds(), now.middleSeconds()))
                .orElse(STILL_AIR);
        pairs.add(
            new Flexure.Pair(
                shift.eastArcsec()
                    - (now.motion().meanEast() - before.motion().meanEast())
                    - air.eastArcsec(),
                shift.northArcsec()
                    - (now.motion().meanNorth() - before.motion().meanNorth())
                    - air.northArcsec(),
                shift.sigmaArcsec(),
                (now.middleSeconds() - before.middleSeconds()) / 3600));
      }
    }
    return pairs;
  }

  private ExposureReport report() {
    List<PredictedShape> predicted = new ArrayList<>();
    List<Boolean> explained = new ArrayList<>();
    for (Window window : windows) {
      PredictedShape shape =
          PredictedShape.of(window, window.turned(turn, equipment), width.fwhmArcsec());
      predicted.add(shape);
      explained.add(window.measured().isEmpty() || explains(shape, window.measured().get()));
    }
    ImageCause imageCause = new ImageCause(context(explained), equipment);
    List<JudgedExposure> judged = new ArrayList<>();
    for (int i = 0; i < windows.size(); i++) {
      int exposure = i;
      judged.add(
          faults.withinOrElse(
              "verdict on " + windows.get(i).frame().file(),
              () ->
                  judge(
                      windows.get(exposure),
                      predicted.get(exposure),
                      explained.get(exposure),
                      imageCause),
              () -> notCovered(windows.get(exposure), new Cause(null, Faults.BECAUSE))));
    }
    return new ExposureReport(
        judged,
        clock.words(),
        width.fwhmArcsec(),
        width.from(),
        ImageScale.words(camera.frames(), equipment),
        ImageScale.shared(camera.frames(), equipment),
        flexure,
        problems);
  }

  /** Whether the log's stretch makes up at least half of the measured one, along the same axis. */
  private static boolean explains(PredictedShape predicted, MeasuredShape measured) {
    double found = Math.log(measured.elongation().value());
    double told = Math.log(predicted.elongation().value());
    boolean along =
        measured.angleDegrees().isEmpty()
            || ImageCause.apart(
                    measured.angleDegrees().getAsDouble(), predicted.stretch().angleDegrees())
                < SAME_ANGLE_DEGREES;
    return told >= EXPLAINS * found && along;
  }

  private JudgedExposure judge(
      Window window, PredictedShape predicted, boolean explained, ImageCause imageCause) {
    if (window.coverage() < ENOUGH_COVERAGE) {
      Cause cause =
          window.lostShare() > (1 - ENOUGH_COVERAGE) / 2
              ? new Cause("star-lost", "the guide star was lost during the exposure")
              : new Cause(null, "the guide log does not cover the exposure");
      return notCovered(window, cause);
    }
    Optional<Estimate> corner = corner(window);
    JudgedBy by = JudgedBy.of(predicted, corner, window.measured());
    String verdict = by.verdict(equipment.limits().elongation());
    Cause cause =
        verdict.equals("trailed") ? cause(window, by, explained, imageCause) : new Cause(null, "");
    return new JudgedExposure(window, Optional.of(predicted), corner, verdict, cause, equipment);
  }

  private JudgedExposure notCovered(Window window, Cause cause) {
    return new JudgedExposure(
        window, Optional.empty(), Optional.empty(), "not covered", cause, equipment);
  }

  private Cause cause(Window window, JudgedBy by, boolean explained, ImageCause imageCause) {
    double seeing = width.fwhmArcsec().value();
    Optional<Cause> turned = window.turnCause(turn, equipment, by.corner());
    boolean cornerOnly = by.onlyInCorner(equipment.limits().elongation());
    boolean cornerSeen = window.measured().flatMap(MeasuredShape::corner).isPresent();
    if (cornerOnly && !cornerSeen && turned.isPresent()) {
      return turned.get();
    }
    boolean pattern = cornerOnly && window.measured().map(m -> m.patternStands()).orElse(false);
    if (explained && !pattern) {
      double[] added = window.turned(turn, equipment);
      LogCause log = new LogCause(window.run().orElseThrow(), window.from(), window.to(), seeing);
      return turned.filter(t -> log.mostly(added)).orElseGet(log::find);
    }
    return imageCause.find(
        window, window.measured().orElseThrow(), window.zenith(equipment), seeing);
  }

  /** The longest star image in a corner. */
  private Optional<Estimate> corner(Window window) {
    return window.turnedCorners(turn, equipment).stream()
        .map(added -> PredictedShape.of(window, added, width.fwhmArcsec()).elongation())
        .max(Comparator.comparing(Estimate::value));
  }

  private ImageCause.NightContext context(List<Boolean> explained) {
    List<Double> widths = new ArrayList<>();
    List<ZenithTurn.Point> toZenith = new ArrayList<>();
    double cosine = 0;
    double sine = 0;
    List<Double> angles = new ArrayList<>();
    for (int i = 0; i < windows.size(); i++) {
      Window window = windows.get(i);
      if (window.measured().isEmpty()) {
        continue;
      }
      MeasuredShape measured = window.measured().get();
      measured.fwhmArcsec().ifPresent(widths::add);
      boolean trailed =
          JudgedBy.verdict(measured.elongation(), equipment.limits().elongation())
              .equals("trailed");
      // While the guide star is lost the mount trails the stars at an angle of its own.
      boolean guided = window.coverage() >= ENOUGH_COVERAGE;
      if (!guided || !trailed || explained.get(i) || measured.angleDegrees().isEmpty()) {
        continue;
      }
      double angle = measured.angleDegrees().getAsDouble();
      angles.add(angle);
      cosine += Math.cos(Math.toRadians(2 * angle));
      sine += Math.sin(Math.toRadians(2 * angle));
      window
          .zenith(equipment)
          .ifPresent(z -> toZenith.add(new ZenithTurn.Point(z.positionAngleDegrees(), angle)));
    }
    double mean = Math.toDegrees(Math.atan2(sine, cosine)) / 2;
    return new ImageCause.NightContext(
        flexure,
        widths.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(Quantile.of(array(widths), 0.1)),
        offZenith(toZenith),
        angles.stream().mapToDouble(a -> ImageCause.apart(a, mean)).max(),
        angles.size(),
        ZenithGrowth.of(
            windows.stream().filter(w -> w.coverage() >= ENOUGH_COVERAGE).toList(),
            equipment,
            width.fwhmArcsec().value()),
        ZenithTurn.of(toZenith));
  }

  private static OptionalDouble offZenith(List<ZenithTurn.Point> points) {
    double[] apart =
        points.stream()
            .mapToDouble(p -> ImageCause.apart(p.axisDegrees(), p.zenithDegrees()))
            .toArray();
    return apart.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Quantile.median(apart));
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(v -> v).toArray();
  }
}
