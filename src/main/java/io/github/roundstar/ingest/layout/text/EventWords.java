package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.EventRule.Kind;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What words say of what happened: the star lost, the set point moved, settling, a flip. */
public final class EventWords {
  /** In the order in which they are tried: the end of settling names settling too. */
  public static final Map<String, Kind> KINDS = new LinkedHashMap<>();

  static {
    KINDS.put("settled", Kind.GUIDING);
    KINDS.put("flip", Kind.FLIP);
    KINDS.put("lost", Kind.LOST);
    KINDS.put("dither", Kind.DITHER);
    KINDS.put("settling", Kind.SETTLING);
    KINDS.put("idle", Kind.IDLE);
    KINDS.put("guiding", Kind.GUIDING);
  }

  private EventWords() {}

  /** What words say. */
  public static Optional<Kind> kind(Words words) {
    if (words.has("found") && !words.has("settled")) {
      return Optional.empty(); // the rows tell that the star is back; it may still be settling
    }
    if (words.has("settled") && words.has("idle")) {
      return Optional.of(Kind.SETTLING); // waiting until it is calm
    }
    Kind best = null;
    int longest = 0;
    for (Map.Entry<String, Kind> entry : KINDS.entrySet()) {
      if (words.longest(entry.getKey()) > longest) {
        longest = words.longest(entry.getKey());
        best = entry.getValue();
      }
    }
    return Optional.ofNullable(best);
  }

  /** What a word or line says. */
  public static Optional<Kind> of(String text) {
    return kind(Words.of(text));
  }

  /** The word of a line that means something, as it is written; empty if none does. */
  public static String label(String line, String concept) {
    Matcher word = Pattern.compile("\\p{L}+(?: \\p{L}+)?").matcher(line);
    for (int from = 0; word.find(from); from = word.start() + 1) {
      for (String text : List.of(word.group().split(" ")[0], word.group())) {
        if (Words.of(text).has(concept)) {
          return text;
        }
      }
    }
    return "";
  }

  /** The key of a text in JSON. */
  private static final String KEY = "\"[^\"]{1,60}\"\\s*:";

  private static final Pattern SPEECH = Pattern.compile("\\p{L}[^0-9#*=:;|\\[\\]{}<>\"]*");

  /** The longest stretch of words without numbers that says what happened. */
  public static String stretch(String line) {
    String best = "";
    Matcher speech =
        SPEECH.matcher(
            line.replaceAll(KEY, " ")
                .replaceFirst("^[^\\p{L}]*[0-9][0-9T:.,Z+\u2212-]*(?: ?[AaPp]\\.?[Mm]\\.?)?", ""));
    while (speech.find()) {
      String text = speech.group().replaceAll("[\\s,.+(\u2212-]+$", "");
      boolean better =
          of(text).isPresent() == of(best).isPresent()
              ? text.length() > best.length()
              : of(text).isPresent();
      best = better ? text : best;
    }
    return best;
  }
}
