package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Method;
import java.util.List;

/** How findings and verdict are made, in words for the reader. */
final class JudgingMethods {
  static final List<Method> ALL =
      List.of(
          new Method(
              "/planning/longestExposure/*/seconds",
              "In each draw of what moved the star, all exposures of a length are judged as the"
                  + " night's are, from the present length up while nine in ten stay round, else"
                  + " down; windows between dithers stand for lengths that were not taken, the image"
                  + " nearest to them for what the log does not tell. The value is the median of the"
                  + " draws, between two lengths by a line against the logarithm; the ends hold 95 %"
                  + " of the draws and are lengths that were played."),
          new Method(
              "/planning/guideExposure",
              "Of the lengths that were played, the one that is recommended, and those whose saving"
                  + " in motion has an interval that meets its own in both axes."),
          new Method(
              "/planning/recordNext/*/halfWidthThen",
              "Information adds up as in a linear model with Gaussian errors, the scatter taken as"
                  + " this night's; that of images is a rule of thumb."),
          new Method(
              "/findings/*/level",
              "What a cure for it wins back when the night is played again with it. Worth fixing: the"
                  + " cure is among what is decided on. Fix first: there it wins back a fifth of the"
                  + " exposures, or a quarter of the RMS where an RMS is asked for. Watch: it is there,"
                  + " and no cure for it is needed or wins an exposure. Fine: its share of the trailing"
                  + " surely is below a tenth. Where the night was not played again, the share of the"
                  + " trailing that goes with it gives the level: a quarter, a tenth."),
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
              "/ladder",
              "The night is played again with each cure. What moved the star is drawn from the"
                  + " posterior: the strength of the pulses from its joint draws, the noise of every"
                  + " frame from what the smoothed path leaves open. It goes through the law that the"
                  + " loop followed, both axes; where no law describes the loop, what a cure takes away"
                  + " goes through the loop's average gain. The listed exposures, or windows of an"
                  + " exposure's length between dithers, are then judged as exposures are: by"
                  + " Gaussian-weighted moments, round where the elongation in the middle and in the"
                  + " worst corner is within the limit. A measured image keeps its measured shape, to"
                  + " which the change of the predicted stretch is added; what all images show beyond"
                  + " their motion (least squares over the night, motion told to 15 %) is the optics'."
                  + " The field turns about the guide star by the polar axis of each draw; what the"
                  + " night does not tell of it is drawn from axes of 1 to 128 arcmin, each scale as"
                  + " likely. With shorter guide exposures the star goes on a bridge of its wander"
                  + " between the log's frames. Twelve to forty draws, always"
                  + " the same; intervals are their 95 %. Training takes off what repeats from turn to"
                  + " turn; mechanical cures are taken as complete, so they are at best. The loop's"
                  + " limit is the one-step prediction error of the night's own wander and noise (Riccati"
                  + " equation), drift and gears known beforehand; at the air's limit nothing moves."),
          new Method(
              "/verdict",
              "The lowest rung of the ladder that is likelier to meet what is asked than not, else the"
                  + " air: so a step that is not needed is as rare as one that is not enough. Below a"
                  + " probability of 0.9 the sentence says that it is most likely only. Of that rung"
                  + " and those below it no more is named than it takes."));

  private JudgingMethods() {}
}
