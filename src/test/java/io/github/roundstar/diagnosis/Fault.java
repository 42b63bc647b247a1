package io.github.roundstar.diagnosis;

import io.github.roundstar.motion.Axis;
import java.util.Locale;

/**
 * A fault to play, two to six times as large as what makes its finding come first, and the code of
 * the finding that should lead.
 */
enum Fault {
  HEALTHY("") {
    @Override
    void add(PlayedNight night) {
      // Nothing is wrong.
    }
  },
  /** What a first-order loop leaves of the worm has 2 pi dt / (g P) of its amplitude. */
  PERIODIC_ERROR("periodic-error") {
    @Override
    void add(PlayedNight night) {
      double left =
          2
              * Math.PI
              * night.cadence
              / (night.raGain * PlayedNight.WORM_SECONDS)
              * Math.cos(Math.toRadians(night.declination));
      night.worm = night.times() * Math.sqrt(2 * night.fixFirstArcsec2()) / left;
    }
  },
  /** Dec is not guided: a drift d trails by (d * 5 min)^2 / 12; 3.82 arcmin drift 1 arcsec/min. */
  POLAR_AXIS("polar-axis") {
    @Override
    void add(PlayedNight night) {
      double drift = night.times() * Math.sqrt(12 * night.fixFirstArcsec2()) / 5;
      night.decDirection = "off";
      night.hourAngle = night.between(-0.8, 0);
      night.azimuth = 3.82 * drift / Math.cos(Math.toRadians(47.2));
    }
  },
  /**
   * Play hurts where the star crosses it often. Its size is what it adds to the mean square in Dec,
   * found by playing the night with ever more of it.
   */
  DEC_BACKLASH("dec-backlash") {
    @Override
    void add(PlayedNight night) {
      double times = night.times();
      double wanted = times * times * night.fixFirstArcsec2();
      night.decWander = 0.008;
      night.azimuth = 0;
      night.altitude = 0;
      night.ditherMinutes = 3;
      night.play = 0;
      double without = night.meanSquareArcsec2(Axis.DEC);
      night.play = 3;
      while (night.play < 14 && night.meanSquareArcsec2(Axis.DEC) - without < wanted) {
        night.play *= 1.2;
      }
    }
  },
  /** Noise through the loop: 2R/(2-g) doubles from 0.6 to 1.3. */
  OVER_CORRECTION("over-correction") {
    @Override
    void add(PlayedNight night) {
      night.noise = night.between(0.3, 0.6);
      night.raGain = night.between(1.4, 1.7);
      night.decGain = night.between(1.4, 1.7);
    }
  },
  UNDER_CORRECTION("under-correction") {
    @Override
    void add(PlayedNight night) {
      night.worm = night.between(4, 7);
      night.raGain = night.between(0.06, 0.14);
    }
  },
  JOLTS("jolts") {
    @Override
    void add(PlayedNight night) {
      night.more +=
          String.format(
              Locale.ROOT,
              "[gusts]\nper_hour = 30\namplitude_arcsec = %.2f\nduration_s = 9\nra_share = 0.6\n",
              1.5 * night.times());
    }
  },
  CLOUDS("clouds") {
    @Override
    void add(PlayedNight night) {
      night.more +=
          String.format(
              Locale.ROOT,
              "[[cloud]]\nat_min = 30\nminutes = %.1f\ndepth = 0.995\n",
              night.between(70, 100));
      night.lostBelowSnr = 30;
    }
  },
  PULSE_STRENGTH("pulse-strength") {
    @Override
    void add(PlayedNight night) {
      double factor =
          night.random.nextBoolean() ? night.between(0.3, 0.5) : night.between(1.5, 1.7);
      night.east *= factor;
      night.west *= factor;
    }
  },
  PIXEL_SCALE("pixel-scale") {
    @Override
    void add(PlayedNight night) {
      double factor =
          night.random.nextBoolean() ? night.between(0.4, 0.5) : night.between(1.5, 1.7);
      night.east *= factor;
      night.west *= factor;
      night.north *= factor;
      night.south *= factor;
    }
  },
  CAMERA_ANGLE("camera-angle") {
    @Override
    void add(PlayedNight night) {
      night.cameraAngle = (night.random.nextBoolean() ? 1 : -1) * night.between(29, 44);
    }
  },
  AXIS_IMBALANCE("axis-imbalance") {
    @Override
    void add(PlayedNight night) {
      double off = night.between(0.5, 0.7);
      night.east = 1 + off;
      night.west = 1 - off;
    }
  },
  SLOW_SETTLING("slow-settling") {
    @Override
    void add(PlayedNight night) {
      night.ditherMinutes = 4;
      night.settleArcsec = 0.05;
      night.settleLimit = night.between(96, 150);
    }
  },
  LOG_TOO_SHORT("log-too-short") {
    @Override
    void add(PlayedNight night) {
      night.minutes = night.between(4, 11);
      night.ditherMinutes = 30;
    }
  };

  private final String code;

  Fault(String code) {
    this.code = code;
  }

  /** Code of the finding that should lead; empty on a sound night. */
  String code() {
    return code;
  }

  abstract void add(PlayedNight night);
}
