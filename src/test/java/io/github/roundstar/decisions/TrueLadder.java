package io.github.roundstar.decisions;

import io.github.roundstar.worlds.Cure;
import io.github.roundstar.worlds.Kind;
import io.github.roundstar.worlds.WorldNight;
import io.github.roundstar.worlds.WorldNight.Exposure;
import io.github.roundstar.worlds.WorldNight.Settings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What would really have come of each rung: the night is played again with the rung's best cure,
 * and every image is judged in its middle and corners ({@link io.github.roundstar.worlds.Images}).
 *
 * <p>Rungs add up as a user would go: settings; with the polar axis brought to {@value
 * #ALIGNED_ARCMIN} arcmin, balance and camera angle; with the worm trained; with the mount mended.
 * Shorter images, down to a tenth of their length, are taken with all else as it was, or with the
 * best settings and the axis set. The best settings are searched axis by axis on a grid, since the
 * axes hardly meet.
 */
final class TrueLadder {
  /** Share of the images that must come out round. The only place that says so. */
  static final double NEEDED_SHARE = 0.9;

  /** What a user with patience reaches: common practice, no source. */
  static final double ALIGNED_ARCMIN = 2;

  /** Shorter images than that only read noise: common practice, no source. */
  static final double SHORTEST_IMAGE_SECONDS = 15;

  private static final double SHORTEST_GUIDE_EXPOSURE_SECONDS = 0.4;
  private static final double[] GAINS = {0.15, 0.3, 0.45, 0.6, 0.75, 0.9};
  private static final double[] SHORTER = {1.25, 1.5, 2, 3, 4, 6, 10};

  /** Round images of all. */
  record Count(int round, int units) {
    /** Whether the need is met. */
    boolean meets() {
      return round >= NEEDED_SHARE * units - 1e-9;
    }

    /** Whether one image more or less would turn the answer. */
    boolean close() {
      return new Count(Math.min(units, round + 1), units).meets()
          != new Count(Math.max(0, round - 1), units).meets();
    }

    @Override
    public String toString() {
      return round + "/" + units;
    }
  }

  private final Kind.Drawn drawn;
  private final WorldNight night;
  private final Map<Rung, Count> counts = new EnumMap<>(Rung.class);
  private List<Cure> bestSettings;

  TrueLadder(Kind.Drawn drawn) {
    this.drawn = drawn;
    this.night = drawn.night();
  }

  /** The cheapest rung whose best cure meets the need; the air's limit if none does. */
  Rung cheapest() {
    for (Rung rung : Rung.values()) {
      if (rung != Rung.LOOP_LIMIT && of(rung).meets()) {
        return rung;
      }
    }
    return Rung.AIR_LIMIT;
  }

  /** What the rung's best cure comes to. */
  Count of(Rung rung) {
    Count known = counts.get(rung);
    if (known == null) {
      known = count(rung);
      counts.put(rung, known);
    }
    return known;
  }

  private Count count(Rung rung) {
    return switch (rung) {
      case AS_IT_WAS -> with();
      case SETTINGS, ALIGNMENT_BALANCE, TRAINING, MECHANICS -> {
        Count settings = with(settings().toArray(Cure[]::new));
        yield rung == Rung.SETTINGS ? settings : with(onTop(rung));
      }
      case SHORTER_EXPOSURES -> shorter();
      case LOOP_LIMIT, AIR_LIMIT -> with(Cure.perfectMount(), Cure.noGusts());
    };
  }

  private Cure[] onTop(Rung rung) {
    List<Cure> cures = new ArrayList<>(settings());
    cures.addAll(
        List.of(Cure.polarAxisWithin(ALIGNED_ARCMIN), Cure.balanced(), Cure.cameraSquare()));
    if (rung.compareTo(Rung.TRAINING) >= 0) {
      cures.add(Cure.wormTrained());
    }
    if (rung == Rung.MECHANICS) {
      cures.addAll(
          List.of(
              Cure.decPlay(0),
              Cure.unstuck(),
              Cure.periodicErrorTimes(0),
              Cure.noGusts(),
              Cure.noBending(),
              Cure.roundOptics()));
    }
    return cures.toArray(Cure[]::new);
  }

  /** What these cures come to. Images are those of the night unless a cure changes them. */
  Count with(Cure... cures) {
    WorldNight again = cures.length == 0 ? night : night.again(cures);
    Settings before = night.settings();
    Settings after = again.settings();
    boolean sameImages =
        before.imageSeconds() == after.imageSeconds()
            && Double.compare(before.pauseSeconds(), after.pauseSeconds()) == 0;
    List<Exposure> images = sameImages ? night.exposures() : again.exposures();
    return new Count(again.images().round(images, drawn.limit()), images.size());
  }

  /** The night played again with these cures. */
  WorldNight again(List<Cure> cures) {
    return night.again(cures.toArray(Cure[]::new));
  }

  private Count shorter() {
    Count best = shorter(night);
    return best.meets() ? best : shorter(night.again(onTop(Rung.ALIGNMENT_BALANCE)));
  }

  private Count shorter(WorldNight again) {
    Count best = new Count(0, 1);
    for (double factor : SHORTER) {
      double seconds = night.settings().imageSeconds() / factor;
      if (seconds < SHORTEST_IMAGE_SECONDS) {
        break;
      }
      List<Exposure> images = new ArrayList<>();
      for (Exposure exposure : night.exposures()) {
        for (int i = 0; (i + 1) * seconds <= exposure.seconds() + 1e-9; i++) {
          images.add(new Exposure(exposure.startSeconds() + i * seconds, seconds));
        }
      }
      best = new Count(again.images().round(images, drawn.limit()), images.size());
      if (best.meets()) {
        return best;
      }
    }
    return best;
  }

  /** The best settings, in words. */
  String settingsInWords() {
    return String.valueOf(settings());
  }

  /** The best settings of the grid. */
  private List<Cure> settings() {
    if (bestSettings == null) {
      Settings had = night.settings();
      List<List<Cure>> candidates = new ArrayList<>();
      for (double factor : new double[] {1, 0.5, 0.25, 2}) {
        double seconds = had.guideExposureSeconds() * factor;
        if (factor == 1) {
          candidates.add(onGrid(List.of()));
        } else if (seconds >= SHORTEST_GUIDE_EXPOSURE_SECONDS) {
          candidates.add(onGrid(List.of(Cure.guideExposure(seconds))));
        }
      }
      if (!Double.isNaN(had.pauseSeconds())) {
        for (List<Cure> gains : List.copyOf(candidates)) {
          List<Cure> waiting = new ArrayList<>(gains);
          waiting.add(Cure.waitUntilSettled());
          candidates.add(waiting);
          List<Cure> patient = new ArrayList<>(gains);
          patient.add(Cure.pauseAfterDither(60));
          candidates.add(patient);
        }
      }
      Count best = null;
      for (List<Cure> cures : candidates) {
        Count count = with(cures.toArray(Cure[]::new));
        if (best == null || share(count) > share(best)) {
          best = count;
          bestSettings = cures;
        }
      }
    }
    return bestSettings;
  }

  private static double share(Count count) {
    return count.units() == 0 ? 0 : (double) count.round() / count.units();
  }

  /** Gain and deadband of either axis with which it moves least during the images. */
  private List<Cure> onGrid(List<Cure> beside) {
    Settings had = night.settings();
    double[] least = {Double.MAX_VALUE, Double.MAX_VALUE};
    double[] gain = new double[2];
    double[] deadband = new double[2];
    for (double wanted : GAINS) {
      for (int free = 0; free < 2; free++) {
        double raDeadband = free == 1 ? 0 : had.raDeadbandArcsec();
        double decDeadband = free == 1 ? 0 : had.decDeadbandArcsec();
        List<Cure> cures = new ArrayList<>(beside);
        cures.add(Cure.raGain(wanted / had.raGainDone()));
        cures.add(Cure.decGain(wanted / had.decGainDone()));
        cures.add(Cure.raDeadband(raDeadband));
        cures.add(Cure.decDeadband(decDeadband));
        double[] moved = moved(again(cures));
        for (int axis = 0; axis < 2; axis++) {
          if (moved[axis] < least[axis]) {
            least[axis] = moved[axis];
            gain[axis] = wanted / (axis == 0 ? had.raGainDone() : had.decGainDone());
            deadband[axis] = axis == 0 ? raDeadband : decDeadband;
          }
        }
      }
    }
    List<Cure> best = new ArrayList<>(beside);
    best.addAll(
        List.of(
            Cure.raGain(gain[0]),
            Cure.decGain(gain[1]),
            Cure.raDeadband(deadband[0]),
            Cure.decDeadband(deadband[1])));
    return best;
  }

  /** Mean square of either axis during the night's images. */
  private double[] moved(WorldNight again) {
    double[] sums = new double[2];
    for (Exposure exposure : night.exposures()) {
      double[] covariance =
          again.mainCamera().covariance(exposure.startSeconds(), exposure.seconds());
      sums[0] += covariance[0];
      sums[1] += covariance[1];
    }
    return Arrays.copyOf(sums, 2);
  }
}
