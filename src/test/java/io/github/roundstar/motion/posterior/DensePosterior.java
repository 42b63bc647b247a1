package io.github.roundstar.motion.posterior;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * The posterior of one run by brute force: the covariance of all frames written out, free levels as
 * regressors without a prior, sums over even steps. It knows neither filters nor lattices.
 */
final class DensePosterior {
  private static final int LATES = 16;

  private final AxisModel model;
  private final ObservedRun run;
  private final double[][] pushes;
  private final int pieces;

  private double weight;
  private double strength;
  private double strengthSquares;
  private double drift;
  private double driftSquares;
  private double highest = Double.NEGATIVE_INFINITY;

  DensePosterior(AxisModel model) {
    this.model = model;
    this.run = model.runs().get(0);
    this.pushes = run.pushes().columns(0, 0.5, 0);
    int count = 1;
    for (int i = 1; i < run.seconds().length; i++) {
      count += run.startsPiece()[i] ? 1 : 0;
    }
    this.pieces = count;
  }

  /** Covariance of walk and noise over the noise's variance; the walk begins with the run. */
  RealMatrix covariance(double ratio, double memory) {
    int n = run.seconds().length;
    RealMatrix v = new Array2DRowRealMatrix(n, n);
    int[] piece = new int[n];
    for (int i = 1; i < n; i++) {
      piece[i] = piece[i - 1] + (run.startsPiece()[i] ? 1 : 0);
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        // Pieces have nothing to do with each other, the noise's memory included.
        boolean same = piece[i] == piece[j];
        double between = Math.abs(run.seconds()[i] - run.seconds()[j]);
        double since = Math.min(run.seconds()[i], run.seconds()[j]) - run.seconds()[0];
        v.setEntry(i, j, same ? ratio * since + Math.exp(-between / memory) : 0);
      }
    }
    return v;
  }

  /** Steady columns, levels, pushes on balance and by unlikeness: all regressors. */
  private double[][] regressors(double delay) {
    int n = run.seconds().length;
    int k = model.columns();
    double[][] x = new double[n][k + pieces + 2];
    int piece = 0;
    for (int i = 0; i < n; i++) {
      piece += i > 0 && run.startsPiece()[i] ? 1 : 0;
      for (int j = 0; j < k; j++) {
        x[i][j] = run.columns()[j][i];
      }
      x[i][k + piece] = 1;
      double part = model.partDelay();
      double whole = model.cadence();
      x[i][k + pieces] =
          -(delay < part
              ? pushes[0][i] + delay / part * (pushes[1][i] - pushes[0][i])
              : pushes[1][i] + (delay - part) / (whole - part) * (pushes[2][i] - pushes[1][i]));
      double late = delay / whole;
      x[i][k + pieces + 1] = -((1 - late) * pushes[3][i] + late * pushes[4][i]);
    }
    return x;
  }

  /**
   * Logarithm of the density of the frames and of everything but strength and columns, which are
   * integrated as a multivariate normal; and their moments.
   */
  private double[] at(RealMatrix xvx, RealVector xvy, double yvy, double logV, double ln, int c) {
    Priors.Strength of = model.priors().strengths().get(c);
    int k = model.columns();
    int n = run.seconds().length;
    double s2 = Math.exp(2 * ln);
    RealMatrix precision = xvx.add(xvx.transpose()).scalarMultiply(0.5 / s2);
    RealVector right = xvy.mapMultiply(1 / s2);
    double logPrior = 0;
    for (int j = 0; j < k; j++) {
      double d = run.deviations()[j];
      precision.addToEntry(j, j, 1 / (d * d));
      logPrior -= Math.log(d) + 0.5 * Math.log(2 * Math.PI);
    }
    double[] deviation = {of.deviation(), of.unlikeness() * of.mean()};
    for (int d = 0; d < 2; d++) {
      int at = k + pieces + d;
      precision.addToEntry(at, at, 1 / (deviation[d] * deviation[d]));
      logPrior -= Math.log(deviation[d]) + 0.5 * Math.log(2 * Math.PI);
    }
    int r = k + pieces;
    double v = of.deviation() * of.deviation();
    right.addToEntry(r, of.mean() / v);
    CholeskyDecomposition lower = new CholeskyDecomposition(precision, 1e-8, 0);
    RealVector mean = lower.getSolver().solve(right);
    RealVector unit = new ArrayRealVector(mean.getDimension());
    unit.setEntry(r, 1);
    double variance = lower.getSolver().solve(unit).getEntry(r);
    unit = new ArrayRealVector(mean.getDimension());
    unit.setEntry(0, 1);
    double driftVariance = lower.getSolver().solve(unit).getEntry(0);
    double exponent = -0.5 * (yvy / s2 + of.mean() * of.mean() / v - right.dotProduct(mean));
    double logDeterminant = 0;
    for (int j = 0; j < mean.getDimension(); j++) {
      logDeterminant += 2 * Math.log(lower.getL().getEntry(j, j));
    }
    double log =
        Math.log(of.weight())
            + logPrior
            + exponent
            - 0.5 * logDeterminant
            + 0.5 * mean.getDimension() * Math.log(2 * Math.PI)
            - 0.5 * (n * Math.log(2 * Math.PI) + n * Math.log(s2) + logV);
    return new double[] {log, mean.getEntry(r), variance, mean.getEntry(0), driftVariance};
  }

  /** Logarithm of the density at one wander, memory, noise, delay and prior of the strength. */
  double log(double logRatio, double logMemory, double logNoise, double delay, int c) {
    RealMatrix v = covariance(Math.pow(10, logRatio), Math.exp(logMemory));
    double[][] x = regressors(delay);
    return with(v, new Array2DRowRealMatrix(x, false), logNoise, c)[0];
  }

  private double[] with(RealMatrix v, RealMatrix x, double logNoise, int c) {
    CholeskyDecomposition lower = new CholeskyDecomposition(v, 1e-8, 0);
    RealMatrix vx = lower.getSolver().solve(x);
    RealVector y = new ArrayRealVector(run.arcsec());
    RealVector vy = lower.getSolver().solve(y);
    double logV = 0;
    for (int i = 0; i < v.getRowDimension(); i++) {
      logV += 2 * Math.log(lower.getL().getEntry(i, i));
    }
    return at(
        x.transpose().multiply(vx), x.transpose().operate(vy), y.dotProduct(vy), logV, logNoise, c);
  }

  /**
   * Sums over everything.
   *
   * @return log evidence; mean and variance of the strength; of the drift
   */
  double[] sum(double ratioStep, double memoryStep, double noiseStep) {
    Priors priors = model.priors();
    double part = model.partDelay();
    double whole = model.cadence();
    double[][] bounds = {{0, part}, {part, whole}};
    GaussIntegrator lates = new GaussIntegratorFactory().legendre(LATES, 0, 1);
    RealVector y = new ArrayRealVector(run.arcsec());
    for (double a = -5.2; a <= 4.5; a += ratioStep / priors.ratioDeviationLog()) {
      double logRatio = priors.ratioMedianLog() + a * priors.ratioDeviationLog();
      for (double logMemory = -7; logMemory <= 5.6; logMemory += memoryStep) {
        RealMatrix v = covariance(Math.pow(10, logRatio), Math.exp(logMemory));
        CholeskyDecomposition lower = new CholeskyDecomposition(v, 1e-8, 0);
        double logV = 0;
        for (int i = 0; i < v.getRowDimension(); i++) {
          logV += 2 * Math.log(lower.getL().getEntry(i, i));
        }
        RealVector vy = lower.getSolver().solve(y);
        double yvy = y.dotProduct(vy);
        double prior = priors.logRatio(logRatio) + priors.logMemory(logMemory);
        for (double[] bound : bounds) {
          double length = bound[1] - bound[0];
          // Products are of second degree in the delay: three of them give all.
          RealMatrix[] xvx = new RealMatrix[3];
          RealVector[] xvy = new RealVector[3];
          for (int q = 0; q < 3; q++) {
            RealMatrix of =
                MatrixUtils.createRealMatrix(regressors(bound[0] + (0.0005 + 0.4995 * q) * length));
            xvx[q] = of.transpose().multiply(lower.getSolver().solve(of));
            xvy[q] = of.transpose().operate(vy);
          }
          double noiseCentre = noise(xvx[0], xvy[0], yvy);
          for (int l = 0; l < LATES; l++) {
            double delay = bound[0] + lates.getPoint(l) * length;
            double t = (lates.getPoint(l) - 0.0005) / 0.999;
            double[] basis = {(1 - t) * (1 - 2 * t), 4 * t * (1 - t), t * (2 * t - 1)};
            RealMatrix m =
                xvx[0]
                    .scalarMultiply(basis[0])
                    .add(xvx[1].scalarMultiply(basis[1]))
                    .add(xvx[2].scalarMultiply(basis[2]));
            RealVector w =
                xvy[0]
                    .mapMultiply(basis[0])
                    .add(xvy[1].mapMultiply(basis[1]))
                    .add(xvy[2].mapMultiply(basis[2]));
            for (double ln = noiseCentre - 12 * noiseStep;
                ln <= noiseCentre + 12.01 * noiseStep;
                ln += noiseStep) {
              for (int c = 0; c < priors.strengths().size(); c++) {
                double[] here = at(m, w, yvy, logV, ln, c);
                add(
                    here,
                    here[0]
                        + prior
                        + priors.logDelay(delay, whole)
                        + priors.logNoise(ln)
                        + Math.log(
                            lates.getWeight(l) * length * ratioStep * memoryStep * noiseStep));
              }
            }
          }
        }
      }
    }
    double mean = strength / weight;
    double driftMean = drift / weight;
    return new double[] {
      highest + Math.log(weight),
      mean,
      strengthSquares / weight - mean * mean,
      driftMean,
      driftSquares / weight - driftMean * driftMean
    };
  }

  /** Natural logarithm of the noise by least squares. */
  private double noise(RealMatrix xvx, RealVector xvy, double yvy) {
    RealVector b =
        new CholeskyDecomposition(xvx.add(xvx.transpose()).scalarMultiply(0.5), 1e-8, 0)
            .getSolver()
            .solve(xvy);
    int degrees = run.seconds().length - b.getDimension();
    return 0.5 * Math.log((yvy - b.dotProduct(xvy)) / degrees);
  }

  private void add(double[] here, double log) {
    if (log > highest) {
      double less = Math.exp(highest - log);
      weight *= less;
      strength *= less;
      strengthSquares *= less;
      drift *= less;
      driftSquares *= less;
      highest = log;
    }
    double w = Math.exp(log - highest);
    weight += w;
    strength += w * here[1];
    strengthSquares += w * (here[2] + here[1] * here[1]);
    drift += w * here[3];
    driftSquares += w * (here[4] + here[3] * here[3]);
  }
}
