package io.github.roundstar.dialects;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Whole phrases of one language for columns, settings and events: names as people write them, with
 * their units, abbreviations and ways to join words. They come from other hands than the words of
 * {@link Tongue}.
 */
public final class Phrases {
  /** Who wrote the phrases. */
  public enum Hand {
    /** Of {@code phrases.tsv}, whose phrases have been looked at. */
    THIRD("phrases.tsv"),
    /** Of {@code more-phrases.tsv}. */
    FOURTH("more-phrases.tsv");

    private final Map<String, Map<String, List<String>>> byLanguage;

    Hand(String file) {
      byLanguage = read(file);
    }
  }

  /** Phrases that may be looked at, and those that are kept for the last count. */
  public enum Half {
    /** All phrases. */
    ALL,
    /** The first, third, fifth ... of each concept. */
    SEEN,
    /** The second, fourth, sixth ... of each concept. */
    HELD_OUT
  }

  private static final Map<String, Tongue> TONGUES =
      Map.of(
          "en", Tongue.ENGLISH,
          "de", Tongue.GERMAN,
          "fr", Tongue.FRENCH,
          "es", Tongue.SPANISH,
          "it", Tongue.ITALIAN,
          "pt", Tongue.PORTUGUESE,
          "nl", Tongue.DUTCH,
          "pl", Tongue.ENGLISH); // whose sentences are English, and whose words are Polish

  /** Concepts of the phrases by the keys of {@link Tongue}. */
  private static final Map<String, String> CONCEPTS =
      Map.ofEntries(
          Map.entry("snr", "snr"),
          Map.entry("flux", "brightness"),
          Map.entry("peak", "peak"),
          Map.entry("fwhm", "star-width"),
          Map.entry("temperature", "temperature"),
          Map.entry("frame", "frame-number"),
          Map.entry("scale", "pixel-scale"),
          Map.entry("focal", "focal-length"),
          Map.entry("pixelsize", "pixel-size"),
          Map.entry("exposureset", "exposure-time"),
          Map.entry("exposure", "exposure-time"),
          Map.entry("declination", "declination"),
          Map.entry("pier", "pier-side"),
          Map.entry("rate", "guide-rate"),
          Map.entry("gain", "gain-ra"),
          Map.entry("dither", "dither"),
          Map.entry("settling", "settling-began"),
          Map.entry("settled", "settling-ended"),
          Map.entry("lost", "star-lost"),
          Map.entry("flip", "flip"),
          Map.entry("start", "guiding-started"),
          Map.entry("end", "guiding-stopped"),
          Map.entry("way", "pulse-direction"));

  private static final Map<String, Pattern> UNITS = new LinkedHashMap<>();

  static {
    UNITS.put(
        "arcsec",
        Pattern.compile(
            "[\"\u2033]|''|arc"
                + " ?s|\\barc\\b|\\barco\\b|\\bas\\b|bogens|bsek|boog|\u0142uku|luku|arcosec|arcseg|arcosseg|seconds"
                + " of arc"));
    UNITS.put("px", Pattern.compile("\\bpx\\b|pix|p\u00edx|piks|beeldpunt|bildpunkt|\\bpel\\b"));
    UNITS.put("us", Pattern.compile("\\b[\u00b5u]s\\b|micro|mikro"));
    UNITS.put("ms", Pattern.compile("\\bms\\b|msec|mill?i|tausendstel|1/1000|thousandth"));
    UNITS.put("s", Pattern.compile("\\bs\\b|\\bsec|\\bsek|\\bseg|\\bsecond"));
  }

  private final Tongue tongue;
  private final Map<String, List<String>> byConcept;

  private Phrases(Tongue tongue, Map<String, List<String>> byConcept) {
    this.tongue = tongue;
    this.byConcept = byConcept;
  }

  private static Map<String, Map<String, List<String>>> read(String file) {
    Map<String, Map<String, List<String>>> all = new LinkedHashMap<>();
    try (InputStream in = Phrases.class.getResourceAsStream(file);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        String[] parts = line.split("\t", 3);
        if (!line.startsWith("#") && parts.length == 3) {
          all.computeIfAbsent(parts[0], any -> new LinkedHashMap<>())
              .computeIfAbsent(parts[1], any -> new ArrayList<>())
              .add(parts[2]);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  /** The phrases of one of the languages. */
  static Phrases of(Hand hand, Half half, Random random) {
    List<String> languages = List.copyOf(hand.byLanguage.keySet());
    String language = languages.get(random.nextInt(languages.size()));
    Map<String, List<String>> kept = new LinkedHashMap<>();
    hand.byLanguage
        .get(language)
        .forEach(
            (concept, all) -> {
              List<String> some = new ArrayList<>();
              for (int i = 0; i < all.size(); i++) {
                if (half == Half.ALL || i % 2 == (half == Half.SEEN ? 0 : 1)) {
                  some.add(all.get(i));
                }
              }
              kept.put(concept, some);
            });
    return new Phrases(TONGUES.get(language), kept);
  }

  /** The tongue of sentences around them. */
  Tongue tongue() {
    return tongue;
  }

  /** All phrases for a concept. */
  List<String> all(String concept) {
    return byConcept.getOrDefault(concept, List.of());
  }

  /** The concept for a key of {@link Tongue}; empty if there is none. */
  static String concept(String key) {
    return CONCEPTS.getOrDefault(key, "");
  }

  /** A number for phrases that belong together, such as those of the two axes. */
  int index(String concept, Random random, Predicate<String> fits) {
    List<Integer> fitting = new ArrayList<>();
    List<String> all = all(concept);
    for (int i = 0; i < all.size(); i++) {
      if (fits.test(all.get(i))) {
        fitting.add(i);
      }
    }
    return fitting.isEmpty() ? -1 : fitting.get(random.nextInt(fitting.size()));
  }

  /** The unit that a phrase tells; empty for none. */
  static String unit(String phrase) {
    String parted =
        phrase
            .replaceAll("(?<=\\p{Ll})(?=\\p{Lu})", " ")
            .replaceAll("_", " ")
            .toLowerCase(Locale.ROOT);
    for (Map.Entry<String, Pattern> unit : UNITS.entrySet()) {
      if (unit.getValue().matcher(parted).find()) {
        return unit.getKey();
      }
    }
    return "";
  }

  /** Whether a phrase tells nothing of signs or of numbers that the log may have otherwise. */
  static boolean isPlain(String phrase) {
    return !phrase.matches(".*[+%\u2030].*|.*\\d[.,]\\d.*");
  }
}
