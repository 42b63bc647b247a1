package io.github.roundstar.compare;

import io.github.roundstar.results.NightResult;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Brings the scatter of all nights to the same air, declination and cadence: the noise floor's part
 * is taken out, what the mount leaves is scaled in right ascension by the cosine of the declination
 * and in both axes by the cadence, and the mean noise of all nights is put back.
 *
 * <p>What altitude does to the star it does through the air, so the noise floor of the same frames
 * has it already.
 */
final class EqualAir {
  /** Cadences that differ by less are one [share]. */
  private static final double SAME_CADENCE = 0.1;

  /**
   * What a guide loop leaves grows with the cadence: a steady push in proportion, wander with its
   * root; mean squares with the power 2 or 1.
   */
  private static final double CADENCE_POWER = 1.5;

  private static final double CADENCE_POWER_ERROR = 0.25;

  private final List<AirOfNight> before;
  private final List<AirOfNight> after;
  private final double raNoise;
  private final double decNoise;
  private final double cosineSquared;
  private final double cadenceSeconds;

  EqualAir(List<NightResult> before, List<NightResult> after) {
    this(
        airs(before),
        airs(after),
        Stream.concat(airs(before).stream(), airs(after).stream()).toList());
  }

  /** The air, declination and cadence of some nights, for the others. */
  static EqualAir asOn(List<NightResult> nights, List<NightResult> others) {
    return new EqualAir(airs(nights), airs(others), airs(nights));
  }

  private static List<AirOfNight> airs(List<NightResult> nights) {
    return nights.stream().flatMap(night -> AirOfNight.of(night).stream()).toList();
  }

  private EqualAir(List<AirOfNight> before, List<AirOfNight> after, List<AirOfNight> all) {
    this.before = before;
    this.after = after;
    this.raNoise = mean(all, night -> night.ra().noise());
    this.decNoise = mean(all, night -> night.dec().noise());
    this.cosineSquared = mean(all, AirOfNight::cosineSquared);
    this.cadenceSeconds = mean(all, AirOfNight::cadenceSeconds);
  }

  /** Whether both sides have a night whose noise floor is known. */
  boolean known() {
    return !before.isEmpty() && !after.isEmpty();
  }

  /** Mean square in right ascension [arcsec^2] with its error within the night. */
  Optional<Reading> ra(NightResult night) {
    return AirOfNight.of(night)
        .map(air -> adjusted(air.ra(), raNoise, cosineSquared / air.cosineSquared(), air));
  }

  /** Mean square in declination [arcsec^2]. */
  Optional<Reading> dec(NightResult night) {
    return AirOfNight.of(night).map(air -> adjusted(air.dec(), decNoise, 1, air));
  }

  private Reading adjusted(AirOfNight.Axis axis, double noise, double sky, AirOfNight air) {
    double factor = axis.share().factor();
    double left = axis.meanSquare() - factor * axis.noise();
    double ratio = cadenceRatio(air);
    double scale = sky * Math.pow(ratio, CADENCE_POWER);
    double own = Math.hypot(axis.meanSquareError(), factor * axis.noiseError()) * scale;
    double cadence = Math.abs(left) * scale * Math.abs(Math.log(ratio)) * CADENCE_POWER_ERROR;
    double value = factor * noise + left * scale;
    return Reading.of(Math.max(value, 0.1 * noise), Math.hypot(own, cadence));
  }

  private double cadenceRatio(AirOfNight air) {
    double ratio = air.cadenceSeconds() > 0 ? cadenceSeconds / air.cadenceSeconds() : 1;
    return Math.abs(ratio - 1) < SAME_CADENCE ? 1 : ratio;
  }

  /** Radial RMS of a night [arcsec] with its error within the night. */
  Optional<Reading> radial(NightResult night) {
    return ra(night)
        .flatMap(
            ra ->
                dec(night)
                    .map(
                        dec ->
                            Reading.of(
                                    ra.value() + dec.value(),
                                    Math.hypot(ra.withinError(), dec.withinError()))
                                .root()));
  }

  /** What is not known of the loop, times the difference in noise: an error common to a side. */
  double raCommonError() {
    return common(AirOfNight::ra);
  }

  /** The same in declination. */
  double decCommonError() {
    return common(AirOfNight::dec);
  }

  private double common(Function<AirOfNight, AirOfNight.Axis> axis) {
    double difference = noise(after, axis) - noise(before, axis);
    double error =
        Math.max(
            mean(before, night -> axis.apply(night).share().error()),
            mean(after, night -> axis.apply(night).share().error()));
    return Math.abs(difference) * error;
  }

  /** Change in the radial mean square that the noise floor alone makes [arcsec^2]. */
  double changeByAir() {
    return mean(after, EqualAir::noisePart) - mean(before, EqualAir::noisePart);
  }

  private static double noisePart(AirOfNight night) {
    return night.ra().share().factor() * night.ra().noise()
        + night.dec().share().factor() * night.dec().noise();
  }

  /** Noise floor of a side, both axes together [arcsec]. */
  double floorArcsec(boolean afterwards) {
    List<AirOfNight> side = afterwards ? after : before;
    return Math.sqrt(noise(side, AirOfNight::ra) + noise(side, AirOfNight::dec));
  }

  /** What was done, for the reader. */
  String words() {
    StringBuilder text = new StringBuilder();
    text.append(
        format(
            "noise floor %.2f before and %.2f arcsec after, brought to %.2f",
            floorArcsec(false), floorArcsec(true), Math.sqrt(raNoise + decNoise)));
    boolean gain = before.stream().allMatch(night -> night.ra().share().known());
    text.append(
        gain
            ? " with the loop's gain"
            : ", the loop's gain taken as 0.4 (its square counts 1.25, give or take 0.15)");
    double cosineBefore = Math.sqrt(mean(before, AirOfNight::cosineSquared));
    double cosineAfter = Math.sqrt(mean(after, AirOfNight::cosineSquared));
    if (Math.abs(cosineBefore - cosineAfter) > 0.005) {
      text.append(
          format(
              "; RA for the cosine of the declination, %.2f and %.2f", cosineBefore, cosineAfter));
    }
    double cadenceBefore = mean(before, AirOfNight::cadenceSeconds);
    double cadenceAfter = mean(after, AirOfNight::cadenceSeconds);
    if (Math.abs(cadenceBefore / Math.max(cadenceAfter, 1e-9) - 1) > SAME_CADENCE) {
      text.append(format("; for the cadence, %.1f and %.1f s", cadenceBefore, cadenceAfter));
    }
    return text.append("; altitude acts through the noise floor").toString();
  }

  private static double noise(List<AirOfNight> nights, Function<AirOfNight, AirOfNight.Axis> axis) {
    return mean(nights, night -> axis.apply(night).noise());
  }

  private static double mean(List<AirOfNight> nights, ToDoubleFunction<AirOfNight> of) {
    return nights.stream().mapToDouble(of).average().orElse(0);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
