package io.github.roundstar.compare;

import io.github.roundstar.results.NightResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * The nights of a season that one mount took with the same optics; figures of others are another
 * story.
 *
 * @param name what tells it from the season's others; empty where there are none
 * @param nights in order of time
 */
record Telescope(String name, List<DatedNight> nights) {
  /** Scales nearer than this are those of one set of optics. */
  private static final double SAME_SCALE = 0.02;

  /** Whether two nights are of one telescope; what a night does not tell does not part them. */
  static boolean same(NightResult one, NightResult other) {
    return alike(List.of(one), List.of(other));
  }

  /** Deals nights out, the telescopes in order of their first nights. */
  static List<Telescope> of(List<DatedNight> nights) {
    List<List<DatedNight>> groups = new ArrayList<>();
    for (DatedNight night : nights) {
      groups.stream()
          .filter(group -> alike(night, group))
          .findFirst()
          .orElseGet(
              () -> {
                groups.add(new ArrayList<>());
                return groups.get(groups.size() - 1);
              })
          .add(night);
    }
    return groups.stream()
        .map(group -> new Telescope(groups.size() == 1 ? "" : name(group), group))
        .toList();
  }

  private static boolean alike(DatedNight night, List<DatedNight> group) {
    return alike(List.of(night.result()), DatedNight.results(group));
  }

  /** What a night does not tell does not part it from others. */
  private static boolean alike(List<NightResult> night, List<NightResult> group) {
    Setup one = new Setup(night);
    Setup all = new Setup(group);
    return (one.mounts().isEmpty() || all.mounts().isEmpty() || all.mounts().equals(one.mounts()))
        && alike(one.guideScales(), all.guideScales())
        && alike(one.imagingScales(), all.imagingScales());
  }

  private static boolean alike(double[] one, double[] all) {
    return one.length == 0 || all.length == 0 || Math.abs(one[0] / all[0] - 1) < SAME_SCALE;
  }

  private static String name(List<DatedNight> group) {
    Setup setup = new Setup(DatedNight.results(group));
    return String.join(
        ", ",
        Stream.of(
                String.join(" or ", setup.mounts()),
                scale(setup.guideScales(), "guide camera"),
                scale(setup.imagingScales(), "main camera"))
            .filter(part -> !part.isEmpty())
            .toList());
  }

  private static String scale(double[] scales, String camera) {
    return scales.length == 0
        ? ""
        : String.format(Locale.ROOT, "%s of %.2f arcsec per pixel", camera, scales[0]);
  }
}
