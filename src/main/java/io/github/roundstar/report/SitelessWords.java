package io.github.roundstar.report;

import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.AssumedSite;
import java.util.List;

/** What was assumed of a site whose latitude nobody told, and what is missing for it. */
final class SitelessWords {
  private static final String ASK =
      "Add site_latitude to the log's header, or latitude_deg under [site] in the equipment file:"
          + " it gives both adjusters, the tracking rate and the turn of the field.";

  private SitelessWords() {}

  static List<String> of(AssumedSite assumed) {
    return List.of(air(assumed), end(assumed), ASK);
  }

  private static String air(AssumedSite assumed) {
    String where =
        assumed.latitudeFromDeg() == null
            ? "wherever"
            : "anywhere from latitude "
                + Numbers.fixed(assumed.latitudeFromDeg(), 0)
                + " to "
                + Numbers.fixed(assumed.latitudeToDeg(), 0)
                + " degrees, where";
    return "Refraction cannot be taken out without the latitude. The interval holds whatever it may do "
        + where
        + " all these stars stood at least 15 degrees high.";
  }

  private static String end(AssumedSite assumed) {
    return "north".equals(assumed.axisEnd())
        ? "These stars do not tell the hemisphere. In the northern one the north end of the axis is the"
            + " raised one; in the southern one the raised end errs the opposite way, both in azimuth"
            + " and in altitude."
        : "Which end of the axis is raised was taken from these stars: outside the tropics they stand"
            + " so high in one hemisphere only.";
  }
}
