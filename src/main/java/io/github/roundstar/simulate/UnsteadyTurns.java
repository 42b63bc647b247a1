package io.github.roundstar.simulate;

/**
 * What an unsteady worm adds to its steady error: in each turn the error counted from the turn's
 * begin, times a factor of that turn. It is zero where one turn ends and the next begins.
 */
final class UnsteadyTurns implements Curve {
  private final Curve steady;
  private final double atTurn;
  private final double periodSeconds;
  private final double firstTurn;
  private final double[] factors;

  /**
   * Turns over a run.
   *
   * @param steady the error of every turn [arcsec]
   * @param atTurn its value where turns begin [arcsec]
   * @param periodSeconds one turn [s]
   * @param wormPhase phase at time zero [rad]
   * @param lastSeconds end of the run [s]
   * @param deviation standard deviation of the factors
   */
  UnsteadyTurns(
      Curve steady,
      double atTurn,
      double periodSeconds,
      double wormPhase,
      double lastSeconds,
      double deviation,
      NoiseStream noise) {
    this.steady = steady;
    this.atTurn = atTurn;
    this.periodSeconds = periodSeconds;
    // One turn more than the first frame needs, since its exposure begins before time zero.
    this.firstTurn = 1 + wormPhase / (2 * Math.PI);
    this.factors = new double[(int) Math.ceil(firstTurn + lastSeconds / periodSeconds) + 2];
    for (int i = 0; i < factors.length; i++) {
      factors[i] = deviation * noise.gaussian();
    }
  }

  @Override
  public double mean(double from, double to) {
    double sum = 0;
    double begin = from;
    while (begin < to) {
      int turn = (int) Math.floor(begin / periodSeconds + firstTurn + 1e-12);
      double end = Math.min(to, (turn + 1 - firstTurn) * periodSeconds);
      int kept = Math.max(0, Math.min(factors.length - 1, turn));
      sum += factors[kept] * (steady.mean(begin, end) - atTurn) * (end - begin);
      begin = end;
    }
    return sum / (to - from);
  }
}
