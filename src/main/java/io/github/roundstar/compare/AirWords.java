package io.github.roundstar.compare;

import io.github.roundstar.results.ComparedFigure;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Whether better or worse guiding came from the air, said plainly. */
final class AirWords {
  /** From this share of a change on, the air made it. */
  private static final double MOSTLY = 0.5;

  private AirWords() {}

  /** Empty where the noise floor or the RMS is not known on both sides. */
  static Optional<String> of(EqualAir air, List<ComparedFigure> figures) {
    Optional<ComparedFigure> logged = find(figures, "rms-radial");
    Optional<ComparedFigure> equal = find(figures, "rms-radial" + GuidingFigures.EQUAL_AIR);
    if (!air.known() || logged.isEmpty() || equal.isEmpty()) {
      return Optional.empty();
    }
    double from = logged.get().before().value();
    double to = logged.get().after().value();
    String rms = "The logged radial RMS went from " + logged.get().fromTo();
    if (logged.get().change().covers(0)) {
      return Optional.of(rms + ", which is within what nights differ by anyway.");
    }
    String direction = to < from ? "Better" : "Worse";
    double share = air.changeByAir() / (to * to - from * from);
    String equalAir =
        format(
            " In equal air it would have gone from %s: %s.",
            equal.get().fromTo(), equal.get().verdict());
    if (share >= MOSTLY) {
      return Optional.of(
          format(
              "%s, and %s RMS came from %s air: the noise floor went from %.2f to %.2f arcsec, which"
                  + " makes %.0f %% of the change in the mean square.%s",
              rms,
              direction.toLowerCase(Locale.ROOT),
              direction.toLowerCase(Locale.ROOT),
              air.floorArcsec(false),
              air.floorArcsec(true),
              100 * Math.min(share, 1),
              equalAir));
    }
    return Optional.of(
        format(
            "%s; the air made %.0f %% of the change in the mean square.%s",
            rms, 100 * Math.max(share, 0), equalAir));
  }

  private static Optional<ComparedFigure> find(List<ComparedFigure> figures, String key) {
    return figures.stream().filter(figure -> figure.key().equals(key)).findFirst();
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
