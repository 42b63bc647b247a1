package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Method;
import java.util.List;

/** How findings and verdict are made, in words for the reader. */
final class JudgingMethods {
  static final List<Method> ALL =
      List.of(
          new Method(
              "/findings/*/level",
              "Bounds of intervals against fixed limits, never a bare value. Fix first: without it"
                  + " the trailing part of the radial RMS falls by 25 % and 0.15 arcsec at the lower"
                  + " bound, or a fifth of the exposures or of the night is rescued. Worth fixing: by"
                  + " 10 %. Watch: there, but not surely as much. Fine: the interval excludes 10 %."
                  + " A fault of the set-up counts by the share of each correction that it spoils."),
          new Method(
              "/findings/*/shareOfTrailing",
              "The budget's part, weighted by used frames over runs, of both axes' mean square after"
                  + " each exposure's mean is removed, 0 to 1: parts that work against each other may"
                  + " leave one that is more than the whole, which counts as the whole. Its interval joins what the budget may be off"
                  + " (15 % and 0.01 arcsec^2) with that of the figure behind it. For a gain, what the"
                  + " replay saves, its ratio taken as known to 5 %."),
          new Method(
              "/findings/*/confidence",
              "Chance that the true share reaches what the level asks for, its interval taken as"
                  + " that of a normal distribution; never above 99 %."),
          new Method(
              "/findings/*/expectedRmsRadialArcsec",
              "Root of the logged mean square less all of the cause's part: the best that can come"
                  + " of it."),
          new Method(
              "/verdict",
              "The weightiest finding that is worth fixing decides. Gears are left alone where the"
                  + " logged RMS keeps within the user's limit (rms_arcsec, else what elongation limit"
                  + " and seeing allow one axis) at the upper bound and no exposure trailed."));

  private JudgingMethods() {}
}
