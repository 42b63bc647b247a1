package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Backlash;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.NoiseFloor;
import io.github.roundstar.results.RaResponse;
import io.github.roundstar.results.Response;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.results.Sticking;
import io.github.roundstar.signal.Pooled;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/**
 * Response, noise and play over all runs of a night, each pooled with what the runs scatter.
 *
 * <p>In declination the motor is what errs, not the sky: north and south are those of a tube west
 * of the pier, and runs on the other side count the other way round.
 */
final class NightPulses {
  private static final String RESPONSE = "/responseArcsecPerSecond";
  private static final String NOISE = "/noiseFloorArcsec";
  private static final String NO_RUN = "no run tells it: each run has its reason";

  private final List<RunResult> runs;
  private final Reasons.Scope scope;

  NightPulses(List<RunResult> runs, Reasons.Scope scope) {
    this.runs = runs;
    this.scope = scope;
  }

  Response response() {
    return new Response(
        ra(),
        dec(),
        pooled(RESPONSE + "/crossAxisDeg", run -> run.responseArcsecPerSecond().crossAxisDeg()));
  }

  NoiseFloor noiseFloor() {
    return new NoiseFloor(
        pooled(NOISE + "/ra", run -> run.noiseFloorArcsec().ra()),
        pooled(NOISE + "/dec", run -> run.noiseFloorArcsec().dec()),
        mean(NOISE + "/lag1", run -> run.noiseFloorArcsec().lag1()),
        mean(
            NOISE + "/raBySecondDifferences",
            run -> run.noiseFloorArcsec().raBySecondDifferences()),
        mean(
            NOISE + "/decBySecondDifferences",
            run -> run.noiseFloorArcsec().decBySecondDifferences()));
  }

  Backlash backlash() {
    return new Backlash(
        notNegative(pooled("/backlashArcsecAxis/dec", run -> run.backlashArcsecAxis().dec())),
        notNegative(pooled("/backlashArcsecAxis/ra", run -> run.backlashArcsecAxis().ra())));
  }

  Sticking sticking() {
    return new Sticking(
        pooled(
            "/stickingArcsecAxis/dec",
            run -> run.stickingArcsecAxis() == null ? null : run.stickingArcsecAxis().dec()));
  }

  private RaResponse ra() {
    List<RaResponse> known =
        runs.stream().map(r -> r.responseArcsecPerSecond().ra()).filter(Objects::nonNull).toList();
    if (known.isEmpty()) {
      return scope.orNull(RESPONSE + "/ra", Answer.none(NO_RUN));
    }
    return new RaResponse(
        scope.orNull(
            RESPONSE + "/ra/sky",
            known.size() == 1
                ? Answer.of(known.get(0).sky())
                : Answer.none("it goes with the cosine of each run's declination: see the runs")),
        pooled(RESPONSE + "/ra/axis", run -> ofRa(run, RaResponse::axis)),
        pooled(RESPONSE + "/ra/east", run -> ofRa(run, RaResponse::east)),
        pooled(RESPONSE + "/ra/west", run -> ofRa(run, RaResponse::west)),
        declared("/ra", known.stream().map(RaResponse::declaredAxis).toList()));
  }

  private DecResponse dec() {
    List<DecResponse> known =
        runs.stream().map(r -> r.responseArcsecPerSecond().dec()).filter(Objects::nonNull).toList();
    if (known.isEmpty()) {
      return scope.orNull(RESPONSE + "/dec", Answer.none(NO_RUN));
    }
    return new DecResponse(
        pooled(RESPONSE + "/dec/axis", run -> ofDec(run, DecResponse::axis)),
        oneSide("/dec/north", DecResponse::north, DecResponse::south),
        oneSide("/dec/south", DecResponse::south, DecResponse::north),
        declared("/dec", known.stream().map(DecResponse::declaredAxis).toList()));
  }

  /** One direction of the motor, whatever side of the pier the tube is on. */
  private Estimate oneSide(
      String figure,
      Function<DecResponse, Estimate> westOfPier,
      Function<DecResponse, Estimate> eastOfPier) {
    boolean sideUnknown = runs.size() > 1 && runs.stream().anyMatch(r -> r.pierSide() == null);
    if (sideUnknown) {
      return scope.orNull(
          RESPONSE + figure,
          Answer.none(
              "a flip exchanges the motor's directions, and the log does not tell the side of the"
                  + " pier: add pier_side"));
    }
    return pooled(
        RESPONSE + figure,
        run -> ofDec(run, run.pierSide() == PierSide.EAST ? eastOfPier : westOfPier));
  }

  private static Estimate ofRa(RunResult run, Function<RaResponse, Estimate> figure) {
    RaResponse ra = run.responseArcsecPerSecond().ra();
    return ra == null ? null : figure.apply(ra);
  }

  private static Estimate ofDec(RunResult run, Function<DecResponse, Estimate> figure) {
    DecResponse dec = run.responseArcsecPerSecond().dec();
    return dec == null ? null : figure.apply(dec);
  }

  private Double declared(String axis, List<Double> rates) {
    return scope.orNull(
        RESPONSE + axis + "/declaredAxis",
        rates.stream().distinct().count() == 1
            ? Answer.of(rates.get(0))
            : Answer.none("the runs declare different guide rates"));
  }

  private Estimate pooled(String figure, Function<RunResult, Estimate> ofRun) {
    List<Estimate> known = runs.stream().map(ofRun).filter(Objects::nonNull).toList();
    return scope.orNull(
        figure, known.isEmpty() ? Answer.none(NO_RUN) : Answer.of(Pooled.of(known)));
  }

  /** Mean over the runs that have the figure, by used frames. */
  private Double mean(String figure, Function<RunResult, Double> ofRun) {
    double weights = 0;
    double sum = 0;
    for (RunResult run : runs) {
      Double value = ofRun.apply(run);
      if (value != null) {
        weights += run.frames();
        sum += run.frames() * value;
      }
    }
    return scope.orNull(figure, weights == 0 ? Answer.none(NO_RUN) : Answer.of(sum / weights));
  }

  private static Estimate notNegative(Estimate width) {
    return width == null
        ? null
        : new Estimate(
            Math.max(0, width.value()), Math.max(0, width.lo95()), Math.max(0, width.hi95()));
  }
}
