package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.AxisMotion;
import io.github.roundstar.motion.CrossAxis;
import io.github.roundstar.motion.GuideRate;
import io.github.roundstar.motion.posterior.Figure;
import io.github.roundstar.results.DecResponse;
import io.github.roundstar.results.RaResponse;

/** What a run tells of its pulses and its noise, as the result shows it. */
final class PulseFigures {
  static final String NO_PULSE = "no pulse was sent in declination";
  static final String ONE_WAY =
      "declination was guided one way only, so the gears never crossed their play";

  private static final String NEITHER = "no lost motion stands out";

  /** Less likely than this no lost motion is told from another. */
  private static final double EVEN = 0.5;

  static final String PLAYS = "play of the gears describes the lost motion better than sticking";
  static final String STICKS =
      "the axis sticks and lets go rather than having play: see the figure for sticking";

  private static final String RESPONSE = "/responseArcsecPerSecond";

  private final RunStudy study;
  private final Answer<Double> declared;
  private final double unit;
  private final Reasons.Scope scope;

  PulseFigures(RunStudy study, Equipment equipment, Reasons.Scope scope) {
    this.study = study;
    this.declared = GuideRate.declaredAxis(study.run(), equipment);
    this.unit = GuideRate.unitAxis(study.run(), equipment);
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
                            .known()
                            .stickingArcsecAxis()
                            .map(figure -> Answer.of(figure.estimate()))
                            .orElseGet(
                                () ->
                                    Answer.none(
                                        motion.known().posterior().playProbability() < EVEN
                                            ? NEITHER
                                            : PLAYS)))));
  }

  private Answer<Estimate> play(AxisMotion motion) {
    if (!pushed(motion)) {
      return Answer.none(NO_PULSE);
    }
    if (!motion.known().pushedBothWays()) {
      return Answer.none(ONE_WAY);
    }
    return motion
        .known()
        .playArcsecAxis()
        .map(figure -> Answer.of(figure.estimate()))
        .orElseGet(() -> Answer.none(STICKS));
  }

  private static boolean pushed(AxisMotion motion) {
    return motion.pushedOneWay() || motion.pushedOtherWay();
  }

  private RaResponse ra() {
    Answer<AxisMotion> motion = study.axis().then(cosine -> study.ra()).then(this::pushing);
    if (motion.value().isEmpty()) {
      return scope.orNull(RESPONSE + "/ra", Answer.none(motion.because()));
    }
    AxisMotion known = motion.value().get();
    Estimate both = known.known().strength().times(unit).estimate();
    return new RaResponse(
        both.times(study.axis().value().orElseThrow()),
        both,
        oneWay(Axis.RA, "/ra/east", known),
        otherWay(Axis.RA, "/ra/west", known),
        scope.orNull(RESPONSE + "/ra/declaredAxis", declared));
  }

  private DecResponse dec() {
    Answer<AxisMotion> motion = study.dec().then(this::pushing);
    if (motion.value().isEmpty()) {
      return scope.orNull(RESPONSE + "/dec", Answer.none(motion.because()));
    }
    AxisMotion known = motion.value().get();
    return new DecResponse(
        known.known().strength().times(unit).estimate(),
        oneWay(Axis.DEC, "/dec/north", known),
        otherWay(Axis.DEC, "/dec/south", known),
        scope.orNull(RESPONSE + "/dec/declaredAxis", declared));
  }

  private Answer<AxisMotion> pushing(AxisMotion motion) {
    return pushed(motion) ? Answer.of(motion) : Answer.none("no pulse was sent in this axis");
  }

  private Estimate oneWay(Axis axis, String figure, AxisMotion motion) {
    return direction(axis, figure, motion.pushedOneWay(), motion.oneWay().times(unit));
  }

  private Estimate otherWay(Axis axis, String figure, AxisMotion motion) {
    return direction(axis, figure, motion.pushedOtherWay(), motion.otherWay().times(unit));
  }

  private Estimate direction(Axis axis, String figure, boolean pushed, Figure strength) {
    Answer<Estimate> found =
        pushed ? Answer.of(strength.estimate()) : Answer.none("no pulse was sent this way");
    return scope.orNull(RESPONSE + figure, Directions.of(study.run().sense(), axis, found));
  }
}
