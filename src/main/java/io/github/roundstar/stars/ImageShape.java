package io.github.roundstar.stars;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.signal.Stretch;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The stars of one image and what they have in common.
 *
 * @param width pixels in a row
 * @param height rows
 * @param backgroundAdu median level of the sky
 * @param noiseAdu median standard deviation of a pixel
 * @param stars the stars that were measured, brightest first
 * @param rejected how many bright spots were not measured, by reason
 * @param fwhmPixels median over the stars of the geometric mean of both widths, with its interval;
 *     nothing without stars
 * @param stretch mean stretch of the stars
 * @param stretchSigma standard error of either part of the mean
 * @param pattern how the shapes change over the field
 */
public record ImageShape(
    int width,
    int height,
    double backgroundAdu,
    double noiseAdu,
    List<Star> stars,
    Map<Rejection, Integer> rejected,
    Optional<Estimate> fwhmPixels,
    Stretch stretch,
    double stretchSigma,
    FieldPattern pattern) {
  /** Threshold on the smoothed image, in noises of a single pixel: 5.3 of a smoothed one. */
  private static final double THRESHOLD = 2;

  private static final int FEWEST_PIXELS = 4;

  /** Fainter stars tell too little of their shape. */
  private static final double LEAST_SNR = 10;

  /** A star's size lies within this factor of the median, else it is a galaxy or a cosmic ray. */
  private static final double MOST_SIZE_RATIO = 2;

  /** Stretches farther than so many robust deviations from the median are left out of the mean. */
  private static final double CLIP_SIGMAS = 3.5;

  /** Copies. */
  public ImageShape {
    stars = List.copyOf(stars);
    rejected = new EnumMap<>(rejected);
  }

  /** Mean elongation of the stars with its interval; nothing without stars. */
  public Optional<Estimate> elongation() {
    return stars.isEmpty() ? Optional.empty() : Optional.of(stretch.elongation(stretchSigma));
  }

  /** What was left out, such as {@code ; left out: 3 saturated}; empty where nothing was. */
  public String rejectedWords() {
    StringBuilder text = new StringBuilder();
    rejected.forEach(
        (reason, count) ->
            text.append(text.isEmpty() ? "; left out: " : ", ")
                .append(count)
                .append(' ')
                .append(reason.words()));
    return text.toString();
  }

  /** Angle of the mean long axis from +x towards +y [deg], where the stars are surely not round. */
  public OptionalDouble angleDegrees() {
    return stars.isEmpty() ? OptionalDouble.empty() : stretch.angleDegrees(stretchSigma);
  }

  /**
   * Measures an image.
   *
   * @param plane one channel; its background is taken off in place
   */
  public static ImageShape of(Plane plane) {
    Background background = Background.takenOff(plane);
    List<Segment> segments =
        Segments.of(
            plane,
            (y, line) -> {
              background.noiseLine(y, line);
              for (int x = 0; x < line.length; x++) {
                line[x] *= (float) THRESHOLD;
              }
            },
            FEWEST_PIXELS);
    Candidates candidates = Candidates.of(plane, background, segments);
    List<Optional<AdaptiveShape>> shapes =
        candidates.kept.parallelStream().map(star -> shape(plane, background, star)).toList();
    List<Star> stars = new ArrayList<>();
    for (Optional<AdaptiveShape> shape : shapes) {
      if (shape.isEmpty()) {
        candidates.reject(Rejection.NOT_STELLAR);
      } else if (shape.get().snr() < LEAST_SNR) {
        candidates.reject(Rejection.FAINT);
      } else {
        stars.add(star(shape.get()));
      }
    }
    return of(plane, background, alike(stars, candidates), candidates.rejected);
  }

  private static Optional<AdaptiveShape> shape(Plane plane, Background background, Segment star) {
    double noise = background.noise((int) star.x(), (int) star.y());
    return AdaptiveShape.of(plane, star.resolved(), SkyRing.level(plane, star), noise);
  }

  private static Star star(AdaptiveShape s) {
    double area = Math.sqrt(s.xx() * s.yy() - s.xy() * s.xy());
    return new Star(
        s.x() + 1,
        s.y() + 1,
        2 * Math.PI * area * s.amplitude(),
        s.snr(),
        s.xx(),
        s.yy(),
        s.xy(),
        s.stretchSigma());
  }

  private static List<Star> alike(List<Star> stars, Candidates candidates) {
    if (stars.isEmpty()) {
      return stars;
    }
    double median = Quantile.median(stars.stream().mapToDouble(Star::fwhmPixels).toArray());
    List<Star> kept = new ArrayList<>();
    for (Star star : stars) {
      double ratio = star.fwhmPixels() / median;
      if (ratio > MOST_SIZE_RATIO || ratio < 1 / MOST_SIZE_RATIO) {
        candidates.reject(Rejection.NOT_STELLAR);
      } else {
        kept.add(star);
      }
    }
    return kept;
  }

  private static ImageShape of(
      Plane plane, Background background, List<Star> stars, Map<Rejection, Integer> rejected) {
    int n = stars.size();
    List<Star> typical = n < 5 ? stars : typical(stars);
    MeanStretch mean = MeanStretch.of(typical);
    double[] widths = stars.stream().mapToDouble(Star::fwhmPixels).toArray();
    Optional<Estimate> fwhm =
        n == 0
            ? Optional.empty()
            : Optional.of(
                Estimate.symmetric(
                    Quantile.median(widths),
                    // Standard error of a median of Gaussian values: 1.2533 sigma / sqrt(n).
                    Estimate.SIGMAS_95 * 1.2533 * widthSigma(stars, widths) / Math.sqrt(n)));
    return new ImageShape(
        plane.width(),
        plane.height(),
        background.medianLevel(),
        background.medianNoise(),
        stars,
        rejected,
        fwhm,
        mean.stretch(),
        mean.sigma(),
        FieldPattern.of(typical, plane.width(), plane.height()));
  }

  /** Scatter of the widths; of few stars, what their noise makes of it if that is more. */
  private static double widthSigma(List<Star> stars, double[] widths) {
    double own =
        stars.stream().mapToDouble(s -> s.fwhmPixels() * s.stretchSigma() / 2).max().orElse(0);
    return stars.size() < 5 ? Math.max(own, RobustScale.of(widths)) : RobustScale.of(widths);
  }

  /** Those whose stretch is not far off; a galaxy or an unseen blend stretches on its own. */
  private static List<Star> typical(List<Star> stars) {
    double[] along = stars.stream().mapToDouble(s -> s.stretch().along()).toArray();
    double[] aslant = stars.stream().mapToDouble(s -> s.stretch().aslant()).toArray();
    double middleAlong = Quantile.median(along);
    double middleAslant = Quantile.median(aslant);
    double scale = Math.hypot(RobustScale.of(along), RobustScale.of(aslant));
    List<Star> kept = new ArrayList<>();
    for (int i = 0; i < along.length; i++) {
      double off = Math.hypot(along[i] - middleAlong, aslant[i] - middleAslant);
      double own = stars.get(i).stretchSigma();
      if (off <= CLIP_SIGMAS * Math.max(scale, own)) {
        kept.add(stars.get(i));
      }
    }
    return kept;
  }
}
