package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.simulate.Exposures;
import io.github.roundstar.sky.DifferentialRefraction;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StarPlace;
import java.util.List;
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
  /** Gusts of a size that is found by playing some without the worm, whose swing would mix in. */
  JOLTS("jolts") {
    @Override
    void add(PlayedNight night) {
      double times = night.times();
      double worm = night.worm;
      String calm = night.more;
      night.worm = 0;
      double without = night.meanSquareArcsec2();
      night.more = calm + gusts(3);
      double added = night.meanSquareArcsec2() - without;
      night.more = calm + gusts(3 * times * Math.sqrt(night.fixFirstArcsec2() / added));
      night.worm = worm;
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
  },
  STUCK_STAR("stuck-star") {
    @Override
    void add(PlayedNight night) {
      night.hotPixel = true;
    }
  },
  /**
   * A mount left to itself, since guiding takes an even drift out: it trails by (d * 5 min)^2 / 12.
   * The rate must be off by more than the air makes of it, too.
   */
  TRACKING_RATE("tracking-rate") {
    @Override
    void add(PlayedNight night) {
      night.guided = false;
      double unguided = 2 * night.noise * night.noise + night.worm * night.worm / 2;
      double trailing = Math.sqrt(12 * FIX_FIRST_OF_SOUND * unguided) / 5;
      double rate = night.times() * Math.max(trailing, MOST_BY_AIR_ARCSEC_PER_MINUTE);
      night.rateError = (night.random.nextBoolean() ? 1 : -1) * rate;
    }
  },
  /** The turn of the field draws the corner out; the size is found by playing a small one. */
  FIELD_ROTATION("field-rotation") {
    @Override
    void add(PlayedNight night) {
      night.exposing(600);
      night.ditherMinutes = 22;
      night.declination = night.between(55, 70);
      double towards = night.between(-Math.PI, Math.PI);
      night.azimuth = 10 * Math.cos(towards) / Math.cos(Math.toRadians(47.2));
      night.altitude = 10 * Math.sin(towards);
      double turnDegrees =
          Exposures.of(night.night()).stream()
              .mapToDouble(e -> e.turns().get(e.turns().size() - 1) - e.turns().get(0))
              .map(Math::abs)
              .average()
              .orElseThrow();
      double trail = PlayedCamera.cornerArcsec() * Math.toRadians(turnDegrees);
      double times = PlayedCamera.trailArcsec(elongation(night)) / trail;
      night.azimuth *= times;
      night.altitude *= times;
    }
  },
  DIFFERENTIAL_FLEXURE("differential-flexure") {
    @Override
    void add(PlayedNight night) {
      PlayedCamera camera = night.exposing(300);
      double rate = PlayedCamera.trailArcsec(elongation(night)) * 3600 / camera.seconds;
      double towards = night.between(-Math.PI, Math.PI);
      camera.with("flexure_ra_arcsec_per_hour", rate * Math.sin(towards));
      camera.with("flexure_dec_arcsec_per_hour", rate * Math.cos(towards));
    }
  },
  /**
   * Low in the sky, with a guide star far enough away for the trail that is wanted; of some
   * directions to it the one that needs the least distance.
   */
  DIFFERENTIAL_REFRACTION("differential-refraction") {
    @Override
    void add(PlayedNight night) {
      night.declination = night.between(0, 8);
      night.hourAngle = night.between(-5.2, -4.8);
      night.minutes = 90;
      night.ditherMinutes = 22;
      night.more += "[air]\npressure_hpa = 1010\ntemperature_c = 10\n";
      PlayedCamera camera = night.exposing(600);
      double wanted = PlayedCamera.trailArcsec(elongation(night));
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < 5; i++) {
        double towards = night.between(-Math.PI, Math.PI);
        double arcmin = wanted / airArcsec(night, towards, camera.seconds);
        if (arcmin < least) {
          least = arcmin;
          camera.guideStarEastArcmin = arcmin * Math.sin(towards);
          camera.guideStarNorthArcmin = arcmin * Math.cos(towards);
        }
      }
    }
  },
  /** Colours spread by the tangent of the zenith distance. */
  ATMOSPHERIC_DISPERSION("atmospheric-dispersion") {
    @Override
    void add(PlayedNight night) {
      low(night);
      StarPlace middle =
          StarPlace.ofHours(night.hourAngle, night.declination).later(night.minutes * 30);
      double zenith = Math.toRadians(90 - new Site(47.2).altitudeDegrees(middle));
      double sigma = PlayedCamera.sigmaArcsec(elongation(night));
      night.exposing(300).with("dispersion_arcsec", sigma / Math.tan(zenith));
    }
  },
  /** Long at one angle, outwards, or towards one side. */
  OPTICS("optics") {
    @Override
    void add(PlayedNight night) {
      PlayedCamera camera = night.exposing(300);
      camera.with("elongation", elongation(night));
      camera.with("angle_deg", night.between(0, 180));
      camera.optics +=
          List.of("", "radial = true\n", "one_sided = true\n").get(night.random.nextInt(3));
    }
  },
  HEALTHY_WITH_EXPOSURES("") {
    @Override
    void add(PlayedNight night) {
      night.exposing(300);
    }
  };

  /** Share of a sound night's mean square that makes a cut of a quarter: 0.4375 of the whole. */
  private static final double FIX_FIRST_OF_SOUND = 0.4375 / (1 - 0.4375);

  /** What refraction makes of the rate, at most, down to 30 degrees of altitude. */
  private static final double MOST_BY_AIR_ARCSEC_PER_MINUTE = 1.1;

  private final String code;

  Fault(String code) {
    this.code = code;
  }

  /** Code of the finding that should lead; empty on a sound night. */
  String code() {
    return code;
  }

  abstract void add(PlayedNight night);

  /** As long as this are stars of a camera: two to six times as far from round as the limit. */
  private static double elongation(PlayedNight night) {
    return 1 + night.times() * (Equipment.Limits.USUAL_ELONGATION - 1);
  }

  private static String gusts(double arcsec) {
    return String.format(
        Locale.ROOT,
        "[gusts]\nper_hour = 30\namplitude_arcsec = %.2f\nduration_s = 9\nra_share = 0.6\n",
        arcsec);
  }

  /** Trail of an exposure in mid-night with the guide star one arcmin away [arcsec]. */
  private static double airArcsec(PlayedNight night, double towards, double seconds) {
    DifferentialRefraction oneArcmin =
        new DifferentialRefraction(
            new Site(47.2),
            new Refraction(1010, 10),
            StarPlace.ofHours(night.hourAngle, night.declination),
            -60 * Math.sin(towards),
            -60 * Math.cos(towards));
    double middle = night.minutes * 30;
    DifferentialRefraction.Offset trail =
        oneArcmin.shift(middle - seconds / 2, middle + seconds / 2).orElseThrow();
    return Math.hypot(trail.eastArcsec(), trail.northArcsec());
  }

  private static void low(PlayedNight night) {
    night.declination = night.between(-5, 10);
    night.hourAngle = night.between(-4.5, -3.5);
  }
}
