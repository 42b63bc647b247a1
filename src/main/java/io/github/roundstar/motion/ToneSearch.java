package io.github.roundstar.motion;

import io.github.roundstar.signal.FrequencyGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

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

  private final RunBackground[] latest;
  private final Gears gears;
  private final FrequencyGrid grid;
  private final double resolutionHertz;
  private final Map<Double, Double> falseAlarmByHertz = new TreeMap<>();
  private final List<Double> refused = new ArrayList<>();

  private List<Family> families = List.of();
  private List<RunBackground> backgrounds;
  private Optional<SharedFit> fit;
  private SummedSpectrum spectrum;

  private ToneSearch(List<RunBackground> backgrounds, Gears gears) {
    List<AxisRun> runs = backgrounds.stream().map(RunBackground::run).toList();
    this.latest = backgrounds.toArray(RunBackground[]::new);
    this.gears = gears;
    this.grid = SummedSpectrum.grid(runs);
    this.resolutionHertz =
        0.5 / runs.stream().mapToDouble(r -> r.motion().spanSeconds()).max().orElseThrow();
    this.backgrounds = backgrounds;
    this.fit = SharedFit.of(backgrounds, families);
    this.spectrum = SummedSpectrum.of(backgrounds, grid, lines());
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

  /**
   * The sinusoids that were found, in motion made out anew.
   *
   * @param backgrounds the runs, beside wander and noise that are known
   */
  static Optional<Found> again(Found found, List<RunBackground> backgrounds) {
    List<Double> lines = lines(found.fit().families());
    FrequencyGrid grid = SummedSpectrum.grid(backgrounds.stream().map(RunBackground::run).toList());
    return SharedFit.of(backgrounds, found.fit().families())
        .map(
            fit ->
                new Found(
                    fit, SummedSpectrum.of(backgrounds, grid, lines), found.falseAlarmByHertz()));
  }

  /** Searches; nothing when no run has enough frames that are not constant. */
  static Optional<Found> of(List<AxisRun> runs, Gears gears) {
    List<RunBackground> usable =
        runs.stream().flatMap(run -> RunBackground.of(run, List.of()).stream()).toList();
    if (usable.isEmpty()) {
      return Optional.empty();
    }
    ToneSearch search = new ToneSearch(usable, gears);
    for (int tone = 0; tone < MOST_TONES && search.addStrongest(); tone++) {
      // each turn adds a tone or refuses one
    }
    return search.fit.map(
        fit -> new Found(fit, search.spectrum, Map.copyOf(search.falseAlarmByHertz)));
  }

  private boolean addStrongest() {
    if (fit.isEmpty()) {
      return false;
    }
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
    List<Family> placed = gears.place(before, hertz, resolutionHertz);
    if (placed.equals(before)) {
      // The gear has a line there already and can have but one.
      refused.add(hertz);
      return true;
    }
    settle(placed);
    if (fit.isEmpty() || tooSlow() || vague()) {
      refused.add(hertz);
      settle(before);
    } else {
      falseAlarmByHertz.put(hertz, falseAlarm);
    }
    return true;
  }

  /** Fits the families' periods, then everything at the periods found. */
  private void settle(List<Family> wanted) {
    families = wanted;
    takeBackgrounds();
    if (!wanted.isEmpty() && !backgrounds.isEmpty()) {
      families = SharedFit.refined(backgrounds, wanted);
      takeBackgrounds();
    }
    if (backgrounds.isEmpty()) {
      fit = Optional.empty();
      return;
    }
    fit = SharedFit.of(backgrounds, families);
    spectrum = spectrum.after(backgrounds, lines());
  }

  /** Wander and noise beside the families, looked for near where they were last. */
  private void takeBackgrounds() {
    backgrounds = new ArrayList<>();
    for (int r = 0; r < latest.length; r++) {
      Optional<RunBackground> present = latest[r].with(families);
      if (present.isPresent()) {
        latest[r] = present.get();
        backgrounds.add(latest[r]);
      }
    }
  }

  /**
   * Whether a frequency is clear of what was found: nearer than two lines can be told apart, or
   * than a gear's period holds, it is the same line.
   */
  private boolean isNew(double hertz) {
    double apart = Math.max(2 * Skirts.NEAREST * resolutionHertz, Gears.TOLERANCE * hertz);
    return lines().stream().allMatch(line -> Math.abs(hertz - line) > apart);
  }

  /** Whether a line, once fitted, turned out to make too few turns to be told from wander. */
  private boolean tooSlow() {
    return families.stream()
        .anyMatch(f -> f.hertz(f.harmonics().get(0)) < (1 - Gears.TOLERANCE) * grid.startHz());
  }

  /** Whether a line, once fitted beside the others, may as well have no amplitude. */
  private boolean vague() {
    return ToneReading.amplitudes(fit.orElseThrow()).stream().anyMatch(a -> a.lo95() <= 0);
  }

  /** Frequencies of what was found, and of what was tried and refused. */
  private List<Double> lines() {
    return Stream.concat(lines(families).stream(), refused.stream()).toList();
  }

  private static List<Double> lines(List<Family> families) {
    return families.stream().flatMap(f -> f.harmonics().stream().map(f::hertz)).toList();
  }
}
