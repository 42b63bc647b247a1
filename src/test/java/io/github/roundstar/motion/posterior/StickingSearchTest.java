package io.github.roundstar.motion.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.motion.posterior.StickingSearch.Cell;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Thresholds under likelihoods that jump as those of an axis that sticks do. */
@Tag("identity")
class StickingSearchTest {
  private static final double THRESHOLD = 1.0437;
  private static final double UNLIKE = -0.0137;

  /** Falls in steps on all sides of a threshold and an unlikeness, by a ridge between both. */
  private static double jumping(Play play, double sharpness) {
    double off = play.width() / THRESHOLD - 1;
    double unlike = play.unlikeness() - UNLIKE;
    double steps =
        Math.floor(300 * Math.abs(off + unlike) + 0.5) + Math.floor(120 * Math.abs(unlike) + 0.5);
    double start = Math.abs(play.start() - 0.4) > 0.3 ? 2 : 0;
    return -sharpness * steps - start;
  }

  private static StickingSearch search(double sharpness) {
    return new StickingSearch(play -> jumping(play, sharpness), Priors.USUAL);
  }

  private static Play found(StickingSearch search) {
    return search.best(search.closer(search.coarse(0.7).play()).play()).play();
  }

  @Test
  void likelihoodThatJumpsIsSearchedToItsTop() {
    for (double sharpness : new double[] {0.4, 3, 20}) {
      assertThat(jumping(found(search(sharpness)), sharpness))
          .as("sharpness %s", sharpness)
          .isGreaterThan(-1.5 * sharpness);
    }
  }

  /** The cells against a plain sum over 800 x 800 x 50 points. */
  @Test
  void cellsHoldTheWholeWeight() {
    for (double sharpness : new double[] {0.1, 0.4, 3}) {
      StickingSearch search = search(sharpness);
      List<Cell> cells = search.cells(found(search), 12);
      double sum = Math.exp(StickingSearch.log(cells));
      double mean =
          cells.stream().mapToDouble(c -> Math.exp(c.logWeight()) * c.play().width()).sum() / sum;
      double[] plain = plain(sharpness);

      assertThat(Math.log(sum / plain[0])).as("sharpness %s", sharpness).isCloseTo(0, within(0.1));
      assertThat(mean / plain[1]).isCloseTo(1, within(0.001));
    }
  }

  private static double[] plain(double sharpness) {
    int points = 800;
    int starts = 50;
    double sum = 0;
    double weighted = 0;
    for (int i = 0; i < points; i++) {
      double width = THRESHOLD * (0.7 + 0.6 * (i + 0.5) / points);
      for (int j = 0; j < points; j++) {
        double unlike = -0.15 + 0.3 * (j + 0.5) / points;
        double prior =
            Priors.USUAL.logPlay(width)
                + Priors.logNormal(unlike, 0, Priors.ALIKE)
                + Math.log(0.6 * THRESHOLD / points * 0.3 / points / starts);
        for (int s = 0; s < starts; s++) {
          Play play = new Play(width, (s + 0.5) / starts, unlike);
          double weight = Math.exp(prior + jumping(play, sharpness));
          sum += weight;
          weighted += weight * width;
        }
      }
    }
    return new double[] {sum, weighted / sum};
  }
}
