package io.github.roundstar.decisions;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** All that a user reads of a night, as plain sentences, beside the JSON. */
final class NightTexts {
  private static final Pattern UNSEEN =
      Pattern.compile("(?s)<(script|style|svg|head)\\b.*?</\\1>|<!--.*?-->");

  /** Where the page begins to explain how figures are made and what words mean. */
  private static final Pattern REFERENCE =
      Pattern.compile("(?s)<summary>\\s*(How each figure was made|Words on this page).*");

  /** What the eye parts: blocks, list items, cells. */
  private static final Pattern BLOCK =
      Pattern.compile(
          "</?(p|div|li|h[1-6]|tr|td|th|section|details|summary|ol|ul|dl|dt|dd|figure|figcaption|"
              + "header|footer|nav|main|table|caption|br|button|output)\\b[^>]*>");

  private static final Pattern H1 = Pattern.compile("(?s)<h1\\b[^>]*>(.*?)</h1>");
  private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.!?;:])\\s+");

  private final ToldLadder told;
  private final String html;
  private final List<String> page;
  private final List<String> terminal;
  private final List<String> index;

  /**
   * @param html the night's page
   * @param terminal lines as a terminal shows them
   * @param indexRow the night's row on the page of all nights, as HTML; empty if there is none
   */
  NightTexts(ToldLadder told, String html, List<String> terminal, String indexRow) {
    this.told = told;
    this.html = html;
    this.page = sentences(REFERENCE.matcher(html).replaceFirst(""));
    this.terminal = sentences(String.join(" ", terminal).replaceAll("\\s+", " "));
    this.index = sentences(indexRow);
  }

  ToldLadder told() {
    return told;
  }

  JsonNode json() {
    return told.json();
  }

  /** Sentences of the page. */
  List<String> page() {
    return page;
  }

  /** Sentences of the terminal's lines, joined over line ends. */
  List<String> terminal() {
    return terminal;
  }

  /** Cells of the night's row in the index. */
  List<String> index() {
    return index;
  }

  /** All sentences, with those that the JSON tells the page. */
  List<String> all() {
    List<String> all = new ArrayList<>(page);
    all.addAll(terminal);
    all.addAll(index);
    return all;
  }

  /** The page's first line. */
  String headline() {
    Matcher matcher = H1.matcher(html);
    return matcher.find() ? plain(matcher.group(1)).strip() : "";
  }

  /** Points of the list that follows "Do this next". */
  List<String> steps() {
    Matcher matcher =
        Pattern.compile("(?is)do this next.{0,400}?<ol\\b[^>]*>(.*?)</ol>").matcher(html);
    List<String> steps = new ArrayList<>();
    if (matcher.find()) {
      for (String item : matcher.group(1).split("<li\\b[^>]*>")) {
        if (!plain(item).isBlank()) {
          steps.add(plain(item).strip());
        }
      }
    }
    return steps;
  }

  private static List<String> sentences(String html) {
    List<String> sentences = new ArrayList<>();
    for (String block :
        BLOCK.matcher(UNSEEN.matcher(html).replaceAll("\n")).replaceAll("\n").split("\n")) {
      for (String sentence : SENTENCE_END.split(plain(block).strip())) {
        if (!sentence.isBlank()) {
          sentences.add(sentence.strip());
        }
      }
    }
    return sentences;
  }

  /** Without tags and character references. */
  static String plain(String html) {
    return html.replaceAll("<[^>]+>", "")
        .replace("&#39;", "'")
        .replace("&quot;", "\"")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&nbsp;", " ")
        .replace('\u00a0', ' ')
        .replace('\u2212', '-')
        .replace("&amp;", "&")
        .replaceAll("\\s+", " ");
  }

  static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
