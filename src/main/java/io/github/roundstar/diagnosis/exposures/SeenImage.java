package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.diagnosis.exposures.Units.Mended;
import io.github.roundstar.signal.Stretch;
import java.util.random.RandomGenerator;

/**
 * What the image of an exposure, or of a part of it, showed, and what it would have shown had the
 * star moved otherwise. Immutable.
 *
 * @param shape stretch of the whole exposure, by its image and what all images have in common
 * @param told stretch that the log tells of it
 * @param sigma its standard error
 * @param beyond what the log does not tell and something else makes
 * @param beyondLeft how much of that is left in this part of the exposure, 1 for the whole
 * @param perTold how much longer motion makes the image than the log tells
 * @param corner how much longer stars are in the worst corner, as a logarithm; 0 where they are not
 * @param maker what makes what lies beyond
 * @param cornerTurns whether it is the field's turn that makes the corner
 * @param whole whether this is the whole exposure
 */
record SeenImage(
    Stretch shape,
    Stretch told,
    double sigma,
    Stretch beyond,
    double beyondLeft,
    double perTold,
    double corner,
    Maker maker,
    boolean cornerTurns,
    boolean whole) {

  /** What makes the part of an image that the log does not tell. */
  enum Maker {
    FLEXURE,
    OPTICS,
    REFRACTION,
    DISPERSION;

    /** Whether it goes on while the exposure lasts; what does not is there in the shortest. */
    boolean grows() {
      return this == FLEXURE || this == REFRACTION;
    }
  }

  /**
   * The image of an exposure.
   *
   * @param bends whether any exposure of the night shows flexure
   * @param images what all images have in common
   */
  static SeenImage of(
      JudgedExposure exposure, MeasuredShape measured, boolean bends, ImagesByLog images) {
    double size = Math.log(measured.elongation().value());
    String cause = String.valueOf(exposure.cause().code());
    Stretch told = exposure.predicted().orElseThrow().stretch();
    Stretch shape = ImagesByLog.shape(exposure, measured);
    Maker maker =
        switch (cause) {
          case ImagesByLog.REFRACTION -> Maker.REFRACTION;
          case ImagesByLog.DISPERSION -> Maker.DISPERSION;
          case ImagesByLog.FLEXURE -> Maker.FLEXURE;
          default -> bends ? Maker.FLEXURE : Maker.OPTICS;
        };
    double sigma = ImagesByLog.sigma(measured);
    boolean optics = maker == Maker.OPTICS;
    if (optics) {
      // Errors of measuring would make each image longer than it is.
      Stretch common = told.times(images.perTold()).plus(images.always());
      double own = images.ownShare(sigma);
      shape = common.plus(shape.less(common).times(own));
      sigma *= Math.sqrt(own);
    }
    return new SeenImage(
        shape,
        told,
        sigma,
        optics ? images.always() : shape.less(told),
        1,
        optics ? images.perTold() : 1,
        measured.corner().map(c -> Math.max(0, Math.log(c.value()) - size)).orElse(0.0),
        maker,
        measured.pattern().equals("rotation") || cause.equals("field-rotation"),
        true);
  }

  /**
   * A part of the exposure: of what goes on while it lasts, the variance over that of the round
   * image goes with the square of the time; the rest stays.
   */
  SeenImage part(double share) {
    double size = beyond.size();
    double variance = (Math.exp(2 * size) - 1) * share * share;
    return new SeenImage(
        shape,
        told,
        sigma,
        beyond,
        maker.grows() && size > 0 ? Math.log(1 + variance) / 2 / size : 1,
        perTold,
        cornerTurns ? share * share * corner : corner,
        maker,
        cornerTurns,
        false);
  }

  /** Whether something but motion makes stars long, and it is this. */
  boolean showsMore(Maker what) {
    return maker == what && beyond.size() > 0;
  }

  /** Whether optics make the corners long. */
  boolean cornersOff() {
    return corner > 0 && !cornerTurns;
  }

  /**
   * The stretch that it would have shown. What the image shows and nothing explains goes with the
   * motion where that gets less: as much of it as the log may have told wrongly.
   *
   * @param now what the other motion makes
   * @param before what the motion of the whole exposure made
   * @param measuring draws what measuring it is off by
   */
  Stretch played(Stretch now, Stretch before, Mended mended, RandomGenerator measuring) {
    Stretch single = shape.less(beyond).less(before.times(perTold));
    double toldWrong = 2 * (ImagesByLog.TOLD_TO * before.size() + sigma);
    double motions = Math.min(1, toldWrong / Math.max(1e-9, single.size()));
    double less = Math.min(1, now.size() / Math.max(1e-9, before.size()));
    boolean mends =
        maker == Maker.FLEXURE && mended.flexure() || maker == Maker.OPTICS && mended.optics();
    Stretch off = new Stretch(sigma * measuring.nextGaussian(), sigma * measuring.nextGaussian());
    return now.times(perTold)
        .plus(beyond.times(mends ? 0 : beyondLeft))
        .plus(single.times(1 - motions * (1 - less)))
        .plus(off);
  }

  /** How much longer the worst corner would have been, as a logarithm. */
  double cornerPlayed(Mended mended) {
    double share = mended.motionless() ? 0 : mended.turnShare();
    return cornerTurns ? share * share * corner : mended.optics() ? 0 : corner;
  }
}
