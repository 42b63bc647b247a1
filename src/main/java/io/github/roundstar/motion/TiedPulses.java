package io.github.roundstar.motion;

/**
 * What pulses move behind a play when both directions push as unlike as the play takes them to: one
 * column for the mean strength of both, and how it changes with the play.
 *
 * <p>Unlike directions show twice, in what each of them moves and in where the motor stands inside
 * the play, and the second tells them apart far better. Left free of each other, as a strength for
 * each direction beside a play of known unlikeness, they let an error of the one pass for the
 * other.
 *
 * @param reconstruction what the motion is made of
 */
record TiedPulses(Reconstruction reconstruction) {
  /** What a mean strength of 1 takes from the motion at its samples [arcsec]. */
  double[] column(LostMotion play) {
    MotionSeries behind = reconstruction.sky(play);
    double[] column = behind.pushedOtherWayArcsec();
    double[] oneWay = behind.pushedOneWayArcsec();
    for (int i = 0; i < column.length; i++) {
      column[i] = (1 - play.unlikeness()) * column[i] - (1 + play.unlikeness()) * oneWay[i];
    }
    return column;
  }

  /** How the column changes with the width [per arcsec]. */
  double[] byWidth(LostMotion play, double step) {
    double low = Math.max(0, play.arcsec() - step);
    double high = play.arcsec() + step;
    return slope(column(wide(play, low)), column(wide(play, high)), high - low);
  }

  /** How it changes with the unlikeness. */
  double[] byUnlikeness(LostMotion play, double step) {
    return slope(column(unlike(play, -step)), column(unlike(play, step)), 2 * step);
  }

  /** How it changes with the share of the play that a first push north would lose. */
  double[] byStart(LostMotion play, double step) {
    double low = Math.max(0, play.start() - step);
    double high = Math.min(1, play.start() + step);
    return slope(
        column(LostMotion.play(play.arcsec(), low, play.unlikeness())),
        column(LostMotion.play(play.arcsec(), high, play.unlikeness())),
        high - low);
  }

  /**
   * The motion behind the play, linear in the strength of either direction: what each of them
   * pushed holds what the motor then does inside the play.
   */
  MotionSeries motion(LostMotion play, double step) {
    MotionSeries here = reconstruction.sky(play);
    MotionSeries less = reconstruction.sky(unlike(play, -step));
    MotionSeries more = reconstruction.sky(unlike(play, step));
    double[] oneWay = slope(less.pushedOneWayArcsec(), more.pushedOneWayArcsec(), 2 * step);
    double[] otherWay = slope(less.pushedOtherWayArcsec(), more.pushedOtherWayArcsec(), 2 * step);
    double[] arcsec = here.arcsec();
    double[] pushedOneWay = here.pushedOneWayArcsec();
    double[] pushedOtherWay = here.pushedOtherWayArcsec();
    double unlike = play.unlikeness();
    for (int i = 0; i < arcsec.length; i++) {
      double byUnlikeness = (1 + unlike) * oneWay[i] - (1 - unlike) * otherWay[i];
      arcsec[i] -= unlike * byUnlikeness;
      pushedOneWay[i] += (1 - unlike) / 2 * byUnlikeness;
      pushedOtherWay[i] += (1 + unlike) / 2 * byUnlikeness;
    }
    return new MotionSeries(
        here.seconds(), arcsec, here.startsPiece(), pushedOneWay, pushedOtherWay);
  }

  static LostMotion wide(LostMotion play, double arcsec) {
    return LostMotion.play(arcsec, play.start(), play.unlikeness());
  }

  private static LostMotion unlike(LostMotion play, double more) {
    return LostMotion.play(play.arcsec(), play.start(), play.unlikeness() + more);
  }

  private static double[] slope(double[] low, double[] high, double step) {
    for (int i = 0; i < low.length; i++) {
      low[i] = (high[i] - low[i]) / step;
    }
    return low;
  }
}
