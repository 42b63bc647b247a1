package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.diagnosis.exposures.Units.Mended;
import io.github.roundstar.motion.PlayedAxis.Change;

/**
 * One way to play a night again.
 *
 * @param ra what is changed in right ascension
 * @param dec what is changed in declination
 * @param mended what is mended beside the motion of the guide star
 * @param loopsLimit whether both axes stand where no controller could do better
 */
record Playing(Change ra, Change dec, Mended mended, boolean loopsLimit) {
  /** The night as it was. */
  static final Playing AS_IT_WAS = new Playing(Change.NONE, Change.NONE, Mended.NOTHING, false);

  Playing ra(Change change) {
    return new Playing(change, dec, mended, loopsLimit);
  }

  Playing dec(Change change) {
    return new Playing(ra, change, mended, loopsLimit);
  }

  Playing mended(Mended other) {
    return new Playing(ra, dec, other, loopsLimit);
  }

  Playing turned(double share) {
    return mended(
        new Mended(
            share, mended.flexure(), mended.optics(), mended.settled(), mended.motionless()));
  }

  Playing keptTogether() {
    return mended(
        new Mended(
            mended.turnShare(), true, mended.optics(), mended.settled(), mended.motionless()));
  }

  Playing collimated() {
    return mended(
        new Mended(
            mended.turnShare(), mended.flexure(), true, mended.settled(), mended.motionless()));
  }

  Playing settled() {
    return mended(
        new Mended(
            mended.turnShare(), mended.flexure(), mended.optics(), true, mended.motionless()));
  }

  /** No controller could do better. */
  Playing atTheLoopsLimit() {
    return new Playing(ra, dec, mended, true);
  }

  /** A perfect mount under this air. */
  static Playing perfect() {
    return AS_IT_WAS.mended(new Mended(0, true, true, true, true));
  }
}
