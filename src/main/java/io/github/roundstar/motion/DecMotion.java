package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;

/**
 * A run's motion in declination with the corrections taken out.
 *
 * @param run the motion: pulses pass the play where there certainly is one, or the axis that
 *     sticks, and push as declared or, where that is off, as measured
 * @param quiet the same without its jolts
 * @param backlash the play; nothing without pulses or with too few frames
 * @param sticking the axis that sticks; none unless it surely does
 * @param response what was measured behind the play, or behind the axis that sticks
 */
public record DecMotion(
    AxisRun run,
    AxisRun quiet,
    Optional<Backlash> backlash,
    Answer<Sticking> sticking,
    Optional<Response> response) {
  private static final String NO_PULSE =
      "no pulse was sent in declination, or too few frames were measured";

  /**
   * Profiles the play, tells it from sticking, measures the response behind it, and takes the
   * corrections out with both.
   */
  public static Answer<DecMotion> of(GuideRun guideRun, Equipment equipment) {
    return Reconstruction.of(guideRun, Axis.DEC, equipment)
        .map(
            made -> {
              AxisRun plain = AxisRun.of(guideRun, made.sky(), 1);
              Optional<Backlash> play = Backlash.of(made, plain);
              Answer<Sticking> sticking =
                  play.map(found -> Sticking.of(new PlayProfile(made, plain), found))
                      .orElseGet(() -> Answer.none(NO_PULSE));
              DecMotion found = again(made, plain, play, sticking);
              // Sticking must show beside the jolts that are found behind it, too.
              return sticking.value().isPresent() && found.sticking.value().isEmpty()
                  ? again(made, plain, play, found.sticking)
                  : found;
            });
  }

  /** Jolts pass for lost motion. */
  private static DecMotion again(
      Reconstruction made, AxisRun plain, Optional<Backlash> play, Answer<Sticking> sticking) {
    DecMotion first = of(plain, play, sticking);
    Optional<JoltFree> quiet =
        first.response.map(Response::quiet).filter(q -> !q.jolts().isEmpty());
    if (play.isEmpty() || quiet.isEmpty()) {
      return first;
    }
    PlayProfile profile = new PlayProfile(made, plain, quiet);
    Backlash again = play.get().again(profile);
    return of(
        plain,
        Optional.of(again),
        sticking.value().isPresent()
            ? Sticking.of(profile, again)
            : Answer.none(Sticking.because(sticking.because(), again)));
  }

  private static DecMotion of(
      AxisRun plain, Optional<Backlash> backlash, Answer<Sticking> sticking) {
    Optional<AxisRun> sticks = sticking.value().map(Sticking::run);
    AxisRun behind = sticks.or(() -> backlash.map(Backlash::run)).orElse(plain);
    Optional<Response> response =
        sticks.isPresent() || backlash.isEmpty()
            ? Response.of(behind, List.of())
            : Response.behind(backlash.get());
    AxisRun answering = response.map(r -> r.applied(behind)).orElse(behind);
    AxisRun run =
        answering.responseMeasured()
            ? answering
            : sticks.or(() -> backlash.filter(DecMotion::sure).map(Backlash::run)).orElse(plain);
    return new DecMotion(
        run, response.map(r -> run.without(r.quiet())).orElse(run), backlash, sticking, response);
  }

  /** What the likeliest axis loses, though it may be nothing. */
  LostMotion lost() {
    return sticking
        .value()
        .map(Sticking::lost)
        .or(() -> backlash.map(Backlash::lost))
        .orElse(LostMotion.NONE);
  }

  /** Motion behind that, pulses as declared. */
  AxisRun behind() {
    return sticking.value().map(Sticking::run).or(() -> backlash.map(Backlash::run)).orElse(run);
  }

  /** Whether motion surely is lost. */
  boolean losesMotion() {
    return sticking.value().isPresent() || backlash.filter(DecMotion::sure).isPresent();
  }

  private static boolean sure(Backlash play) {
    return play.declaredArcsec().lo95() > 0;
  }
}
