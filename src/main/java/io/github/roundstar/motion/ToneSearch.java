package io.github.roundstar.motion;

import io.github.roundstar.signal.FrequencyGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Finds the sinusoids of a night one by one, strongest first: each is judged against wander and
 * noise with all stronger ones taken out and itself left in, which can only make its claim weaker;
 * then it joins the shared fit.
 */
final class ToneSearch {
  /**
   * A line is taken as real when wander and noise alone show one as strong in fewer nights than
   * this.
   */
  static final double FALSE_ALARM_LIMIT = 0.01;

  private static final int MOST_TONES = 12;

  private final List<AxisRun> runs;
  private final Gears gears;
  private final FrequencyGrid grid;
  private final double resolutionHertz;
  private final Map<Double, Double> falseAlarmByHertz = new TreeMap<>();

  private List<Family> families = List.of();
  private List<RunBackground> backgrounds;
  private Optional<SharedFit> fit;
  private SummedSpectrum spectrum;

  private ToneSearch(List<AxisRun> runs, Gears gears) {
    this.runs = runs;
    this.gears = gears;
    this.grid = SummedSpectrum.grid(runs);
    this.resolutionHertz =
        0.5 / runs.stream().mapToDouble(r -> r.motion().spanSeconds()).max().orElse(1);
  }

  /**
   * What was found.
   *
   * @param fit drift of every run and all sinusoids
   * @param spectrum what stands out when they are taken out
   * @param falseAlarmByHertz false-alarm probability by frequency at which a line was found
   */
  record Found(SharedFit fit, SummedSpectrum spectrum, Map<Double, Double> falseAlarmByHertz) {
    /** False-alarm probability of the line nearest to a frequency. */
    double falseAlarm(double hertz) {
      return falseAlarmByHertz.entrySet().stream()
          .min((a, b) -> Double.compare(Math.abs(a.getKey() - hertz), Math.abs(b.getKey() - hertz)))
          .map(Map.Entry::getValue)
          .orElse(1.0);
    }
  }

  /** Searches; nothing when no run has enough frames that are not constant. */
  static Optional<Found> of(List<AxisRun> runs, Gears gears) {
    if (runs.stream().allMatch(run -> run.motion().size() < RunBackground.FEWEST_STEPS)) {
      return Optional.empty();
    }
    ToneSearch search = new ToneSearch(runs, gears);
    search.settle(List.of());
    if (search.fit.isEmpty()) {
      return Optional.empty();
    }
    for (int tone = 0; tone < MOST_TONES && search.addStrongest(); tone++) {
      // each turn adds a tone
    }
    return search.fit.map(
        fit -> new Found(fit, search.spectrum, Map.copyOf(search.falseAlarmByHertz)));
  }

  private boolean addStrongest() {
    int peak = spectrum.strongest(this::isNew);
    if (peak < 0) {
      return false;
    }
    double falseAlarm = spectrum.falseAlarm(peak);
    if (falseAlarm >= FALSE_ALARM_LIMIT) {
      return false;
    }
    double hertz = spectrum.refined(peak);
    List<Family> before = families;
    settle(gears.place(families, hertz, resolutionHertz));
    if (fit.isEmpty()) {
      settle(before);
      return false;
    }
    falseAlarmByHertz.put(hertz, falseAlarm);
    return true;
  }

  /** Fits the families, and again at the periods that the first fit found. */
  private void settle(List<Family> wanted) {
    fit(wanted);
    if (fit.isPresent()) {
      families = fit.get().families();
      if (!families.isEmpty()) {
        fit(families);
      }
    }
    if (fit.isPresent()) {
      spectrum = SummedSpectrum.of(backgrounds, grid);
    }
  }

  private void fit(List<Family> wanted) {
    backgrounds = backgrounds(wanted);
    fit = backgrounds.isEmpty() ? Optional.empty() : SharedFit.of(backgrounds, wanted);
  }

  private List<RunBackground> backgrounds(List<Family> wanted) {
    List<RunBackground> present = new ArrayList<>();
    for (AxisRun run : runs) {
      RunBackground.of(run, wanted).ifPresent(present::add);
    }
    return present;
  }

  /** Whether a frequency is clear of what was found: the skirts of a line are not lines. */
  private boolean isNew(double hertz) {
    return families.stream()
        .allMatch(
            family ->
                family.harmonics().stream()
                    .allMatch(h -> Math.abs(hertz - family.hertz(h)) > 2 * resolutionHertz));
  }
}
