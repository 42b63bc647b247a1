package io.github.roundstar.diagnosis.finding;

/**
 * What to take care of, in one place. Common practice of mechanics and electricians, no source; the
 * maker's manual and the local code go before any of it.
 */
final class Cautions {
  /** Before any work on the mount. */
  private static final String MANUAL =
      "Read the maker's manual first; opening a mount may end its warranty.";

  private static final String POWER =
      "Switch off and unplug the mount before a cover is opened or a hand comes near a gear or"
          + " belt.";

  private static final String WEIGHTS =
      "Take telescope and counterweights off, or support them, before a clutch, a gear mesh or an"
          + " adjuster is loosened: an axis let go swings with all its weight. Mind fingers, hair"
          + " and cables at pinch points.";

  private static final String SUN =
      "Never leave a telescope uncapped by day where it can come near the Sun.";

  private static final String MAINS =
      "Mains power in the damp only behind a residual-current device; fixed wiring is for a licensed"
          + " electrician under the local code.";

  /** Gears and covers. */
  static final String GEARS =
      MANUAL
          + " "
          + POWER
          + " "
          + WEIGHTS
          + " Mark where every screw stood and turn it by small steps; never force a gear mesh"
          + " tight: it must turn freely over the whole circle, also in the cold. "
          + SUN;

  /** Balance, clutches and cables. */
  static final String BALANCE =
      POWER
          + " Hold the tube before a clutch is loosened and slide weights by small steps; secure them"
          + " again before letting go. "
          + SUN
          + " "
          + MAINS;

  /** The polar adjusters. */
  static final String ADJUSTERS =
      "Turn the two adjusters by small steps and loosen the opposite one first. On a tall or heavy"
          + " set-up support telescope and counterweights, or take them off, before a clamp is"
          + " loosened; mind fingers at pinch points. "
          + SUN;

  /** Work at the telescope in the dark that moves no heavy part. */
  static final String TUBE =
      "Support tube, guide scope and camera before a ring or clamp is loosened. " + SUN;

  /** A tripod under its load, and what stands on it. */
  static final String TRIPOD =
      "Take telescope and counterweights off before a leg of the tripod is moved. " + TUBE;

  /** Plugs and cables. */
  static final String CABLES =
      "Switch mount and cameras off before a plug is pulled or put in. " + MAINS;

  /** Settings only. */
  static final String NONE = "";

  private Cautions() {}
}
