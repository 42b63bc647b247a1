package io.github.roundstar.compare;

import io.github.roundstar.compare.Figure.Kind;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.Detectable;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Periodic;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The periodic error, part by part: parts with a name by it, others by their period. */
final class ComponentFigures {
  /** Beyond these, parts are too small to decide anything. */
  private static final int MOST = 6;

  /** Unnamed parts whose periods differ by less than this are one. */
  private static final double SAME_PERIOD = 0.015;

  private static final String UNNAMED = "unlabelled";

  private ComponentFigures() {}

  /** Parts that at least half of the nights of one of the sides show; largest first. */
  static List<Figure> of(List<NightResult> before, List<NightResult> after) {
    Map<String, Component> parts = new LinkedHashMap<>();
    List<NightResult> all = new ArrayList<>(before);
    all.addAll(after);
    all.stream()
        .flatMap(night -> components(night).stream())
        .filter(part -> !part.mayBeAlias())
        .sorted(Comparator.comparingDouble(part -> -part.amplitudeArcsecAxis().value()))
        .filter(part -> parts.values().stream().noneMatch(known -> same(known, part)))
        .forEach(part -> parts.put(name(part), part));
    return parts.entrySet().stream()
        .filter(part -> usual(before, part.getValue()) || usual(after, part.getValue()))
        .limit(MOST)
        .map(part -> figure(part.getKey(), part.getValue()))
        .toList();
  }

  private static boolean usual(List<NightResult> nights, Component part) {
    long with = nights.stream().filter(night -> find(night, part).isPresent()).count();
    return with > 0 && 2 * with >= nights.size();
  }

  private static Figure figure(String name, Component part) {
    return new Figure(
        "periodic-" + name.replaceAll("[^A-Za-z0-9]+", "-"),
        "periodic error, " + name,
        Kind.PERIODIC,
        "arcsec at the axis",
        Aim.LOWER,
        new Tolerance(
            0.15, 0.10, "less than a tenth, or than a guide loop lets through, is not seen"),
        MountFigures.GEAR_SCATTER,
        night -> reading(night, part));
  }

  private static Reading reading(NightResult night, Component part) {
    Periodic periodic = night.night().periodic();
    if (periodic == null) {
      return Reading.none(Why.missing(night, "/night/periodic"));
    }
    return find(night, part)
        .map(found -> Reading.of(found.amplitudeArcsecAxis()))
        .orElseGet(() -> below(periodic.detectable(), part));
  }

  /** Not found means smaller than what would have stood out, where that period was searched. */
  private static Reading below(Detectable detectable, Component part) {
    if (detectable == null
        || part.periodSeconds().value() > (1 + SAME_PERIOD) * detectable.periodSeconds()) {
      return Reading.none("the log is too short to show a period of this length");
    }
    double half = detectable.amplitudeArcsecAxis() / 2;
    return Reading.of(half, half);
  }

  private static Optional<Component> find(NightResult night, Component part) {
    return components(night).stream().filter(other -> same(part, other)).findFirst();
  }

  private static List<Component> components(NightResult night) {
    Periodic periodic = night.night().periodic();
    return periodic == null ? List.of() : periodic.components();
  }

  private static boolean same(Component one, Component other) {
    if (!one.source().equals(other.source())) {
      return false;
    }
    double ratio = one.periodSeconds().value() / other.periodSeconds().value();
    return !one.source().equals(UNNAMED) || Math.abs(ratio - 1) < SAME_PERIOD;
  }

  private static String name(Component part) {
    return part.source().equals(UNNAMED)
        ? String.format(Locale.ROOT, "%.0f s", part.periodSeconds().value())
        : part.source();
  }
}
