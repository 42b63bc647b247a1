package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.EventRule;
import io.github.roundstar.ingest.layout.EventRule.Kind;
import io.github.roundstar.ingest.layout.LinePattern;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;

/** What the lines between the rows say of the rows after them. */
final class Happenings {
  private final List<EventRule> rules;
  private Kind lasting = Kind.GUIDING;
  private Kind before = Kind.GUIDING;
  private Kind once;
  private Matcher ditherLine;
  private String lostTime;
  private String note;

  Happenings(List<EventRule> rules) {
    this.rules = rules;
  }

  /** What concerned one row only is over. */
  void rowTaken() {
    once = null;
    ditherLine = null;
    lostTime = null;
    note = null;
  }

  void newRun() {
    before = lasting;
    lasting = Kind.GUIDING;
    once = null;
  }

  /** What looked like a new run is another page of the same: what lasted goes on. */
  void samePage() {
    lasting = lasting == Kind.GUIDING ? before : lasting;
    before = Kind.GUIDING;
  }

  /** The first rule that knows the line, which from now on holds. */
  Optional<EventRule> take(String line) {
    for (EventRule rule : rules) {
      Optional<Matcher> found = rule.line().flatMap(pattern -> pattern.find(line));
      if (found.isPresent()) {
        happened(rule.means(), found.get(), line);
        return Optional.of(rule);
      }
    }
    return Optional.empty();
  }

  private void happened(Kind kind, Matcher found, String line) {
    switch (kind) {
      case SETTLING, IDLE, GUIDING -> {
        lasting = kind;
        before = kind == Kind.GUIDING ? kind : before;
      }
      case LOST -> {
        lostTime = LinePattern.group(found, "time").orElse(null);
        once = lostTime == null ? once : kind; // the rows themselves show what was not measured
      }
      case NOTE -> note = line.strip();
      case FLIP -> once = kind;
      case DITHER -> {
        lasting = Kind.GUIDING;
        once = kind;
        ditherLine = found;
      }
    }
  }

  Kind event() {
    return once != null ? once : lasting;
  }

  Optional<String> lostTime() {
    return Optional.ofNullable(lostTime);
  }

  Optional<String> note() {
    return Optional.ofNullable(note);
  }

  Optional<String> ditherGroup(String name) {
    return Optional.ofNullable(ditherLine).flatMap(found -> LinePattern.group(found, name));
  }
}
