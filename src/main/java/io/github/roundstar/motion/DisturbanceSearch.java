package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Disturbance.Kind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What happened in a run by what the star shows: jolts of both axes put together, clouds by the
 * star's light, a star that no pulse moves.
 */
public final class DisturbanceSearch {
  /** Jolts of the two axes that lie so many frames apart are one. */
  private static final int TOGETHER = 2;

  /** A set point that moves may be missed by some of the way: no shift so many frames about it. */
  private static final int NEAR_DITHER = 2;

  private final Frames frames;
  private final int[] measured;
  private final Starlight light;

  private DisturbanceSearch(Frames frames) {
    this.frames = frames;
    this.measured = IntStream.range(0, frames.size()).filter(frames::measured).toArray();
    this.light = Starlight.of(frames);
  }

  /** Jolts of both axes over the same frames. */
  private record Span(Jolt.Shape shape, int first, int last, double ra, double dec) {
    static Span of(AxisJolts axis, Jolt jolt) {
      double size = axis.cosine() * jolt.sizeArcsec();
      return new Span(
          jolt.shape(),
          jolt.first(),
          jolt.last(),
          axis.axis() == Axis.RA ? size : 0,
          axis.axis() == Axis.RA ? 0 : size);
    }

    double size() {
      return Math.hypot(ra, dec);
    }

    boolean near(Span other) {
      return first - TOGETHER <= other.last && other.first - TOGETHER <= last;
    }

    /** Both as one, with the shape of the larger. */
    Span and(Span other) {
      return new Span(
          size() >= other.size() ? shape : other.shape,
          Math.min(first, other.first),
          Math.max(last, other.last),
          larger(ra, other.ra),
          larger(dec, other.dec));
    }

    private static double larger(double one, double other) {
      return Math.abs(one) > Math.abs(other) ? one : other;
    }
  }

  /** All of them, in order of time. */
  public static List<Disturbance> of(
      GuideRun run, Optional<AxisMotion> ra, Optional<AxisMotion> dec) {
    DisturbanceSearch search = new DisturbanceSearch(run.frames());
    List<AxisJolts> axes =
        Stream.concat(
                ra.map(motion -> AxisJolts.of(Axis.RA, motion)).stream(),
                dec.map(motion -> AxisJolts.of(Axis.DEC, motion)).stream())
            .toList();
    List<Disturbance> all = new ArrayList<>(search.light.clouds());
    search.spans(axes).forEach(span -> search.add(span, all));
    StuckStar.of(run, ra, dec).ifPresent(all::add);
    all.sort(Comparator.comparingDouble(Disturbance::startSeconds));
    return all;
  }

  /** Frames over which one axis was knocked or blown about, flanks and all, by the same jolts. */
  public static List<FrameSpan> spans(GuideRun run, AxisMotion motion) {
    DisturbanceSearch search = new DisturbanceSearch(run.frames());
    return motion.jolts().jolts().stream()
        .filter(jolt -> !search.missedDither(jolt.shape(), jolt.first(), jolt.last()))
        .map(jolt -> search.frames(jolt))
        .toList();
  }

  private FrameSpan frames(Jolt jolt) {
    int from = Math.max(0, jolt.first() - JoltFree.FLANK);
    int last = Math.min(measured.length - 1, jolt.last() + JoltFree.FLANK);
    return new FrameSpan(measured[from], measured[last] + 1);
  }

  private List<Span> spans(List<AxisJolts> axes) {
    List<Span> sorted = new ArrayList<>();
    for (AxisJolts axis : axes) {
      axis.jolts().forEach(jolt -> sorted.add(Span.of(axis, jolt)));
    }
    sorted.sort(Comparator.comparingInt(Span::first));
    List<Span> together = new ArrayList<>();
    for (Span span : sorted) {
      int last = together.size() - 1;
      if (last >= 0 && together.get(last).near(span)) {
        together.set(last, together.get(last).and(span));
      } else {
        together.add(span);
      }
    }
    return together;
  }

  private void add(Span span, List<Disturbance> all) {
    if (missedDither(span.shape(), span.first(), span.last())) {
      return;
    }
    int first = measured[span.first()];
    int last = measured[span.last()];
    all.add(
        Disturbance.ofSize(
            kind(span, last), frames.timeSeconds(first), frames.timeSeconds(last), span.size()));
  }

  /** Whether a shift is what a dither missed of its way. */
  private boolean missedDither(Jolt.Shape shape, int first, int last) {
    return shape == Jolt.Shape.LASTING && dithers(measured[first], measured[last]);
  }

  /** Whether the set point moved about the frames in which the star did. */
  private boolean dithers(int first, int last) {
    return IntStream.rangeClosed(
            Math.max(0, first - NEAR_DITHER), Math.min(frames.size() - 1, last + NEAR_DITHER))
        .anyMatch(frames::ditherStart);
  }

  private Kind kind(Span span, int last) {
    if (span.shape() == Jolt.Shape.PASSING) {
      return Kind.GUST;
    }
    if (light.changesAt(last)) {
      return Kind.STAR_SWITCH;
    }
    return span.last() - span.first() <= 1 ? Kind.KNOCK : Kind.LASTING_SHIFT;
  }
}
