package io.github.roundstar.report;

import io.github.roundstar.report.Page.Block;
import io.github.roundstar.report.Page.Judged;
import io.github.roundstar.report.Page.Section;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Judgement;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Verdict;
import java.util.ArrayList;
import java.util.List;

/** The verdict's sentences and one section per finding; empty in a result that does not judge. */
final class FindingSections {
  private FindingSections() {}

  static List<Judged> judgements(NightResult result) {
    Verdict verdict = result.verdict();
    List<Judged> judged = new ArrayList<>();
    if (verdict != null) {
      add(judged, "Mount", verdict.mount());
      add(judged, "Sky", verdict.sky());
      add(judged, "Settings", verdict.settings());
    }
    return judged;
  }

  static List<Section> of(NightResult result) {
    List<Section> sections = new ArrayList<>();
    List<Finding> findings = result.findings() == null ? List.of() : result.findings();
    for (int i = 0; i < findings.size(); i++) {
      sections.add(section(findings.get(i), i + 1));
    }
    return sections;
  }

  private static Section section(Finding finding, int number) {
    List<String> sentences = new ArrayList<>();
    sentences.add(words(finding.level()) + ". " + finding.evidence());
    if (finding.shareOfTrailing() != null) {
      sentences.add("It makes " + Numbers.percent(finding.shareOfTrailing()) + " of the trailing.");
    }
    if (finding.expectedRmsRadialArcsec() != null) {
      sentences.add(
          "Expect a radial RMS of "
              + Numbers.plain(finding.expectedRmsRadialArcsec())
              + " arcsec after it is mended.");
    }
    Block block = new Block(sentences, null, null, finding.action(), finding.caution());
    return new Section("finding-" + number, finding.title(), List.of(block));
  }

  private static void add(List<Judged> judged, String about, Judgement judgement) {
    if (judgement != null) {
      judged.add(new Judged(about, words(judgement.level()), judgement.text()));
    }
  }

  /** {@code fix-first} becomes {@code Fix first}. */
  private static String words(String level) {
    String plain = level.replace('-', ' ');
    return plain.isEmpty() ? plain : Character.toUpperCase(plain.charAt(0)) + plain.substring(1);
  }
}
