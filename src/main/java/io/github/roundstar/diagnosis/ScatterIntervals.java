package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.BlockLength;
import io.github.roundstar.signal.MovingBlocks;
import java.util.Arrays;

/** How well frames that follow each other tell a root mean square: a moving-block bootstrap. */
final class ScatterIntervals {
  private ScatterIntervals() {}

  /** Blocks that suit the offsets of two axes. */
  static MovingBlocks blocks(double[] raSquares, double[] decSquares) {
    double[] radial = new double[raSquares.length];
    Arrays.setAll(radial, i -> raSquares[i] + decSquares[i]);
    return new MovingBlocks(radial.length, BlockLength.of(radial));
  }

  /** Root of a mean with the error of the mean carried through. */
  static Estimate root(MovingBlocks blocks, double[] squares) {
    double root = Math.sqrt(Arrays.stream(squares).average().orElseThrow());
    double error = root == 0 ? 0 : blocks.standardErrorOfMean(squares) / (2 * root);
    return new Estimate(
        root, Math.max(0, root - Estimate.SIGMAS_95 * error), root + Estimate.SIGMAS_95 * error);
  }

  static double[] products(double[] a, double[] b) {
    double[] products = new double[a.length];
    Arrays.setAll(products, i -> a[i] * b[i]);
    return products;
  }
}
