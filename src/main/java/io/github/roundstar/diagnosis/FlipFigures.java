package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.BlockLevels.Block;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.RunStrength;
import io.github.roundstar.results.Flip;
import io.github.roundstar.results.Flip.Change;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.signal.Pooled;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What changed when the mount went over to the other side of its pier: the runs of one side, back
 * to the flip before, against those of the other, on to the flip after.
 */
final class FlipFigures {
  /** Figures that a flip is tried on; a chance find among them is to stay as rare as in one. */
  private static final int FIGURES = 8;

  /** Half width of the interval of a change in standard errors, by Bonferroni's inequality. */
  private static final double SIGMAS =
      new NormalDistribution(null, 0, 1).inverseCumulativeProbability(1 - 0.025 / FIGURES);

  private static final double WIDER = SIGMAS / Estimate.SIGMAS_95;

  /** More flips in a night are somebody's test of the mount. */
  private static final int MOST = 12;

  private final List<RunStudy> studies;
  private final List<RunResult> runs;
  private final List<Integer> before;
  private final List<Integer> after;
  private final NightClock clock;

  private FlipFigures(
      List<RunStudy> studies,
      List<RunResult> runs,
      List<Integer> before,
      List<Integer> after,
      NightClock clock) {
    this.studies = studies;
    this.runs = runs;
    this.before = before;
    this.after = after;
    this.clock = clock;
  }

  static List<Flip> of(
      List<RunStudy> studies, List<RunResult> runs, Fields fields, NightClock clock) {
    List<List<Integer>> sides = sides(studies);
    List<Flip> flips = new ArrayList<>();
    for (int s = 1; s < Math.min(sides.size(), MOST + 1); s++) {
      List<Integer> before = sides.get(s - 1);
      List<Integer> after = sides.get(s);
      int last = fields.of(before.get(before.size() - 1));
      boolean same = last == fields.of(after.get(0));
      flips.add(
          new FlipFigures(studies, runs, guided(studies, before), guided(studies, after), clock)
              .flip(after.get(0), same));
    }
    return flips;
  }

  /** Runs that follow each other on one side of the pier, where there are frames in them. */
  private static List<List<Integer>> sides(List<RunStudy> studies) {
    List<List<Integer>> sides = new ArrayList<>();
    int last = -1;
    for (int i = 0; i < studies.size(); i++) {
      if (studies.get(i).run().frames().size() == 0) {
        continue;
      }
      if (last < 0
          || Flips.between(studies.get(last).run(), studies.get(i).run())
          || studies.get(i).run().pointing().pierSide().isEmpty()) {
        sides.add(new ArrayList<>());
      }
      sides.get(sides.size() - 1).add(i);
      last = i;
    }
    return sides.stream()
        .filter(s -> studies.get(s.get(0)).run().pointing().pierSide().isPresent())
        .toList();
  }

  /** A mount left to itself moves otherwise than one that is guided. */
  private static List<Integer> guided(List<RunStudy> studies, List<Integer> side) {
    List<Integer> guided =
        side.stream().filter(i -> studies.get(i).run().mode() != GuidingMode.UNGUIDED).toList();
    return guided.isEmpty() ? side : guided;
  }

  private Flip flip(int first, boolean sameTarget) {
    RunStudy study = studies.get(first);
    return new Flip(
        study.run().instantAt(study.run().frames().timeSeconds(0)).map(Instants::text).orElse(null),
        study.run().id(),
        study.run().pointing().pierSide().orElseThrow(),
        sameTarget,
        scatter(Axis.RA),
        scatter(Axis.DEC),
        noise(Axis.RA),
        noise(Axis.DEC),
        drift(RunStudy::raDriftSky),
        drift(RunStudy::decDrift),
        response(
            RunStudy::ra,
            run ->
                run.responseArcsecPerSecond() == null || run.responseArcsecPerSecond().ra() == null
                    ? null
                    : run.responseArcsecPerSecond().ra().axis()),
        response(
            RunStudy::dec,
            run ->
                run.responseArcsecPerSecond() == null || run.responseArcsecPerSecond().dec() == null
                    ? null
                    : run.responseArcsecPerSecond().dec().axis()));
  }

  private Change scatter(Axis axis) {
    return change(
        PointingFigures.rms(of(before), axis),
        PointingFigures.rms(of(after), axis),
        step(BlockLevels.ofOffsets(studies, clock, axis)));
  }

  private Change noise(Axis axis) {
    return change(
        noise(before, axis), noise(after, axis), step(BlockLevels.ofNoise(studies, clock, axis)));
  }

  private Optional<Estimate> noise(List<Integer> side, Axis axis) {
    List<Estimate> found =
        of(side).stream()
            .map(study -> axis == Axis.RA ? study.ra() : study.dec())
            .flatMap(answer -> answer.value().stream())
            .map(AxisMotion::noiseArcsec)
            .toList();
    return found.isEmpty() ? Optional.empty() : Optional.of(Pooled.of(found));
  }

  private static Change change(
      Optional<Estimate> before, Optional<Estimate> after, Optional<Estimate> step) {
    return before.isEmpty() || after.isEmpty() || step.isEmpty()
        ? null
        : new Change(before.get(), after.get(), step.get(), 1);
  }

  /** By what the root of a mean square is multiplied at the flip. */
  private Optional<Estimate> step(BlockLevels levels) {
    List<Block> blocks =
        levels.blocks().stream()
            .filter(block -> before.contains(block.study()) || after.contains(block.study()))
            .toList();
    double[] beyond = blocks.stream().mapToDouble(b -> after.contains(b.study()) ? 1 : 0).toArray();
    if (Arrays.stream(beyond).distinct().count() < 2) {
      return Optional.empty();
    }
    double[] all = new double[beyond.length];
    Arrays.fill(all, 1);
    return LevelTrend.first(
            blocks.stream().mapToDouble(Block::seconds).toArray(),
            blocks.stream().mapToDouble(Block::level).toArray(),
            new double[][] {beyond, all},
            SIGMAS)
        .map(
            step ->
                new Estimate(
                    Math.exp(step.value() / 2),
                    Math.exp(step.lo95() / 2),
                    Math.exp(step.hi95() / 2)));
  }

  private Change drift(Function<RunStudy, Answer<Estimate>> figure) {
    Optional<Estimate> one = NightFigures.mean(of(before), figure).value();
    Optional<Estimate> other = NightFigures.mean(of(after), figure).value();
    if (one.isEmpty() || other.isEmpty()) {
      return null;
    }
    double half = WIDER * Math.hypot(half(one.get()), half(other.get()));
    return new Change(
        one.get(),
        other.get(),
        Estimate.symmetric(other.get().value() - one.get().value(), half),
        0);
  }

  /** The night's response times what the runs of a side say beside it. */
  private Change response(
      Function<RunStudy, Answer<AxisMotion>> axis, Function<RunResult, Estimate> ofNight) {
    Optional<Estimate> one = strength(before, axis);
    Optional<Estimate> other = strength(after, axis);
    Optional<Double> night =
        Stream.concat(before.stream(), after.stream())
            .map(runs::get)
            .map(ofNight)
            .filter(Objects::nonNull)
            .map(Estimate::value)
            .findFirst();
    if (one.isEmpty() || other.isEmpty() || night.isEmpty() || !(one.get().value() > 0)) {
      return null;
    }
    double ratio = other.get().value() / one.get().value();
    double half =
        WIDER * Math.hypot(half(other.get()), ratio * half(one.get())) / one.get().value();
    return new Change(
        one.get().times(night.get()),
        other.get().times(night.get()),
        Estimate.symmetric(ratio, half),
        1);
  }

  private Optional<Estimate> strength(
      List<Integer> side, Function<RunStudy, Answer<AxisMotion>> axis) {
    List<Estimate> found =
        of(side).stream()
            .flatMap(study -> axis.apply(study).then(RunStrength::overNight).value().stream())
            .filter(estimate -> half(estimate) > 0)
            .toList();
    return found.isEmpty() ? Optional.empty() : Optional.of(Pooled.ofOneTruth(found));
  }

  private List<RunStudy> of(List<Integer> side) {
    return side.stream().map(studies::get).toList();
  }

  private static double half(Estimate estimate) {
    return (estimate.hi95() - estimate.lo95()) / 2;
  }
}
