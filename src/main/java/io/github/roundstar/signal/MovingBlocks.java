package io.github.roundstar.signal;

import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * The moving-block bootstrap: a series is put together anew from overlapping blocks of itself, so
 * that samples keep their neighbours and errors stay honest where samples follow each other.
 *
 * @see "K&uuml;nsch (1989), Annals of Statistics 17, 1217"
 */
public final class MovingBlocks {
  private final int size;
  private final int length;

  /**
   * Blocks on a series.
   *
   * @param size samples in the series
   * @param length samples per block, 1 to {@code size}
   */
  public MovingBlocks(int size, int length) {
    if (length < 1 || length > size) {
      throw new IllegalArgumentException("blocks of " + length + " in " + size + " samples");
    }
    this.size = size;
    this.length = length;
  }

  /**
   * Standard error of the mean, as infinitely many resamples would give it: the scatter of the
   * block means over the root of the number of blocks in a series.
   */
  public double standardErrorOfMean(double[] values) {
    double[] means = blockMeans(values);
    double mean = mean(means);
    double squares = 0;
    for (double value : means) {
      squares += (value - mean) * (value - mean);
    }
    return Math.sqrt(squares / means.length * length / size);
  }

  /** Mean of the resamples' means; differs from the sample mean, whose ends weigh as the middle. */
  public double resampledMean(double[] values) {
    return mean(blockMeans(values));
  }

  /**
   * A statistic of means in many resamples, each as long as the whole blocks in the series. Where
   * there are no more different resamples than asked for, each comes once.
   *
   * @param columns what the means are of, sample by sample; the same blocks are drawn in all
   * @param draws how many resamples
   * @param seed makes the draws the same every time
   * @param statistic of the columns' means
   */
  public double[] resampled(
      double[][] columns, int draws, long seed, ToDoubleFunction<double[]> statistic) {
    double[] means = means(columns);
    int starts = size - length + 1;
    int drawn = size / length;
    double different = Math.pow(starts, drawn);
    boolean all = different <= draws;
    double[] result = new double[all ? (int) different : draws];
    Random random = new Random(seed);
    int[] chosen = new int[drawn];
    for (int r = 0; r < result.length; r++) {
      int code = r;
      for (int b = 0; b < drawn; b++) {
        chosen[b] = all ? code % starts : random.nextInt(starts);
        code /= starts;
      }
      result[r] = statistic.applyAsDouble(meansOf(means, columns.length, chosen));
    }
    return result;
  }

  /** Block means of all columns, those of one block side by side. */
  private double[] means(double[][] columns) {
    double[] means = new double[(size - length + 1) * columns.length];
    for (int c = 0; c < columns.length; c++) {
      double[] column = blockMeans(columns[c]);
      for (int start = 0; start < column.length; start++) {
        means[start * columns.length + c] = column[start];
      }
    }
    return means;
  }

  private static double[] meansOf(double[] means, int columns, int[] chosen) {
    double[] result = new double[columns];
    for (int block : chosen) {
      for (int c = 0; c < columns; c++) {
        result[c] += means[block * columns + c];
      }
    }
    for (int c = 0; c < columns; c++) {
      result[c] /= chosen.length;
    }
    return result;
  }

  private double[] blockMeans(double[] values) {
    if (values.length != size) {
      throw new IllegalArgumentException(values.length + " values, expected " + size);
    }
    double[] sums = new double[size + 1];
    for (int i = 0; i < size; i++) {
      sums[i + 1] = sums[i] + values[i];
    }
    double[] means = new double[size - length + 1];
    for (int i = 0; i < means.length; i++) {
      means[i] = (sums[i + length] - sums[i]) / length;
    }
    return means;
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
