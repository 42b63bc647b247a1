package io.github.roundstar.compare;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Sentences;
import io.github.roundstar.results.ComparedFigure;
import io.github.roundstar.results.Method;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.PromiseKept;
import io.github.roundstar.results.Range;
import io.github.roundstar.results.Rung;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Whether the steps of a night were done on later ones, and whether they brought what they promised
 * ({@code results.Promise}).
 */
public final class PromiseJudge {
  /** Of what a fault was, less than this is nothing. */
  private static final double NOTHING = 0.05;

  /** Of what got worse meanwhile, so much is told. */
  private static final int MOST_WORSE = 2;

  /** Figures that tell a fault of the mount each. */
  private static final Set<String> MOUNT =
      MountFigures.all().stream()
          .map(Figure::key)
          .filter(key -> !SeasonTrends.REPEATED.contains(key))
          .collect(Collectors.toSet());

  /** How a promise is judged. */
  static final Method METHOD =
      new Method(
          "what steps promised",
          "The night that gave the steps was played again with all of them done. Its interval and"
              + " that of the later nights are widened by how far nights differ by themselves: 8 % of"
              + " the RMS in equal air, 10 exposures of 100 where half are round, and by chance among"
              + " few exposures. As promised: surely better than before, nearer to the promise than"
              + " to that, and not surely short of it. Less than promised: surely short of it, and surely"
              + " better than before.");

  private final NightResult earlier;
  private final List<NightResult> later;
  private final List<PromiseKept.Step> steps;
  private final PromisedFigure compared;
  private final List<PromiseKept.Figure> figures;

  private PromiseJudge(NightResult earlier, List<NightResult> later) {
    this.earlier = earlier;
    this.later = later;
    this.steps =
        earlier.promised().cures().stream().map(cure -> StepDone.of(cure, earlier, later)).toList();
    boolean averaged =
        steps.stream()
            .anyMatch(
                step ->
                    step.cure().equals("guide-exposure")
                        && !step.done().equals(PromiseKept.NOT_DONE));
    this.compared = new PromisedFigure(earlier, later, averaged);
    this.figures = compared.all();
  }

  /**
   * Judges a night's promise; nothing where it promised nothing.
   *
   * @param earlier the night that promised
   * @param later the nights that follow, in order of time
   */
  public static Optional<PromiseKept> of(NightResult earlier, List<NightResult> later) {
    if (earlier.promised() == null || earlier.promised().cures().isEmpty() || later.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        otherMount(earlier, later)
            ? ofAnotherMount(earlier, later)
            : new PromiseJudge(earlier, later).kept());
  }

  /** The last of some nights that promised anything, judged on the nights that follow. */
  public static Optional<PromiseKept> ofLast(List<NightResult> before, List<NightResult> after) {
    return before.stream()
        .filter(night -> night.promised() != null)
        .reduce((one, last) -> last)
        .flatMap(night -> of(night, after));
  }

  private static boolean otherMount(NightResult earlier, List<NightResult> later) {
    var one = new Setup(List.of(earlier)).mounts();
    var other = new Setup(later).mounts();
    return !one.isEmpty() && !other.isEmpty() && !one.equals(other);
  }

  private static PromiseKept ofAnotherMount(NightResult earlier, List<NightResult> later) {
    return new PromiseKept(
        earlier.night().date(),
        names(later),
        PromiseKept.CANNOT_TELL,
        "The steps of "
            + earlier.night().date()
            + " were for another mount, so they are not judged.",
        List.of(),
        List.of(),
        List.of(new NotComputed("all figures", "the nights are of different mounts")));
  }

  private static List<String> names(List<NightResult> nights) {
    return nights.stream().map(night -> night.night().date()).toList();
  }

  private PromiseKept kept() {
    String word = word();
    return new PromiseKept(
        earlier.night().date(),
        names(later),
        word,
        text(word),
        steps,
        figures,
        compared.notCompared());
  }

  // --- the word ---

  private boolean every(String done) {
    return steps.stream().allMatch(step -> step.done().equals(done));
  }

  private boolean any(String done) {
    return steps.stream().anyMatch(step -> step.done().equals(done));
  }

  /**
   * What is asked of the night decides, where it tells; else another figure, unless that says
   * something else than the first seems to.
   */
  private Optional<PromiseKept.Figure> leading() {
    return figures.stream()
        .filter(figure -> !figure.word().equals(PromiseKept.CANNOT_TELL))
        .findFirst()
        .filter(figure -> figure == figures.get(0) || !against(figures.get(0), figure.word()));
  }

  private static boolean against(PromiseKept.Figure asked, String word) {
    return word.equals(PromiseKept.KEPT) ? asked.won().value() <= 0 : asked.missing().value() <= 0;
  }

  private String word() {
    if (every(PromiseKept.NOT_DONE)) {
      return PromiseKept.NOT_DONE;
    }
    String came = leading().map(PromiseKept.Figure::word).orElse(PromiseKept.CANNOT_TELL);
    boolean lessThanPromised = came.equals(PromiseKept.PARTLY) || came.equals(PromiseKept.NOT_KEPT);
    if (lessThanPromised && compared.muchWorseAir().isPresent()) {
      return PromiseKept.CANNOT_TELL;
    }
    if (!came.equals(PromiseKept.NOT_KEPT) || every(PromiseKept.Step.DONE)) {
      return came;
    }
    return any(PromiseKept.CANNOT_TELL) && !any(PromiseKept.NOT_DONE)
        ? PromiseKept.CANNOT_TELL
        : PromiseKept.NOT_DONE;
  }

  // --- the sentence ---

  private String text(String word) {
    boolean one = steps.size() == 1;
    List<String> parts = new ArrayList<>();
    parts.add(
        (one ? "The step of " : "The steps of ")
            + earlier.night().date()
            + ": "
            + outcome(word)
            + ".");
    stillThere().ifPresent(parts::add);
    numbers().ifPresent(parts::add);
    if (leading().filter(figure -> !figure.word().equals(PromiseKept.KEPT)).isPresent()) {
      meanwhile().ifPresent(parts::add);
    }
    return String.join(" ", parts);
  }

  private String outcome(String word) {
    long done = steps.stream().filter(s -> s.done().equals(PromiseKept.Step.DONE)).count();
    return switch (word) {
      case PromiseKept.KEPT -> "as promised" + byTheLog();
      case PromiseKept.PARTLY -> "better, but less than promised" + byTheLog();
      case PromiseKept.NOT_KEPT ->
          worse()
              ? "done, but the night was worse than before"
              : "done, but nothing won that shows";
      case PromiseKept.NOT_DONE ->
          every(PromiseKept.NOT_DONE)
              ? asGoodAnyway() ? "not done, and as good as promised all the same" : "not done"
              : done == 0
                  ? any(PromiseKept.PARTLY)
                      ? "done in part only, and nothing won that shows"
                      : "not done, as far as the log tells"
                  : done + " of " + steps.size() + " done, and nothing won yet that shows";
      default ->
          "whether " + (steps.size() == 1 ? "it" : "they") + " helped cannot be told" + why();
    };
  }

  /** Where stars are asked for, and the log's RMS has to stand for them. */
  private String byTheLog() {
    boolean stars = earlier.need() == null || earlier.need().ofStars();
    boolean rms = leading().filter(f -> f.key().equals(PromisedFigure.RMS)).isPresent();
    return stars && rms ? ", by the RMS alone" : "";
  }

  private boolean asGoodAnyway() {
    return leading().filter(figure -> figure.word().equals(PromiseKept.KEPT)).isPresent();
  }

  private boolean worse() {
    return leading().filter(figure -> figure.won().hi95() < 0).isPresent();
  }

  private String why() {
    if (leading().isPresent()) {
      return ": "
          + compared
              .muchWorseAir()
              .orElse("nothing won shows, and the log does not tell whether all was done");
    }
    if (figures.isEmpty()) {
      return compared.notCompared().stream()
          .map(gap -> ": " + gap.because())
          .findFirst()
          .orElse("");
    }
    if (figures.stream().anyMatch(figure -> !figure.word().equals(PromiseKept.CANNOT_TELL))) {
      return ": round exposures and RMS tell different things";
    }
    boolean better = figures.stream().anyMatch(figure -> figure.won().lo95() > 0);
    return better
        ? ": better than before, but the intervals hold more than one answer"
        : ": nights differ by more than was promised";
  }

  /** What was not done, with where it stands. */
  private Optional<String> stillThere() {
    List<String> open =
        steps.stream()
            .filter(step -> step.now() != null)
            .filter(
                step ->
                    step.done().equals(PromiseKept.NOT_DONE)
                        || step.done().equals(PromiseKept.PARTLY))
            .map(PromiseJudge::stands)
            .toList();
    return open.isEmpty()
        ? Optional.empty()
        : Optional.of(Sentences.capital(Sentences.list(open)) + ".");
  }

  /**
   * {@code RA gain 0.40, not 0.79}; {@code RA gain 0.60, on the way to 0.79}; of what was to go
   * altogether, {@code play in Dec still 4.0 arcsec}.
   */
  private static String stands(PromiseKept.Step step) {
    double now = step.now().value();
    boolean beyond = (now - step.to()) * (step.to() - step.from()) > 0;
    boolean toNothing = Math.abs(step.to()) < NOTHING * Math.abs(step.from());
    String where =
        toNothing
            ? " still " + number(now)
            : step.done().equals(PromiseKept.NOT_DONE)
                ? " " + number(now) + ", not " + number(step.to())
                : " "
                    + number(now)
                    + (beyond ? ", beyond " : ", on the way to ")
                    + number(step.to());
    return (step.name() + where + " " + step.unit()).strip();
  }

  private static String number(double value) {
    return Decimals.text(value);
  }

  private Optional<String> numbers() {
    List<String> parts = new ArrayList<>();
    for (PromiseKept.Figure figure : figures) {
      parts.add(figure.key().equals(PromisedFigure.ROUND_SHARE) ? counts() : rms(figure));
    }
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(Sentences.capital(String.join("; ", parts)) + ".");
  }

  /** {@code 23 of 24 exposures round, 24 of 24 promised, 14 of 24 before}. */
  private String counts() {
    Rung was = earlier.rung(Rung.AS_IT_WAS).orElseThrow();
    List<Rung> came = later.stream().flatMap(night -> night.rung(Rung.AS_IT_WAS).stream()).toList();
    double round = came.stream().map(Rung::round).mapToDouble(Range::value).sum();
    return String.format(
        Locale.ROOT,
        "%.0f of %d exposures round, %.0f of %d promised, %.0f of %d before",
        round,
        came.stream().mapToInt(Rung::units).sum(),
        earlier.promised().round().value(),
        earlier.promised().units(),
        was.round().value(),
        was.units());
  }

  private static String rms(PromiseKept.Figure figure) {
    return String.format(
        Locale.ROOT,
        "in equal air a radial RMS of %.2f arcsec, %.2f promised, %.2f before",
        figure.came().value(),
        figure.promised().value(),
        figure.before().value());
  }

  /** What of the mount got worse beside the steps. */
  private Optional<String> meanwhile() {
    List<String> worse =
        Stream.of(new PairTests(List.of(earlier), later))
            .flatMap(tests -> tests.compared().stream())
            .filter(figure -> MOUNT.contains(figure.key()))
            .filter(figure -> figure.verdict().equals(ComparedFigure.WORSE))
            .map(figure -> figure.name() + " went from " + figure.fromTo())
            .limit(MOST_WORSE)
            .toList();
    return worse.isEmpty()
        ? Optional.empty()
        : Optional.of("Meanwhile " + Sentences.list(worse) + ".");
  }
}
