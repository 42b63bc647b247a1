package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.Backlash;
import io.github.roundstar.motion.CrossAxis;
import io.github.roundstar.motion.DecMotion;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.Response;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.RaResponse;
import java.util.Locale;
import java.util.Optional;

/** What a run tells of its pulses and its noise, as the result shows it. */
final class PulseFigures {
  static final String TOO_FEW =
      "too few measured frames, or offsets that never change: record at least a few minutes";
  static final String STICKS =
      "the axis sticks and lets go rather than having play: see the figure for sticking";

  private static final String RESPONSE = "/responseArcsecPerSecond";

  private final RunStudy study;
  private final Answer<Double> declared;
  private final Reasons.Scope scope;

  PulseFigures(RunStudy study, Equipment equipment, Reasons.Scope scope) {
    this.study = study;
    this.declared = GuideRate.declaredAxis(study.run(), equipment);
    this.scope = scope;
  }

  /** Response in both axes and the angle between them. */
  io.github.roundstar.results.Response response() {
    return new io.github.roundstar.results.Response(
        ra(), dec(), scope.orNull(RESPONSE + "/crossAxisDeg", crossAxis()));
  }

  /** The angle has a sign, which a log without named directions does not tell. */
  private Answer<Estimate> crossAxis() {
    if (!study.run().sense().known()) {
      return Answer.none(Directions.because(study.run().sense()));
    }
    return study.ra().then(ra -> study.dec().then(dec -> CrossAxis.degrees(study.run(), ra, dec)));
  }

  /** Play in declination; that of right ascension has a reason only. */
  io.github.roundstar.results.Backlash backlash() {
    scope.note("/backlashArcsecAxis/ra", TrackedPlay.whyUnseen(study.run(), declared));
    return new io.github.roundstar.results.Backlash(
        scope.orNull("/backlashArcsecAxis/dec", study.dec().then(this::play)), null);
  }

  /** What an axis that sticks withholds in declination. */
  io.github.roundstar.results.Sticking sticking() {
    return new io.github.roundstar.results.Sticking(
        scope.orNull(
            "/stickingArcsecAxis/dec",
            study
                .dec()
                .then(
                    motion ->
                        motion
                            .sticking()
                            .then(
                                sticks ->
                                    informative(motion.response())
                                        .then(
                                            response ->
                                                of(response.both().map(sticks::arcsec)))))));
  }

  private Answer<Estimate> play(DecMotion motion) {
    Optional<Backlash> backlash = motion.backlash();
    if (study.run().mode() == GuidingMode.UNGUIDED || backlash.isEmpty()) {
      return Answer.none("no pulse was sent in declination, or too few frames were measured");
    }
    if (motion.sticking().value().isPresent()) {
      return Answer.none(STICKS);
    }
    return informative(motion.response())
        .then(
            response ->
                response.bothWays()
                    ? of(backlash.get().arcsec(response))
                    : Answer.none(
                        "declination was guided one way only, so the gears never crossed their"
                            + " play"));
  }

  private RaResponse ra() {
    Answer<Response> response =
        study.axis().then(cosine -> study.ra().then(motion -> informative(motion.response())));
    if (response.value().isEmpty() || declared.value().isEmpty()) {
      return scope.orNull(RESPONSE + "/ra", missing(response));
    }
    double rate = declared.value().get();
    Response known = response.value().get();
    Estimate both = known.both().orElseThrow().times(rate);
    return new RaResponse(
        both.times(study.axis().value().orElseThrow()),
        both,
        direction(Axis.RA, "/ra/east", known.oneWay(), rate),
        direction(Axis.RA, "/ra/west", known.otherWay(), rate),
        rate);
  }

  private DecResponse dec() {
    Answer<Response> response = study.dec().then(motion -> informative(motion.response()));
    if (response.value().isEmpty() || declared.value().isEmpty()) {
      return scope.orNull(RESPONSE + "/dec", missing(response));
    }
    double rate = declared.value().get();
    Response known = response.value().get();
    return new DecResponse(
        known.both().orElseThrow().times(rate),
        direction(Axis.DEC, "/dec/north", known.oneWay(), rate),
        direction(Axis.DEC, "/dec/south", known.otherWay(), rate),
        rate);
  }

  private <T> Answer<T> missing(Answer<Response> response) {
    return Answer.none(response.value().isEmpty() ? response.because() : declared.because());
  }

  private Estimate direction(Axis axis, String figure, Optional<Estimate> strength, double rate) {
    Answer<Estimate> found =
        strength
            .map(share -> Answer.of(share.times(rate)))
            .orElseGet(() -> Answer.none("no pulse was sent this way"));
    return scope.orNull(RESPONSE + figure, Directions.of(study.run().sense(), axis, found));
  }

  private static Answer<Response> informative(Optional<Response> response) {
    if (response.isEmpty()) {
      return Answer.none(TOO_FEW);
    }
    if (response.get().both().isEmpty()) {
      return Answer.none("no pulse was sent in this axis");
    }
    if (!response.get().informative()) {
      return Answer.none(
          String.format(
              Locale.ROOT,
              "the pulses of a direction tell their strength only to within %.0f %%: record"
                  + " longer, or with larger dithers",
              100 * response.get().uncertainShare()));
    }
    return Answer.of(response.get());
  }

  private static Answer<Estimate> of(Optional<Estimate> figure) {
    return figure.map(Answer::of).orElseGet(() -> Answer.none(TOO_FEW));
  }
}
