package io.github.roundstar.decisions;

import static io.github.roundstar.decisions.NightTexts.lower;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.roundstar.decisions.ToldLadder.Change;
import io.github.roundstar.decisions.ToldLadder.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a user would call a contradiction, each a check of its own: the sentences of page, terminal
 * and index against the ladder, and the ladder against itself. The checks know words of the trade,
 * not how the sentences are made; a check that finds nothing may have met a wording that it does
 * not know, so that finding none is no proof.
 */
enum Contradictions {
  /** There must be something to hold sentences against. */
  NO_LADDER(t -> t.told().present() ? List.of() : List.of("the JSON has no ladder")),

  LADDER_OUT_OF_ORDER_OR_INCOMPLETE(
      t -> {
        List<String> rungs = new ArrayList<>();
        t.json().path("ladder").forEach(rung -> rungs.add(rung.path("rung").asText()));
        List<String> all = List.of(Rung.values()).stream().map(Rung::key).toList();
        return rungs.isEmpty() || rungs.equals(all) ? List.of() : List.of(rungs.toString());
      }),

  RUNG_NOT_OFFERED_WITHOUT_A_REASON(
      t ->
          t.told().steps().stream()
              .filter(step -> !step.offered() && step.reason().isBlank())
              .map(step -> step.rung().key())
              .toList()),

  COUNT_OUTSIDE_ITS_INTERVAL_OR_ITS_UNITS(
      t ->
          t.told().steps().stream()
              .filter(step -> step.offered() && step.units() > 0)
              .filter(
                  step ->
                      !(step.round().low() <= step.round().value() + 1e-6
                          && step.round().value() <= step.round().high() + 1e-6
                          && step.round().low() >= 0
                          && step.round().high() <= step.units() + 1e-6))
              .map(step -> step.rung().key() + " " + step.round() + " of " + step.units())
              .toList()),

  CHANCE_OUTSIDE_NOUGHT_AND_ONE(
      t ->
          t.told().steps().stream()
              .filter(step -> step.offered() && !(step.meetsNeed() >= 0 && step.meetsNeed() <= 1))
              .map(step -> step.rung().key() + " " + step.meetsNeed())
              .toList()),

  /** The decision is the lowest rung that meets the need with a chance of 0.9. */
  DECIDED_RUNG_IS_NOT_THE_LOWEST_THAT_MEETS_THE_NEED(
      t -> {
        Optional<Rung> decided = t.told().decided();
        if (decided.isEmpty() || !t.told().present()) {
          return List.of();
        }
        List<String> wrong = new ArrayList<>();
        for (Step step : t.told().steps()) {
          boolean meets =
              (step.offered() || step.rung() == Rung.AS_IT_WAS) && step.meetsNeed() >= 0.9;
          boolean below = step.rung().compareTo(decided.get()) < 0;
          if (below && meets && step.rung() != Rung.LOOP_LIMIT) {
            wrong.add(step.rung().key() + " meets it already, decided " + decided.get().key());
          }
          if (step.rung() == decided.get()
              && !meets
              && decided.get().compareTo(Rung.LOOP_LIMIT) < 0) {
            wrong.add(decided.get().key() + " decided at a chance of " + step.meetsNeed());
          }
        }
        return wrong;
      }),

  DECISION_IN_A_WORD_IS_NOT_THE_RUNG(
      t -> {
        String word = t.json().path("verdict").path("decision").asText();
        String rung = t.told().decided().map(Rung::key).orElse("nothing");
        Set<String> fitting =
            switch (rung) {
              case "as-it-was" -> Set.of("leave-alone");
              // Where nothing meets the need, what helps most may still be told.
              case "air-limit", "loop-limit" ->
                  Set.of(
                      "leave-alone",
                      "change-settings",
                      "adjust-polar-axis",
                      "rebalance",
                      "expose-shorter");
              case "settings" -> Set.of("change-settings");
              case "alignment-balance" ->
                  Set.of("adjust-polar-axis", "rebalance", "change-settings");
              case "shorter-exposures" -> Set.of("expose-shorter");
              case "training" -> Set.of("change-settings", "train", "adjust-mount");
              case "mechanics" -> Set.of("adjust-mount", "mend-optics");
              default -> Set.of("cannot-tell");
            };
        return !t.told().present() || fitting.contains(word)
            ? List.of()
            : List.of(word + " beside rung " + rung);
      }),

  /** A rung that adds to a cheaper one makes it no worse, beyond what the draws leave open. */
  DEARER_RUNG_IS_SURELY_WORSE_THAN_AS_IT_WAS(
      t -> {
        Optional<Step> first = t.told().step(Rung.AS_IT_WAS);
        return t.told().steps().stream()
            .filter(Step::offered)
            .filter(step -> step.rung() != Rung.AS_IT_WAS)
            .filter(step -> first.isPresent() && step.units() == first.get().units())
            .filter(step -> step.round().high() < first.get().round().low())
            .map(step -> step.rung().key() + " " + step.round() + " < " + first.get().round())
            .toList();
      }),

  OFFERED_WITHOUT_A_CURE(
      t ->
          t.told().steps().stream()
              .filter(Step::offered)
              .filter(step -> step.rung().compareTo(Rung.LOOP_LIMIT) < 0)
              .filter(step -> step.rung() != Rung.AS_IT_WAS && step.cures().isEmpty())
              .map(step -> step.rung().key())
              .toList()),

  CURE_THAT_CHANGES_NOTHING(
      t ->
          t.told().steps().stream()
              .filter(Step::offered)
              .flatMap(
                  step ->
                      step.cures().stream()
                          .filter(
                              change ->
                                  change.from().isPresent()
                                      && change.to().isPresent()
                                      && change.from().getAsDouble() == change.to().getAsDouble())
                          .map(change -> step.rung().key() + " " + change))
              .toList()),

  MECHANICAL_WORK_RECOMMENDED_WHERE_NONE_IS_NEEDED(
      t -> nothingMechanical(t) ? grep(t.all(), Contradictions::asksForTools) : List.of()),

  MOUNT_NEEDS_WORK_WHERE_NONE_IS_NEEDED(
      t ->
          nothingMechanical(t)
              ? grep(
                  t.all(),
                  s ->
                      has(s, "mount needs (some )?(work|adjust)|(adjust|repair|work on) the mount")
                          && !denied(s))
              : List.of()),

  LEAVE_ALONE_WHERE_THE_MOUNT_NEEDS_WORK(
      t ->
          mountNeedsWork(t)
              ? grep(t.all(), s -> has(s, "leave (it|the mount)? ?(alone|as it is)"))
              : List.of()),

  FIX_FIRST_BESIDE_LEAVE_ALONE(
      t ->
          leftAlone(t)
              ? grep(t.all(), s -> has(s, "\\b(fix first|fix-first|worth fixing)\\b") && !list(s))
              : List.of()),

  FINDING_ABOVE_WATCH_BESIDE_LEAVE_ALONE(
      t ->
          leftAlone(t)
              ? levels(t).stream()
                  .filter(f -> grade(f.getValue()) >= 2)
                  .map(Object::toString)
                  .toList()
              : List.of()),

  MOUNT_ABOVE_WATCH_WHERE_SETTINGS_DO(
      t ->
          t.told().decided().filter(Rung.SETTINGS::equals).isPresent()
                  && grade(t.json().path("verdict").path("mount").path("level").asText()) >= 2
              ? List.of(t.json().path("verdict").path("mount").toString())
              : List.of()),

  SETTINGS_FINE_WHERE_SETTINGS_ARE_THE_CURE(
      t ->
          t.told().decided().filter(Rung.SETTINGS::equals).isPresent()
                  && grade(t.json().path("verdict").path("settings").path("level").asText()) < 1
              ? List.of(t.json().path("verdict").path("settings").toString())
              : List.of()),

  MECHANICAL_FINDING_ABOVE_WATCH_WHERE_NOTHING_MECHANICAL_IS_NEEDED(
      t ->
          t.told().decided().filter(Rung.SETTINGS::equals).isPresent()
              ? levels(t).stream()
                  .filter(f -> grade(f.getValue()) >= 2)
                  .filter(
                      f ->
                          Set.of(
                                  "dec-backlash",
                                  "jolts",
                                  "periodic-error",
                                  "differential-flexure",
                                  "optics")
                              .contains(f.getKey()))
                  .map(Object::toString)
                  .toList()
              : List.of()),

  TILE_FINE_ABOVE_A_FINDING_TO_FIX_FIRST(
      t -> {
        JsonNode verdict = t.json().path("verdict");
        int worst = levels(t).stream().mapToInt(f -> grade(f.getValue())).max().orElse(0);
        int tiles = 0;
        int count = 0;
        for (JsonNode tile : verdict) {
          if (tile.isObject() && tile.has("level")) {
            tiles = Math.max(tiles, grade(tile.path("level").asText()));
            count++;
          }
        }
        return count > 0 && worst == 3 && tiles < 2
            ? List.of("worst finding fix-first, worst tile below worth-fixing")
            : List.of();
      }),

  FINDINGS_OUT_OF_ORDER_OF_THEIR_LEVELS(
      t -> {
        int before = 3;
        for (Map.Entry<String, String> finding : levels(t)) {
          int here = grade(finding.getValue());
          if (here > before && here >= 0 && before >= 0) {
            return List.of(finding + " after a lower one");
          }
          before = here < 0 ? before : here;
        }
        return List.of();
      }),

  /** What wins back nothing, alone or on top of cheaper cures, is never above watch. */
  CURE_WINS_NOTHING_YET_ITS_FINDING_IS_ABOVE_WATCH(
      t -> {
        Map<String, Set<String>> cures =
            Map.of(
                "under-correction",
                    Set.of(
                        "ra-gain",
                        "dec-gain",
                        "ra-deadband",
                        "dec-deadband",
                        "guide-exposure",
                        "pulse-limit"),
                "over-correction",
                    Set.of("ra-gain", "dec-gain", "ra-deadband", "dec-deadband", "guide-exposure"),
                "slow-settling", Set.of("settling-wait", "ra-gain", "dec-gain"),
                "polar-axis", Set.of("polar-axis"),
                "axis-imbalance", Set.of("balance"),
                "dec-backlash", Set.of("play"),
                "periodic-error", Set.of("training", "gears"),
                "jolts", Set.of("jolts"),
                "differential-flexure", Set.of("flexure", "exposure-length"),
                "optics", Set.of("optics"));
        String kind = t.json().path("need").path("kind").asText();
        String wins = kind.equals("elongation") ? "wins" : "lessRmsArcsec";
        double least = kind.equals("elongation") ? 0.5 : 0.01;
        Map<String, Double> most = new java.util.HashMap<>();
        for (JsonNode rung : t.json().path("ladder")) {
          List<JsonNode> all = new ArrayList<>();
          rung.path("cures").forEach(all::add);
          rung.path("alone").forEach(alone -> alone.path("cures").forEach(all::add));
          for (JsonNode cure : all) {
            for (String how : List.of("Alone", "OnTop")) {
              double won = cure.path(wins + how).path("value").asDouble(Double.NaN);
              if (!Double.isNaN(won)) {
                most.merge(cure.path("cure").asText(), won, Math::max);
              }
            }
          }
        }
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, String> finding : levels(t)) {
          Set<String> own = cures.getOrDefault(finding.getKey(), Set.of());
          double won =
              own.stream()
                  .filter(most::containsKey)
                  .mapToDouble(most::get)
                  .max()
                  .orElse(Double.NaN);
          if (grade(finding.getValue()) >= 2 && won < least) {
            wrong.add(finding + ": its cures win " + won);
          }
        }
        return wrong;
      }),

  /** A rung that wins nothing and makes stars no rounder is not offered. */
  OFFERED_THOUGH_NOTHING_IS_WON(
      t -> {
        List<String> wrong = new ArrayList<>();
        double before = Double.POSITIVE_INFINITY;
        for (JsonNode rung : t.json().path("ladder")) {
          double stretch = rung.path("middleElongation").path("value").asDouble(1) - 1;
          boolean rounder = stretch < 0.95 * before;
          before = Math.min(before, stretch);
          double most = Double.NEGATIVE_INFINITY;
          for (JsonNode cure : rung.path("cures")) {
            for (String how : List.of("Alone", "OnTop")) {
              most = Math.max(most, 2 * cure.path("wins" + how).path("value").asDouble(1e9));
              most =
                  Math.max(most, 100 * cure.path("lessRmsArcsec" + how).path("value").asDouble(0));
            }
          }
          boolean offered = rung.path("offered").asBoolean() && !rung.path("cures").isEmpty();
          if (offered && most < 1 && !rounder) {
            wrong.add(
                rung.path("rung").asText()
                    + " wins less than half an exposure and less than 0.01 arcsec");
          }
        }
        return wrong;
      }),

  /** What leads is what is cured: a gain is raised since corrections are too weak. */
  GAIN_RAISED_THOUGH_CORRECTIONS_ARE_NOT_TOO_WEAK(
      t -> {
        boolean raised =
            t.told().decided().filter(Rung.SETTINGS::equals).isPresent()
                && t.told().step(Rung.SETTINGS).orElseThrow().cures().stream()
                    .anyMatch(c -> c.code().endsWith("-gain") && DecisionNight.direction(c) > 0);
        return raised
            ? levels(t).stream()
                .filter(f -> f.getKey().equals("under-correction") && f.getValue().equals("fine"))
                .map(Object::toString)
                .toList()
            : List.of();
      }),

  FIX_FIRST_THOUGH_NO_MORE_THAN_POSSIBLE(
      t -> {
        List<String> wrong = new ArrayList<>();
        for (JsonNode finding : t.json().path("findings")) {
          if (finding.path("level").asText().equals("fix-first")
              && finding.path("confidence").asDouble(1) <= 0.5) {
            wrong.add(
                finding.path("code").asText()
                    + " at a confidence of "
                    + finding.path("confidence"));
          }
        }
        return wrong;
      }),

  MOUNT_ABOVE_WATCH_WHERE_THE_AIR_SETS_THE_LIMIT(
      t ->
          t.told().decided().filter(Rung.AIR_LIMIT::equals).isPresent()
                  && grade(t.json().path("verdict").path("mount").path("level").asText()) >= 2
              ? List.of(t.json().path("verdict").path("mount").toString())
              : List.of()),

  COUNT_OF_NO_EXPOSURES(t -> grep(t.all(), s -> has(s, "\\b0 of 0\\b"))),

  /** "14 of 14 exposures round instead of 1": the 1 is what stands everywhere else. */
  INSTEAD_OF_A_COUNT_THAT_STANDS_NOWHERE_ELSE(
      t -> {
        Pattern instead =
            Pattern.compile(
                "(?i)\\d+ of \\d+ (?:exposures|images|windows)(?: come out| are)? round[^.;]*?"
                    + "(?:instead of|not) (\\d+)");
        Optional<int[]> all = exposures(t);
        return all.isEmpty()
            ? List.of()
            : grep(
                t.all(),
                s -> {
                  Matcher matcher = instead.matcher(s);
                  return matcher.find() && Integer.parseInt(matcher.group(1)) != all.get()[0];
                });
      }),

  /** What wins back no image is never above watch. */
  NOTHING_WON_YET_ABOVE_WATCH(
      t -> {
        Optional<Step> first = t.told().step(Rung.AS_IT_WAS);
        if (first.isEmpty() || !t.json().path("need").path("kind").asText().equals("elongation")) {
          return List.of();
        }
        List<String> wrong = new ArrayList<>();
        for (JsonNode finding : t.json().path("findings")) {
          JsonNode expected = finding.path("expectedRoundExposures");
          if (expected.isNumber()
              && grade(finding.path("level").asText()) >= 2
              && expected.asDouble() <= first.get().round().value()) {
            wrong.add(
                finding.path("code").asText()
                    + " "
                    + finding.path("level").asText()
                    + " for "
                    + expected
                    + " round of now "
                    + first.get().round().value());
          }
        }
        return wrong;
      }),

  /** A mechanical cure that alone wins nothing names a finding that is at most to be watched. */
  MECHANICAL_CURE_ALONE_WINS_NOTHING_YET_ABOVE_WATCH(
      t -> {
        Map<String, String> findings =
            Map.of(
                "play", "dec-backlash",
                "gears", "periodic-error",
                "jolts", "jolts",
                "flexure", "differential-flexure",
                "optics", "optics");
        Optional<Step> first = t.told().step(Rung.AS_IT_WAS);
        List<String> wrong = new ArrayList<>();
        for (JsonNode rung : t.json().path("ladder")) {
          for (JsonNode alone : rung.path("alone")) {
            String code =
                alone.has("cure")
                    ? alone.path("cure").asText()
                    : alone.path("cures").path(0).path("cure").asText();
            String finding = findings.getOrDefault(code, "");
            double round = alone.path("round").path("value").asDouble(Double.NaN);
            double onTop = alone.path("onTop").path("round").path("value").asDouble(Double.NaN);
            for (Map.Entry<String, String> level : levels(t)) {
              if (level.getKey().equals(finding)
                  && grade(level.getValue()) >= 2
                  && first.isPresent()
                  && round < first.get().round().value() + 0.5
                  && !(onTop > round + 0.5)
                  && t.json().path("need").path("kind").asText().equals("elongation")) {
                wrong.add(level + " wins " + (round - first.get().round().value()));
              }
            }
          }
        }
        return wrong;
      }),

  HEADLINE_LONGER_THAN_25_WORDS(
      t -> {
        List<String> wrong = new ArrayList<>();
        for (String line :
            List.of(t.headline(), t.json().path("verdict").path("summary").asText())) {
          if (!line.isBlank() && line.strip().split("\\s+").length > 25) {
            wrong.add(line);
          }
        }
        return wrong;
      }),

  MORE_THAN_THREE_STEPS(t -> t.steps().size() > 3 ? t.steps() : List.of()),

  STEPS_WHERE_NOTHING_IS_TO_BE_DONE(
      t ->
          leftAlone(t)
              ? grep(
                  t.steps(),
                  s -> has(s, "^(raise|lower|set|turn|balance|train|mend|shorten|take)\\b"))
              : List.of()),

  NO_STEP_WHERE_SOMETHING_IS_TO_BE_DONE(
      t ->
          t.told()
                      .decided()
                      .filter(rung -> rung != Rung.AS_IT_WAS && rung.compareTo(Rung.LOOP_LIMIT) < 0)
                      .isPresent()
                  && t.steps().isEmpty()
              ? List.of("decided " + t.told().decided().get().key() + ", no step on the page")
              : List.of()),

  STEP_WITHOUT_A_NUMBER_WHERE_A_SETTING_IS_THE_CURE(
      t ->
          t.told().decided().filter(Rung.SETTINGS::equals).isPresent()
              ? grep(t.steps(), s -> !has(s, "\\d|\\boff\\b"))
              : List.of()),

  /** "gain ... from 0.40 to 0.80" must be a change that the ladder knows. */
  GAIN_ON_THE_PAGE_THAT_NO_RUNG_KNOWS(
      t -> {
        Set<String> known = new TreeSet<>();
        t.told()
            .steps()
            .forEach(
                step ->
                    step.cures().stream()
                        .filter(change -> change.code().endsWith("-gain"))
                        .forEach(
                            change -> change.only("toGain").ifPresent(to -> known.add(two(to)))));
        List<String> wrong = new ArrayList<>();
        List<String> read = new ArrayList<>(t.steps());
        read.add(t.headline());
        read.addAll(t.terminal());
        Pattern gain = Pattern.compile("(?i)gain[^.;]*?(\\d\\.\\d+) to (\\d\\.\\d+)");
        for (String sentence : read) {
          Matcher matcher = gain.matcher(sentence);
          if (matcher.find() && !known.contains(two(Double.parseDouble(matcher.group(2))))) {
            wrong.add(sentence + " (known: " + known + ")");
          }
        }
        return wrong;
      }),

  RAISED_TO_LESS_OR_LOWERED_TO_MORE(
      t -> {
        List<String> wrong = new ArrayList<>();
        Pattern change =
            Pattern.compile(
                "(?i)\\b(raise|increase|lengthen|lower|reduce|shorten)\\b[^.;]*?"
                    + "(?:from )?(\\d+(?:\\.\\d+)?)(?: \\w+)? to (\\d+(?:\\.\\d+)?)");
        for (String sentence : t.all()) {
          Matcher matcher = change.matcher(sentence);
          if (matcher.find()) {
            boolean up = lower(matcher.group(1)).matches("raise|increase|lengthen");
            double from = Double.parseDouble(matcher.group(2));
            double to = Double.parseDouble(matcher.group(3));
            if (up && to < from || !up && to > from) {
              wrong.add(sentence);
            }
          }
        }
        return wrong;
      }),

  SAME_GAIN_RAISED_AND_LOWERED(
      t -> {
        List<String> wrong = new ArrayList<>();
        for (String axis : List.of("RA", "Dec")) {
          List<String> up = grep(t.all(), s -> turnsGain(s, axis, "raise|increase"));
          List<String> down = grep(t.all(), s -> turnsGain(s, axis, "lower|reduce"));
          if (!up.isEmpty() && !down.isEmpty()) {
            wrong.add(up.get(0) + " | " + down.get(0));
          }
        }
        return wrong;
      }),

  GAIN_TURNED_AGAINST_THE_LADDER(
      t -> {
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, String> axis :
            Map.of("ra-gain", "RA", "dec-gain", "Dec").entrySet()) {
          for (Step step : t.told().steps()) {
            if (step.rung() != Rung.SETTINGS || !step.offered()) {
              continue;
            }
            for (Change change : step.cures()) {
              double way =
                  change.code().equals(axis.getKey()) ? DecisionNight.direction(change) : 0;
              String against = way > 0 ? "lower|reduce" : "raise|increase";
              if (way != 0) {
                wrong.addAll(grep(t.all(), s -> turnsGain(s, axis.getValue(), against)));
              }
            }
          }
        }
        return wrong;
      }),

  /** "15 of 20 exposures round" wherever it stands. */
  ROUND_COUNT_THAT_THE_LADDER_DOES_NOT_KNOW(
      t -> {
        if (!t.told().present()) {
          return List.of();
        }
        Set<Integer> counts = new TreeSet<>();
        Set<Integer> units = new TreeSet<>();
        for (Step step : t.told().steps()) {
          for (double bound :
              new double[] {step.round().value(), step.round().low(), step.round().high()}) {
            counts.add((int) Math.floor(bound));
            counts.add((int) Math.ceil(bound));
          }
          units.add(step.units());
        }
        for (JsonNode rung : t.json().path("ladder")) {
          for (JsonNode alone : rung.path("alone")) {
            double value = alone.path("round").path("value").asDouble();
            counts.add((int) Math.floor(value));
            counts.add((int) Math.ceil(value));
          }
        }
        for (JsonNode finding : t.json().path("findings")) {
          if (finding.path("expectedRoundExposures").isNumber()) {
            counts.add(finding.path("expectedRoundExposures").asInt());
          }
        }
        exposures(t)
            .ifPresent(
                all -> {
                  counts.add(all[0]);
                  units.add(all[2]);
                });
        Pattern count =
            Pattern.compile(
                "(?i)\\b(\\d+) of (?:the )?(\\d+) (?:exposures|images|windows)"
                    + "(?: of [\\d.]+ \\w+)?(?: (?:are|were|come|came|would be|would come))?"
                    + "(?: out)? round");
        return grep(
            t.all(),
            s -> {
              Matcher matcher = count.matcher(s);
              while (matcher.find()) {
                if (matcher.group(2).equals("0")) {
                  return false; // another check's
                }
                if (!counts.contains(Integer.parseInt(matcher.group(1)))
                    || !units.contains(Integer.parseInt(matcher.group(2)))) {
                  return true;
                }
              }
              return false;
            });
      }),

  /** Where stars were measured, the ladder begins with what was measured. */
  AS_IT_WAS_IS_NOT_WHAT_WAS_MEASURED(
      t -> {
        Optional<Step> first = t.told().step(Rung.AS_IT_WAS);
        Optional<int[]> all = measured(t);
        if (first.isEmpty() || all.isEmpty()) {
          return List.of();
        }
        boolean fits =
            first.get().round().high() >= all.get()[0]
                && first.get().round().low() <= all.get()[0] + all.get()[1]
                && first.get().units() == all.get()[2];
        return fits
            ? List.of()
            : List.of(
                String.format(
                    Locale.ROOT,
                    "measured %d round and %d borderline of %d, ladder %s of %d",
                    all.get()[0],
                    all.get()[1],
                    all.get()[2],
                    first.get().round(),
                    first.get().units()));
      }),

  ALL_MEASURED_ROUND_YET_SOMETHING_TO_DO(
      t ->
          measured(t).filter(all -> all[0] == all[2] && all[2] > 0).isPresent()
                  && t.told().present()
                  && t.json().path("need").path("kind").asText().equals("elongation")
                  && !t.told().decided().filter(Rung.AS_IT_WAS::equals).isPresent()
              ? List.of("decided " + t.told().decided().map(Rung::key).orElse("nothing"))
              : List.of()),

  ALL_ROUND_IN_WORDS_BUT_NOT_IN_NUMBERS(
      t -> {
        Optional<int[]> all = exposures(t);
        return all.filter(a -> a[0] < a[2]).isPresent()
            ? grep(
                t.all(),
                s ->
                    has(
                            s,
                            "^(all|every)( \\d+)? (exposures?|images?) (are|is|were|was|came out)"
                                + " round")
                        && !conditional(s))
            : List.of();
      }),

  NOTHING_LOST_IN_WORDS_BUT_IN_NUMBERS(
      t ->
          exposures(t).filter(a -> a[3] > 0).isPresent()
              ? grep(t.all(), s -> has(s, "\\bno (exposure|image)s? (was|were) (lost|trailed)"))
              : List.of()),

  NO_MORE_TO_EXPECT_THAN_THERE_IS(
      t -> {
        List<String> wrong = new ArrayList<>();
        Pattern not =
            Pattern.compile(
                "(?i)(\\d+) of (\\d+) (?:exposures|images|windows) would[^.;]*?"
                    + "(?:not|instead of) (\\d+)");
        for (String sentence : t.all()) {
          Matcher matcher = not.matcher(sentence);
          if (matcher.find()
              && Integer.parseInt(matcher.group(1)) <= Integer.parseInt(matcher.group(3))) {
            wrong.add(sentence);
          }
        }
        return wrong;
      }),

  WON_BACK_IS_NOT_THE_DIFFERENCE(
      t -> {
        Set<Integer> wins = new TreeSet<>();
        Optional<Step> first = t.told().step(Rung.AS_IT_WAS);
        if (first.isEmpty()) {
          return List.of();
        }
        List<Double> values = new ArrayList<>();
        t.told().steps().forEach(step -> values.add(step.round().value()));
        t.json()
            .path("ladder")
            .forEach(
                rung ->
                    rung.path("alone")
                        .forEach(a -> values.add(a.path("round").path("value").asDouble())));
        t.json()
            .path("findings")
            .forEach(f -> values.add(f.path("expectedRoundExposures").asDouble()));
        for (double one : values) {
          for (double other : values) {
            wins.add((int) Math.floor(one - other));
            wins.add((int) Math.ceil(one - other));
          }
        }
        Pattern win =
            Pattern.compile(
                "(?i)wins?(?: back)?(?: about)? (\\d+)(?: more)? (?:exposures|images|windows)");
        return grep(
            t.all(),
            s -> {
              Matcher matcher = win.matcher(s);
              return matcher.find() && !wins.contains(Integer.parseInt(matcher.group(1)));
            });
      }),

  RADIAL_RMS_AGAINST_A_LIMIT_OF_AN_AXIS(
      t ->
          grep(
              t.all(),
              s ->
                  has(s, "\\blimit\\b")
                      && has(s, "radial")
                      && has(s, "either axis|per axis|each axis|of an axis|in (ra|dec)\\b"))),

  YOUR_LIMIT_THAT_THE_USER_NEVER_SET(
      t ->
          t.json().path("need").path("from").asText().equals("tool")
              ? grep(
                  t.all(),
                  s -> has(s, "\\byour (own )?limits?\\b") && !has(s, "\\b(set|give|state) your"))
              : List.of()),

  LIMIT_OF_THE_TOOL_THAT_THE_USER_SET(
      t ->
          t.json().path("need").path("from").asText().equals("user")
              ? grep(t.all(), s -> has(s, "(limit|need)[^.]*\\b(roundstar's|the tool's) own\\b"))
              : List.of()),

  LIMIT_ON_THE_PAGE_IS_NOT_THE_NEED(
      t -> {
        JsonNode need = t.json().path("need");
        if (!need.path("limit").isNumber()) {
          return List.of();
        }
        String limit = two(need.path("limit").asDouble());
        boolean rms = need.path("kind").asText().endsWith("rms");
        Pattern of = Pattern.compile("(?i)limit of (\\d+\\.\\d+)( arcsec)?");
        return grep(
            t.all(),
            s -> {
              Matcher matcher = of.matcher(s);
              return matcher.find()
                  && rms == (matcher.group(2) != null)
                  && !two(Double.parseDouble(matcher.group(1))).equals(limit);
            });
      }),

  NEED_IS_NOT_ON_THE_PAGE(
      t -> {
        JsonNode need = t.json().path("need");
        if (!need.path("limit").isNumber()) {
          return t.told().present() ? List.of("no need in the JSON") : List.of();
        }
        String limit = two(need.path("limit").asDouble());
        return t.page().stream().anyMatch(s -> s.contains(limit))
            ? List.of()
            : List.of("limit " + limit + " stands nowhere on the page");
      }),

  AIR_IS_THE_LIMIT_WHERE_SOMETHING_HELPS(
      t ->
          t.told()
                  .decided()
                  .filter(rung -> rung != Rung.AS_IT_WAS && rung.compareTo(Rung.LOOP_LIMIT) < 0)
                  .isPresent()
              ? grep(
                  t.all(), s -> has(s, "\\b(the )?air (is|was|set|sets) the limit") && !denied(s))
              : List.of()),

  CANNOT_TELL_BESIDE_A_DECISION(
      t ->
          t.told().decided().isPresent()
              ? grep(
                  List.of(t.headline(), t.json().path("verdict").path("summary").asText()),
                  s -> has(s, "cannot tell|record (more|another)"))
              : List.of()),

  DECISION_BESIDE_CANNOT_TELL(
      t ->
          t.told().present() && t.told().decided().isEmpty()
              ? grep(
                  List.of(t.headline(), t.json().path("verdict").path("summary").asText()),
                  s -> has(s, "leave the mount|change a setting|needs work|turn the"))
              : List.of()),

  HEADLINE_OF_ANOTHER_RUNG(
      t -> {
        String line = t.headline();
        Optional<Rung> decided = t.told().decided();
        if (decided.isEmpty() || line.isBlank()) {
          return List.of();
        }
        boolean wrong =
            switch (decided.get()) {
              case AS_IT_WAS ->
                  has(line, "^(change|raise|lower|turn|balance|train|shorten|mend|fix)\\b");
              case SETTINGS -> has(line, "^(leave|turn|balance|train|mend)\\b");
              case ALIGNMENT_BALANCE -> has(line, "^leave\\b|mount needs work");
              case MECHANICS, TRAINING -> has(line, "^leave\\b|leave the mount alone");
              default -> has(line, "mount needs work");
            };
        return wrong ? List.of(decided.get().key() + ": " + line) : List.of();
      }),

  TERMINAL_SAYS_ANOTHER_DECISION(
      t -> {
        String word = t.json().path("verdict").path("decision").asText();
        String lines = lower(String.join(" ", t.terminal()));
        return lines.isEmpty() || word.isEmpty()
            ? List.of()
            : otherDecision(word, lines).map(List::of).orElse(List.of());
      }),

  INDEX_SAYS_ANOTHER_DECISION(
      t -> {
        String word = t.json().path("verdict").path("decision").asText();
        String row = lower(String.join(" | ", t.index()));
        return row.isEmpty() || word.isEmpty()
            ? List.of()
            : otherDecision(word, row).map(List::of).orElse(List.of());
      }),

  /** Levels named in the terminal must be those of the JSON. */
  TERMINAL_SAYS_ANOTHER_LEVEL(
      t -> {
        List<String> wrong = new ArrayList<>();
        String lines = lower(String.join(" ", t.terminal()));
        for (Map.Entry<String, JsonNode> tile : t.json().path("verdict").properties()) {
          if (tile.getValue().isObject() && tile.getValue().has("level")) {
            Matcher matcher =
                Pattern.compile(
                        "\\b"
                            + lower(tile.getKey())
                            + ": ?(fix first|worth fixing|watch|fine|cannot tell)")
                    .matcher(lines);
            String level = tile.getValue().path("level").asText().replace('-', ' ');
            if (matcher.find() && !matcher.group(1).equals(level)) {
              wrong.add(tile.getKey() + ": " + matcher.group(1) + ", JSON " + level);
            }
          }
        }
        return wrong;
      }),

  WORK_ON_THE_MOUNT_WITHOUT_CAUTION(
      t ->
          mountNeedsWork(t) && t.page().stream().noneMatch(s -> has(s, "manual"))
              ? List.of("no word of the maker's manual on the page")
              : List.of()),

  MECHANICAL_FINDING_WITHOUT_CAUTION(
      t -> {
        List<String> wrong = new ArrayList<>();
        for (JsonNode finding : t.json().path("findings")) {
          boolean tools = false;
          for (JsonNode action : finding.path("action")) {
            tools |= asksForTools(action.asText());
          }
          if (tools
              && grade(finding.path("level").asText()) >= 2
              && finding.path("caution").asText().isBlank()) {
            wrong.add(finding.path("code").asText());
          }
        }
        return wrong;
      }),

  /** What could hurt is never the first step while a harmless one meets the need. */
  TOOLS_FIRST(
      t ->
          t.told().decided().filter(rung -> rung.compareTo(Rung.MECHANICS) < 0).isPresent()
              ? grep(t.steps(), Contradictions::asksForTools)
              : List.of()),

  POLAR_AXIS_GOOD_ENOUGH_YET_TO_BE_TURNED(
      t ->
          t.told().decided().filter(Rung.ALIGNMENT_BALANCE::equals).isPresent()
                  && t.told().step(Rung.ALIGNMENT_BALANCE).orElseThrow().cures().stream()
                      .anyMatch(c -> c.code().equals("polar-axis"))
                  && t.told().step(Rung.ALIGNMENT_BALANCE).orElseThrow().cures().size() == 1
              ? grep(t.all(), s -> has(s, "polar axis is good enough"))
              : List.of()),

  LONGEST_EXPOSURE_SHORTER_THAN_ONE_THAT_COMES_OUT_ROUND(
      t -> {
        Optional<Step> first = t.told().step(Rung.AS_IT_WAS);
        if (!leftAlone(t) || first.isEmpty() || first.get().meetsNeed() < 0.99) {
          return List.of();
        }
        double seconds = t.json().path("exposures").path(0).path("seconds").asDouble(Double.NaN);
        Pattern longest =
            Pattern.compile("(?i)(?:expose|exposures?)[^.;]{0,40}up to (\\d+(?:\\.\\d+)?) s\\b");
        return grep(
            t.page(),
            s -> {
              Matcher matcher = longest.matcher(s);
              return matcher.find() && Double.parseDouble(matcher.group(1)) < seconds;
            });
      }),

  /** Nothing unfinished reaches a user. */
  WORDS_OF_A_PROGRAM(
      t -> grep(t.all(), s -> has(s, "\\b(null|NaN|Infinity|undefined)\\b|\\$\\{|%[sdf]\\b")));

  private final Function<NightTexts, List<String>> check;

  Contradictions(Function<NightTexts, List<String>> check) {
    this.check = check;
  }

  /** Sentences, or figures in words, that contradict. */
  List<String> in(NightTexts night) {
    return check.apply(night);
  }

  private static boolean nothingMechanical(NightTexts t) {
    return t.told()
        .decided()
        .filter(rung -> rung == Rung.AS_IT_WAS || rung == Rung.SETTINGS)
        .isPresent();
  }

  /** Mended optics leave the mount alone. */
  private static boolean mountNeedsWork(NightTexts t) {
    return t.told().decided().filter(Rung.MECHANICS::equals).isPresent()
        && !t.json().path("verdict").path("decision").asText().equals("mend-optics");
  }

  private static boolean leftAlone(NightTexts t) {
    return t.told().decided().filter(Rung.AS_IT_WAS::equals).isPresent();
  }

  private static List<String> grep(List<String> sentences, Predicate<String> wrong) {
    return sentences.stream().filter(wrong).distinct().toList();
  }

  private static boolean has(String sentence, String regex) {
    return Pattern.compile(regex, Pattern.CASE_INSENSITIVE).matcher(sentence).find();
  }

  /** An order to lay tools on the gears, not a word about what that would bring. */
  private static boolean asksForTools(String sentence) {
    return has(
            sentence,
            "^(then |first |next |last |\\d+\\. )?(have |let )?(the )?"
                + "(adjust|re-?mesh|mesh|regrease|grease|clean|replace|shim|loosen|tighten|open|"
                + "dismantle|take apart|lap|run in|set the mesh|see to|repair|mend|service)\\b")
        && has(
            sentence,
            "\\b(worms?|gears?|gearbox|mesh|bearings?|belts?|pinion|clutch|drive|backlash|play)\\b")
        && !denied(sentence)
        && !conditional(sentence);
  }

  private static boolean denied(String sentence) {
    return has(
        sentence,
        "\\b(not needed|no need|need(s)?"
            + " not|not|never|nothing|without|leave|unless|neither|no)\\b");
  }

  private static boolean conditional(String sentence) {
    return has(sentence, "\\b(would|if|where|could|should|may)\\b");
  }

  /** A sentence that explains all levels. */
  private static boolean list(String sentence) {
    return has(sentence, "\\b(watch|fine)\\b") && has(sentence, "\\b(means?|levels?|or)\\b");
  }

  private static boolean turnsGain(String sentence, String axis, String verb) {
    return has(sentence, "^(" + verb + ")\\b[^.;]*\\bgain\\b")
        && has(sentence, "\\b" + axis + "\\b")
        && !conditional(sentence);
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  /** Codes with levels, as they stand. */
  private static List<Map.Entry<String, String>> levels(NightTexts t) {
    List<Map.Entry<String, String>> levels = new ArrayList<>();
    t.json()
        .path("findings")
        .forEach(f -> levels.add(Map.entry(f.path("code").asText(), f.path("level").asText())));
    return levels;
  }

  /** fix-first 3, worth-fixing 2, watch 1, fine 0, cannot-tell -1. */
  private static int grade(String level) {
    return List.of("fine", "watch", "worth-fixing", "fix-first").indexOf(level);
  }

  /** Round, borderline, all and trailed exposures, as the JSON lists them. */
  private static Optional<int[]> exposures(NightTexts t) {
    JsonNode list = t.json().path("exposures");
    if (!list.isArray() || list.isEmpty()) {
      return Optional.empty();
    }
    int[] counts = new int[4];
    for (JsonNode exposure : list) {
      String verdict = exposure.path("verdict").asText();
      counts[0] += verdict.equals("round") ? 1 : 0;
      counts[1] += verdict.equals("borderline") ? 1 : 0;
      counts[2]++;
      counts[3] += verdict.equals("trailed") ? 1 : 0;
    }
    return Optional.of(counts);
  }

  /** The same where the stars of every exposure were measured. */
  private static Optional<int[]> measured(NightTexts t) {
    for (JsonNode exposure : t.json().path("exposures")) {
      if (!exposure.path("measuredElongation").isObject()) {
        return Optional.empty();
      }
    }
    return exposures(t);
  }

  /** Words of another decision than this one. */
  private static Optional<String> otherDecision(String word, String text) {
    Map<String, String> words =
        Map.of(
            "leave-alone", "the mount needs work|change a setting\\b|turn the (mount's )?polar",
            "change-settings", "the mount needs work",
            "adjust-polar-axis", "the mount needs work|leave the mount alone[^;]*$",
            "rebalance", "the mount needs work",
            "adjust-mount", "leave (the mount )?alone",
            "cannot-tell", "the mount needs work|leave the mount alone");
    Matcher matcher = Pattern.compile(words.getOrDefault(word, "(?!)")).matcher(text);
    return matcher.find()
        ? Optional.of(word + " beside '" + matcher.group() + "'")
        : Optional.empty();
  }
}
