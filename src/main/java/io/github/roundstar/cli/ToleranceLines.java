package io.github.roundstar.cli;

import io.github.roundstar.diagnosis.Tolerance;
import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Equipment.Limits;
import io.github.roundstar.motion.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;

/** What optics demand, in a few lines for the terminal. */
final class ToleranceLines {
  private ToleranceLines() {}

  static List<String> of(Tolerance asked, Limits limits) {
    List<String> lines = new ArrayList<>();
    lines.add(
        format(
            "%-12s elongation of %s or less, %s; exposures are judged by the same",
            "round",
            Decimals.text(limits.elongation(), limits.usersElongation() ? 3 : 2)
                .replaceAll("(\\.\\d\\d)0$", "$1"),
            limits.usersElongation() ? "your limit" : "the tool's limit"));
    line(lines, "scale", asked.arcsecPerPixel(), "%.2f arcsec per pixel");
    line(lines, "star", asked.starFwhmArcsec(), "%.2f arcsec wide at half height");
    line(lines, "sampling", asked.pixelsPerFwhm(), ToleranceLines::sampling);
    line(lines, "guiding", asked.axisRmsArcsec(), "%.2f arcsec RMS in one axis, the other perfect");
    line(
        lines,
        "both axes",
        asked.sharedRmsArcsec(),
        orNever("%.2f arcsec RMS in the worse axis", "any size: both axes scatter nearly alike"));
    line(lines, "drift", asked.driftArcsec(), "%.1f arcsec over an exposure without guiding");
    line(
        lines,
        "polar axis",
        asked.polarArcmin(),
        "%.1f arcmin off, for half a pixel of trail in the farthest corner");
    line(
        lines,
        "unguided",
        asked.unguidedSeconds(),
        orNever("%.0f s of exposure with this periodic error", "any exposure: the swing is small"));
    line(lines, "guide scale", asked.guideScaleRatio(), ToleranceLines::guideScale);
    return lines;
  }

  private static void line(List<String> lines, String name, Answer<Double> figure, String pattern) {
    line(lines, name, figure, value -> format(pattern, value));
  }

  private static void line(
      List<String> lines, String name, Answer<Double> figure, DoubleFunction<String> words) {
    String said =
        figure.value().map(words::apply).orElseGet(() -> "not known: " + figure.because());
    lines.add(format("%-12s %s", name, said));
  }

  private static DoubleFunction<String> orNever(String pattern, String never) {
    return value -> Double.isInfinite(value) ? never : format(pattern, value);
  }

  /** Two to three pixels across a star; common practice, no source. */
  private static String sampling(double pixels) {
    String word =
        pixels < 1.5
            ? "coarse: stars are smaller than the pixels show"
            : pixels > 4 ? "fine: binning would lose nothing" : "well sampled";
    return format("%.1f pixels across a star, %s", pixels, word);
  }

  /** A centroid is good to some tenth of a pixel; common practice, no source. */
  private static String guideScale(double ratio) {
    String word =
        ratio > 6 ? "coarse: a tenth of its pixel already shows in the image" : "fine enough";
    return format("%.1f imaging pixels to a guide pixel, %s", ratio, word);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
