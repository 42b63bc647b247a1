package io.github.roundstar.diagnosis;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.OffsetCloud;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.signal.CovarianceEllipse;
import io.github.roundstar.signal.ErrorEllipse;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The used offsets of a night as a cloud of points with its ellipse. */
final class ScatterCloud {
  /** More points than this only blacken the chart; then every n-th is drawn. */
  private static final int MOST_POINTS = 2500;

  static final OffsetCloud EMPTY = new OffsetCloud(Polyline.EMPTY, 0, 0, 0, 0);

  private ScatterCloud() {}

  static OffsetCloud of(List<RunStudy> studies) {
    Optional<StarScatter> pooled =
        studies.stream().flatMap(study -> study.scatter().stream()).reduce(StarScatter::pooledWith);
    if (pooled.isEmpty()) {
      return EMPTY;
    }
    double[] ra = pooled.get().aboutMeanArcsec(Axis.RA);
    double[] dec = pooled.get().aboutMeanArcsec(Axis.DEC);
    CovarianceEllipse shape = ErrorEllipse.of(ra, dec).shape();
    return new OffsetCloud(
        Polyline.of(thinned(ra), thinned(dec)),
        ra.length,
        shape.majorSigma(),
        shape.minorSigma(),
        shape.positionAngleDegrees().orElse(0));
  }

  private static double[] thinned(double[] values) {
    int stride = (values.length + MOST_POINTS - 1) / MOST_POINTS;
    double[] kept = new double[(values.length + stride - 1) / stride];
    Arrays.setAll(kept, i -> values[i * stride]);
    return kept;
  }
}
