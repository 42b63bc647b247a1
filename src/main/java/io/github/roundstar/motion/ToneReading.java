package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Covariance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Reads the sinusoids out of a shared fit, their intervals first order in the parameters'
 * covariance; of what the posterior knows, amplitudes and periods with their intervals are its.
 */
final class ToneReading {

  private ToneReading() {}

  /** All sinusoids, largest first. */
  static List<Tone> tones(
      ToneSearch.Found found, double cadenceSeconds, Optional<AxisKnowledge> known) {
    SharedFit fit = found.fit();
    List<Tone> tones = new ArrayList<>();
    List<Family> families = fit.families();
    for (int f = 0; f < families.size(); f++) {
      Family family = families.get(f);
      for (int h = 0; h < family.harmonics().size(); h++) {
        int order = family.harmonics().get(h);
        Optional<Integer> at = known.flatMap(k -> k.family(family));
        Estimate period =
            at.map(i -> known.get().periodSeconds(i).estimate().times(1.0 / order))
                .orElse(period(fit, f, order));
        tones.add(
            new Tone(
                period,
                at.map(i -> known.get().amplitudeArcsecAxis(i, order).estimate())
                    .orElse(amplitude(fit, f, h)),
                phase(fit, f, h),
                found.falseAlarm(family.hertz(order)),
                family.label(order),
                period.value() < Tone.ALIAS_CADENCES * cadenceSeconds));
      }
    }
    tones.sort(Comparator.comparingDouble(t -> -t.amplitudeArcsecAxis().value()));
    return tones;
  }

  /** Amplitudes of all sinusoids, family by family [arcsec at the axis]. */
  static List<Estimate> amplitudes(SharedFit fit) {
    List<Estimate> amplitudes = new ArrayList<>();
    List<Family> families = fit.families();
    for (int f = 0; f < families.size(); f++) {
      for (int h = 0; h < families.get(f).harmonics().size(); h++) {
        amplitudes.add(amplitude(fit, f, h));
      }
    }
    return amplitudes;
  }

  /** Peak to peak of a family's summed curve [arcsec at the axis]. */
  static Estimate peakToPeak(SharedFit fit, int family) {
    TurnCurve curve = TurnCurve.of(fit, family);
    double highest = curve.extremePhase(1);
    double lowest = curve.extremePhase(-1);
    List<Integer> harmonics = fit.layout().families().get(family).harmonics();
    int first = fit.layout().amplitude(family, 0);
    double[] gradient = new double[2 * harmonics.size()];
    for (int h = 0; h < harmonics.size(); h++) {
      int order = harmonics.get(h);
      gradient[2 * h] = Math.cos(order * highest) - Math.cos(order * lowest);
      gradient[2 * h + 1] = Math.sin(order * highest) - Math.sin(order * lowest);
    }
    double value = curve.at(highest) - curve.at(lowest);
    double half = Estimate.SIGMAS_95 * Math.sqrt(variance(fit.covariance(), first, gradient));
    return new Estimate(value, Math.max(0, value - half), value + half);
  }

  private static Estimate period(SharedFit fit, int family, int order) {
    int at = fit.layout().rate(family);
    double rate = fit.parameter(at);
    double half = Estimate.SIGMAS_95 * fit.covariance().standardError(at);
    double turn = 2 * Math.PI / order;
    // A rate whose interval reaches zero has no longest period; the interval then ends at ten times
    // the period.
    double slowest = Math.max(rate - half, rate / 10);
    return new Estimate(turn / rate, turn / (rate + half), turn / slowest);
  }

  private static Estimate amplitude(SharedFit fit, int family, int h) {
    int at = fit.layout().amplitude(family, h);
    double a = fit.parameter(at);
    double b = fit.parameter(at + 1);
    double amplitude = Math.hypot(a, b);
    double variance = variance(fit.covariance(), at, new double[] {a / amplitude, b / amplitude});
    double half = Estimate.SIGMAS_95 * Math.sqrt(variance);
    return new Estimate(amplitude, Math.max(0, amplitude - half), amplitude + half);
  }

  /** a cos x + b sin x = A sin(x + phase). */
  private static double phase(SharedFit fit, int family, int h) {
    int at = fit.layout().amplitude(family, h);
    return Math.atan2(fit.parameter(at), fit.parameter(at + 1));
  }

  private static double variance(Covariance covariance, int first, double[] gradient) {
    double sum = 0;
    for (int i = 0; i < gradient.length; i++) {
      for (int j = 0; j < gradient.length; j++) {
        sum += gradient[i] * gradient[j] * covariance.at(first + i, first + j);
      }
    }
    return sum;
  }
}
