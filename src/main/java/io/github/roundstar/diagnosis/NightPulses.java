package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.AxisMotion;
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
 * Response, noise and play over all runs of a night: what the posterior of all of them says, which
 * every run shows by its own directions and rate.
 *
 * <p>In declination the motor is what errs, not the sky: north and south are those of a tube west
 * of the pier, and runs on the other side count the other way round.
 */
final class NightPulses {
  private static final String RESPONSE = "/responseArcsecPerSecond";
  private static final String NOISE = "/noiseFloorArcsec";
  private static final String NO_RUN = "no run tells it: each run has its reason";
  private static final String RATES = "the runs declare different guide rates: see the runs";

  private final List<RunStudy> studies;
  private final List<RunResult> runs;
  private final Reasons.Scope scope;

  NightPulses(List<RunStudy> studies, List<RunResult> runs, Reasons.Scope scope) {
    this.studies = studies;
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
        noise("/ra", RunStudy::ra),
        noise("/dec", RunStudy::dec),
        mean(NOISE + "/lag1", run -> run.noiseFloorArcsec().lag1()),
        mean(
            NOISE + "/raBySecondDifferences",
            run -> run.noiseFloorArcsec().raBySecondDifferences()),
        mean(
            NOISE + "/decBySecondDifferences",
            run -> run.noiseFloorArcsec().decBySecondDifferences()));
  }

  private Estimate noise(String figure, Function<RunStudy, Answer<AxisMotion>> axis) {
    return scope.orNull(
        NOISE + figure,
        studies.stream()
            .flatMap(study -> axis.apply(study).value().stream())
            .findFirst()
            .map(motion -> Answer.of(motion.known().noiseArcsec().estimate()))
            .orElseGet(() -> Answer.none(NO_RUN)));
  }

  Backlash backlash() {
    return new Backlash(
        shared("/backlashArcsecAxis/dec", run -> run.backlashArcsecAxis().dec()),
        shared("/backlashArcsecAxis/ra", run -> run.backlashArcsecAxis().ra()));
  }

  Sticking sticking() {
    return new Sticking(
        shared(
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
        ofOneRate(RESPONSE + "/ra/axis", run -> ofRa(run, RaResponse::axis)),
        ofOneRate(RESPONSE + "/ra/east", run -> ofRa(run, RaResponse::east)),
        ofOneRate(RESPONSE + "/ra/west", run -> ofRa(run, RaResponse::west)),
        declared("/ra", known.stream().map(RaResponse::declaredAxis).toList()));
  }

  private DecResponse dec() {
    List<DecResponse> known =
        runs.stream().map(r -> r.responseArcsecPerSecond().dec()).filter(Objects::nonNull).toList();
    if (known.isEmpty()) {
      return scope.orNull(RESPONSE + "/dec", Answer.none(NO_RUN));
    }
    return new DecResponse(
        ofOneRate(RESPONSE + "/dec/axis", run -> ofDec(run, DecResponse::axis)),
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
    return ofOneRate(
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
        rates.stream().distinct().count() > 1
            ? Answer.none("the runs declare different guide rates")
            : rates.get(0) == null
                ? Answer.none("no guide rate is declared")
                : Answer.of(rates.get(0)));
  }

  private Estimate pooled(String figure, Function<RunResult, Estimate> ofRun) {
    List<Estimate> known = runs.stream().map(ofRun).filter(Objects::nonNull).toList();
    return scope.orNull(
        figure, known.isEmpty() ? Answer.none(NO_RUN) : Answer.of(Pooled.of(known)));
  }

  /** What all runs share, where they declare the same guide rate. */
  private Estimate ofOneRate(String figure, Function<RunResult, Estimate> ofRun) {
    List<Estimate> known = runs.stream().map(ofRun).filter(Objects::nonNull).distinct().toList();
    return known.size() > 1 ? scope.orNull(figure, Answer.none(RATES)) : shared(figure, ofRun);
  }

  private Estimate shared(String figure, Function<RunResult, Estimate> ofRun) {
    return scope.orNull(
        figure,
        runs.stream()
            .map(ofRun)
            .filter(Objects::nonNull)
            .findFirst()
            .map(Answer::of)
            .orElseGet(() -> Answer.none(NO_RUN)));
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
}
