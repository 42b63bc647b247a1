package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Seeing;
import io.github.roundstar.results.SeeingRun;
import io.github.roundstar.sky.ImageScale;
import io.github.roundstar.sky.SeeingMotion;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** From the noise of the guide star to a range of widths of star images. */
final class SeeingFigures {
  /** Wind that carries the turbulence, at the height that matters; common practice, no source. */
  private static final double WIND_METRES_PER_SECOND = 10;

  /** Averaging of endless eddies, and of eddies that all cross within the exposure. */
  private static final double LEAST_AVERAGING = 1.0 / 6;

  private static final double MOST_AVERAGING = 1.0 / 2;

  /** Image of a guide star where the user gave no usual seeing [arcsec]. */
  private static final double USUAL_FWHM = 2.5;

  private SeeingFigures() {}

  /** The night's range; null, with the reason, when no run tells anything. */
  static Seeing of(
      List<RunStudy> studies, Equipment equipment, boolean siteShown, Reasons.Scope scope) {
    OptionalDouble aperture = equipment.guide().apertureMillimetres();
    if (aperture.isEmpty()) {
      return scope.orNull(
          "",
          Answer.none(
              "the guide scope's aperture is not known: add aperture_mm under [guide] in the"
                  + " equipment file"));
    }
    List<SeeingRun> runs = new ArrayList<>();
    String because = "there is no run";
    for (RunStudy study : studies) {
      Answer<SeeingRun> run = run(study, equipment, aperture.getAsDouble() * 1e-3, siteShown);
      run.value().ifPresent(runs::add);
      because = run.because();
    }
    if (runs.isEmpty()) {
      return scope.orNull("", Answer.none(because));
    }
    if (runs.stream().anyMatch(run -> run.airmass() == null)) {
      scope.note(
          "/runs/*/airmass",
          siteShown
              ? "latitude, declination or hour angle is not surely known, or the star stands too low"
              : "left out on request, since it tells the site");
    }
    return new Seeing(
        runs.stream().mapToDouble(SeeingRun::leastFwhmArcsec).average().orElseThrow(),
        runs.stream().mapToDouble(SeeingRun::mostFwhmArcsec).average().orElseThrow(),
        scope.orNull(
            "/usualFwhmArcsec",
            equipment.seeingFwhmArcsec(),
            "not given: add seeing_fwhm_arcsec under [sky] in the equipment file"),
        runs);
  }

  private static Answer<SeeingRun> run(
      RunStudy study, Equipment equipment, double apertureMetres, boolean siteShown) {
    OptionalDouble exposure = study.run().camera().exposureSeconds();
    if (exposure.isEmpty()) {
      return Answer.none("the guide exposure is not known: add guide_exposure to the log's header");
    }
    Optional<Double> noise = noise(study);
    if (noise.isEmpty()) {
      return Answer.none("the noise of a frame is not known");
    }
    double photons =
        snr(study.run().frames())
            .map(snr -> SeeingMotion.centroidArcsec(image(equipment), snr))
            .orElse(0.0);
    double square = noise.get() * noise.get() - photons * photons;
    if (square <= 0) {
      return Answer.none("the guide star's own photons make all of the noise: the air was calmer");
    }
    double air = Math.sqrt(square);
    double crossing = apertureMetres / WIND_METRES_PER_SECOND;
    double seconds = exposure.getAsDouble();
    return Answer.of(
        new SeeingRun(
            study.run().id(),
            siteShown ? airmass(study, equipment) : null,
            SeeingMotion.fwhmArcsec(
                air / SeeingMotion.averaged(seconds, crossing, LEAST_AVERAGING), apertureMetres),
            SeeingMotion.fwhmArcsec(
                air / SeeingMotion.averaged(seconds, crossing, MOST_AVERAGING), apertureMetres)));
  }

  /** Of both axes, where they are known [arcsec]. */
  private static Optional<Double> noise(RunStudy study) {
    double[] squares =
        Stream.concat(study.ra().value().stream(), study.dec().value().stream())
            .mapToDouble(motion -> Math.pow(motion.noiseArcsec().value(), 2))
            .toArray();
    OptionalDouble mean = Arrays.stream(squares).average();
    return mean.isEmpty() ? Optional.empty() : Optional.of(Math.sqrt(mean.getAsDouble()));
  }

  private static Optional<Double> snr(Frames frames) {
    double[] known =
        IntStream.range(0, frames.size())
            .filter(frames::measured)
            .mapToDouble(frames::snr)
            .filter(snr -> snr > 0)
            .sorted()
            .toArray();
    return known.length == 0 ? Optional.empty() : Optional.of(known[known.length / 2]);
  }

  /** Width of the guide star's image: air, and the guide scope's diffraction [arcsec]. */
  private static double image(Equipment equipment) {
    return Math.hypot(
        equipment.seeingFwhmArcsec().orElse(USUAL_FWHM),
        ImageScale.diffractionFwhmArcsec(equipment.guide().apertureMillimetres().orElseThrow()));
  }

  private static Double airmass(RunStudy study, Equipment equipment) {
    return StarHeight.of(study.run(), equipment)
        .map(height -> height.airmass(study.durationSeconds() / 2))
        .filter(OptionalDouble::isPresent)
        .map(airmass -> Math.rint(10 * airmass.getAsDouble()) / 10)
        .orElse(null);
  }
}
