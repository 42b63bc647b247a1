package io.github.roundstar.report.chart;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.regex.Pattern;

/**
 * Makes the SVG writer's output fit the page. A strict Content-Security-Policy forbids {@code
 * style} attributes (their shapes would show black), so each becomes presentation attributes;
 * colours become the page's variables; fonts, clips, wrappers and defaults go; a title and a
 * description are put in. Every text gets the length it was placed with, so that the wider letters
 * of another font are set closer instead of running over their neighbours.
 *
 * @see "SVG 2, W3C Candidate Recommendation 2018, sections 6.6 (presentation attributes) and 13.6.3
 *     (a stroke of no length shows its caps) and 11.5 (textLength)"
 */
final class SvgStep {
  private static final Pattern ENTITY = Pattern.compile("&[^;]+;");

  /** Set by the page's style sheet, or without effect here. */
  private static final Set<String> DROPPED =
      Set.of("font-family", "font-size", "stroke-miterlimit", "shape-rendering", "clip-path");

  private final String raw;
  private final ToIntFunction<String> widths;
  private final StringBuilder out;
  private Map<String, String> outer = Map.of();

  private SvgStep(String raw, ToIntFunction<String> widths) {
    this.raw = raw;
    this.widths = widths;
    this.out = new StringBuilder(raw.length());
  }

  /**
   * The element, ready for the page.
   *
   * @param widths of texts, in the font they were placed with [px]
   * @param data names and values of {@code data-} attributes for the page's script
   */
  static Svg of(String raw, Sheet sheet, ToIntFunction<String> widths, Map<String, String> data) {
    SvgStep step = new SvgStep(raw, widths);
    step.open(sheet, data);
    step.content(raw.indexOf('>') + 1);
    return new Svg(step.out.append("</svg>").toString(), sheet.shape(), sheet.title());
  }

  /**
   * At most two decimals, no trailing zeros; one from ten on, where only pixels are meant: no
   * screen shows a twentieth of one.
   */
  static String decimals(double value) {
    long hundredths = Math.abs(value) < 10 ? Math.round(value * 100) : 10 * Math.round(value * 10);
    long size = Math.abs(hundredths);
    StringBuilder digits = new StringBuilder(8);
    if (hundredths < 0) {
      digits.append('-');
    }
    digits.append(size / 100);
    long rest = size % 100;
    if (rest != 0) {
      digits.append('.').append(rest / 10);
      if (rest % 10 != 0) {
        digits.append(rest % 10);
      }
    }
    return digits.toString();
  }

  private void open(Sheet sheet, Map<String, String> data) {
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart ")
        .append(sheet.shape())
        .append("\" viewBox=\"0 0 ")
        .append(sheet.width())
        .append(' ')
        .append(sheet.height())
        .append("\" role=\"img\" aria-labelledby=\"")
        .append(sheet.id())
        .append("-t ")
        .append(sheet.id())
        .append("-d\"");
    data.forEach(
        (name, value) ->
            out.append(" data-").append(name).append("='").append(escaped(value)).append('\''));
    out.append("><title id=\"")
        .append(sheet.id())
        .append("-t\">")
        .append(escaped(sheet.title()))
        .append("</title><desc id=\"")
        .append(sheet.id())
        .append("-d\">")
        .append(escaped(sheet.description()))
        .append("</desc>");
  }

  /** Walks over tags and the text between them; the writer wraps single elements in groups. */
  private void content(int from) {
    int defs = raw.startsWith("<defs>", from) ? raw.indexOf("</defs>", from) + 7 : from;
    int at = defs;
    while (at < raw.length()) {
      if (raw.charAt(at) != '<') {
        int next = raw.indexOf('<', at);
        out.append(raw, at, next);
        at = next;
        continue;
      }
      int end = raw.indexOf('>', at);
      tag(
          raw.substring(at + 1, end),
          raw.substring(end + 1, Math.max(end + 1, raw.indexOf('<', end))));
      at = end + 1;
    }
  }

  private void tag(String inside, String text) {
    if (inside.startsWith("/")) {
      if (!inside.equals("/g") && !inside.equals("/svg")) {
        out.append('<').append(inside).append('>');
      }
      return;
    }
    boolean empty = inside.endsWith("/");
    int nameEnd = inside.indexOf(' ');
    String name = nameEnd < 0 ? inside : inside.substring(0, nameEnd);
    Map<String, String> attributes =
        nameEnd < 0 ? new LinkedHashMap<>() : attributes(inside, nameEnd + 1);
    if (name.equals("g")) {
      outer = attributes;
      return;
    }
    outer.forEach(attributes::putIfAbsent);
    outer = Map.of();
    out.append('<').append(name);
    attributes.forEach((key, value) -> attribute(key, value));
    if (name.equals("text")) {
      attribute(
          "textLength", String.valueOf(widths.applyAsInt(ENTITY.matcher(text).replaceAll("&"))));
      attribute("lengthAdjust", "spacingAndGlyphs");
    }
    out.append(empty ? "/>" : ">");
  }

  private void attribute(String key, String value) {
    String shown = key.equals("d") ? dotted(value) : value;
    out.append(' ').append(key).append("=\"").append(shown).append('"');
  }

  private static Map<String, String> attributes(String inside, int from) {
    Map<String, String> result = new LinkedHashMap<>();
    int at = from;
    for (int equals; (equals = inside.indexOf("='", at)) >= 0; ) {
      int end = inside.indexOf('\'', equals + 2);
      String name = inside.substring(at, equals).trim();
      String value = inside.substring(equals + 2, end);
      if (name.equals("style")) {
        style(value, result);
      } else if (!DROPPED.contains(name)) {
        result.put(name, value);
      }
      at = end + 1;
    }
    return result;
  }

  private static void style(String value, Map<String, String> result) {
    for (String declaration : value.split(";")) {
      int colon = declaration.indexOf(':');
      if (colon < 0) {
        continue;
      }
      String name = declaration.substring(0, colon).trim();
      String shown = shown(name, declaration.substring(colon + 1).trim());
      if (!DROPPED.contains(name) && !shown.isEmpty()) {
        result.put(name, shown);
      }
    }
  }

  /** The value as it goes out; empty when it is the default. */
  private static String shown(String name, String value) {
    if (value.startsWith("rgb(")) {
      return Ink.variable(value);
    }
    if (name.endsWith("-opacity")) {
      double opacity = Double.parseDouble(value);
      return opacity >= 1 ? "" : decimals(opacity);
    }
    return value.equals("none") && name.equals("stroke") ? "" : value;
  }

  /** {@code M3,4L3,4} becomes {@code M3,4h0}. */
  private static String dotted(String d) {
    StringBuilder result = new StringBuilder(d.length());
    int at = 0;
    while (at < d.length()) {
      int next = at + 1;
      while (next < d.length() && d.charAt(next) < 'A') {
        next++;
      }
      int length = next - at - 1;
      boolean dot =
          d.charAt(at) == 'M'
              && next < d.length()
              && d.charAt(next) == 'L'
              && d.regionMatches(at + 1, d, next + 1, length)
              && (next + 1 + length == d.length() || d.charAt(next + 1 + length) >= 'A');
      result.append(d, at, next);
      if (dot) {
        result.append("h0");
        next += 1 + length;
      }
      at = next;
    }
    return result.toString();
  }

  static String escaped(String text) {
    StringBuilder result = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> result.append("&amp;");
        case '<' -> result.append("&lt;");
        case '>' -> result.append("&gt;");
        case '\'' -> result.append("&#39;");
        default -> result.append(c);
      }
    }
    return result.toString();
  }
}
