package io.github.roundstar.compare;

import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.signal.Holm;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Every figure of a pair of sides, tested together. */
final class PairTests {
  private record Pair(Figure figure, NightSample before, NightSample after) {}

  private final List<NightResult> before;
  private final List<NightResult> after;
  private final EqualAir air;
  private final List<ChangeTest> tests;
  private final double[] adjusted;
  private final double[] levels;
  private final List<NotComputed> notCompared = new ArrayList<>();

  PairTests(List<NightResult> before, List<NightResult> after) {
    this.before = before;
    this.after = after;
    this.air = new EqualAir(before, after);
    List<Pair> pairs = pairs();
    Map<String, Double> raises = raises(pairs);
    this.tests =
        pairs.stream()
            .map(
                pair ->
                    new ChangeTest(
                        pair.figure(),
                        pair.before(),
                        pair.after(),
                        raises.get(pair.figure().kind().group()),
                        commonError(pair)))
            .toList();
    double[] probabilities = tests.stream().mapToDouble(ChangeTest::probability).toArray();
    this.adjusted = Holm.adjusted(probabilities);
    this.levels = Judge.levels(probabilities);
  }

  /** Every figure with its verdict. */
  List<ComparedFigure> compared() {
    List<ComparedFigure> compared = new ArrayList<>();
    for (int i = 0; i < adjusted.length; i++) {
      boolean equalAir = tests.get(i).figure().key().endsWith(GuidingFigures.EQUAL_AIR);
      compared.add(
          Judge.of(
              tests.get(i), levels[i], adjusted[i], levels.length, equalAir ? air.words() : null));
    }
    return compared;
  }

  /** The verdicts alone, by the figures' keys. */
  Map<String, String> verdicts() {
    Map<String, String> verdicts = new LinkedHashMap<>();
    for (int i = 0; i < adjusted.length; i++) {
      verdicts.put(tests.get(i).figure().key(), Judge.verdict(tests.get(i), levels[i]));
    }
    return verdicts;
  }

  List<NotComputed> notCompared() {
    return List.copyOf(notCompared);
  }

  EqualAir air() {
    return air;
  }

  /** All figures that these nights may have. */
  static List<Figure> figures(List<NightResult> before, List<NightResult> after, EqualAir air) {
    List<Figure> figures = new ArrayList<>(MountFigures.all());
    figures.addAll(2, ComponentFigures.of(before, after));
    figures.addAll(DriftFigures.all());
    figures.addAll(GuidingFigures.inEqualAir(air));
    figures.addAll(GuidingFigures.logged());
    figures.addAll(GuidingFigures.air());
    return figures;
  }

  private List<Pair> pairs() {
    Comparability comparability = new Comparability(before, after);
    List<Pair> pairs = new ArrayList<>();
    for (Figure figure : figures(before, after, air)) {
      NightSample one = sample(figure, before);
      NightSample other = sample(figure, after);
      Optional<String> because =
          comparability.because(figure).or(() -> missing(figure, one, other));
      if (because.isPresent()) {
        notCompared.add(new NotComputed(figure.name(), because.get()));
      } else {
        pairs.add(new Pair(figure, one, other));
      }
    }
    return pairs;
  }

  static NightSample sample(Figure figure, List<NightResult> nights) {
    return NightSample.of(figure, nights.stream().map(figure.reading()).toList());
  }

  private Optional<String> missing(Figure figure, NightSample one, NightSample other) {
    if (one.nights() > 0 && other.nights() > 0) {
      return Optional.empty();
    }
    boolean neither = one.nights() == 0 && other.nights() == 0;
    List<NightResult> lacking = one.nights() == 0 ? before : after;
    String which =
        neither
            ? "no night has it: "
            : one.nights() == 0 ? "no night before has it: " : "no night after has it: ";
    return Optional.of(which + figure.reading().apply(lacking.get(0)).because());
  }

  /**
   * By which factor nights scatter more than stated, from all figures of a group; at least 1. One
   * figure of few nights would not tell.
   */
  private static Map<String, Double> raises(List<Pair> pairs) {
    Map<String, Double> freedom = new HashMap<>();
    Map<String, Double> excess = new HashMap<>();
    for (Pair pair : pairs) {
      String group = pair.figure().kind().group();
      for (NightSample sample : List.of(pair.before(), pair.after())) {
        freedom.merge(group, (double) sample.ownFreedom(), Double::sum);
        excess.merge(group, sample.ownFreedom() * sample.excess(), Double::sum);
      }
    }
    Map<String, Double> raises = new HashMap<>();
    freedom.forEach(
        (group, n) -> raises.put(group, n == 0 ? 1 : Math.max(1, excess.get(group) / n)));
    return raises;
  }

  /** What the unknown gain of the loop does to scatter in equal air. */
  private double commonError(Pair pair) {
    double rms = Math.max((pair.before().mean() + pair.after().mean()) / 2, 1e-6);
    return switch (pair.figure().key()) {
      case "rms-ra" + GuidingFigures.EQUAL_AIR -> air.raCommonError() / (2 * rms);
      case "rms-dec" + GuidingFigures.EQUAL_AIR -> air.decCommonError() / (2 * rms);
      case "rms-radial" + GuidingFigures.EQUAL_AIR ->
          (air.raCommonError() + air.decCommonError()) / (2 * rms);
      default -> 0;
    };
  }
}
