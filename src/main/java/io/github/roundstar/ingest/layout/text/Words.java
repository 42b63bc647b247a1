package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.Direction;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the words of a text mean, by the dictionary in {@code words.txt}: concepts such as {@code
 * ra}, {@code pulse}, {@code lost}. Case, accents and the way words are joined do not matter.
 */
public final class Words {
  private static final Map<String, Set<String>> EXACT = new HashMap<>();
  private static final Map<String, Set<String>> BEGINNINGS = new HashMap<>();
  private static final Map<String, Set<String>> ENDS = new HashMap<>();

  /** Words that are no phrases, in order. */
  private static final TreeSet<String> SINGLE = new TreeSet<>();

  /** What stands before the last word of phrases that may go on. */
  private static final Set<String> OPEN_PHRASES = new HashSet<>();

  private static final int LONGEST_PHRASE = 4;
  private static final int LONGEST_TEXT = 300;
  private static final int LONGEST_NAME = 60;
  private static final Pattern CUT = Pattern.compile("(\\p{L}{3,})\\.");
  private static final Pattern BLANKS = Pattern.compile(" +");
  private static final Pattern BRACKETS = Pattern.compile("[\\[\\](){}]");
  private static final int SHORTEST_STEM = 3;
  private static final int SHORTEST_GLUED_STEM = 5;

  /** Phrases as long as this are known without their blanks as well. */
  private static final int SHORTEST_COMPACT = 6;

  /** Concepts of which a word glued to another without a gap may be made. */
  private static final Set<String> GLUED =
      Set.of(
          "ra",
          "dec",
          "x",
          "y",
          "offset",
          "pulse",
          "sense",
          "length",
          "statistic",
          "place",
          "set point",
          "east",
          "west",
          "north",
          "south",
          "unit ms",
          "unit px",
          "unit arcsec",
          "unit s",
          "dither",
          "settling",
          "settled",
          "lost",
          "star",
          "time",
          "frame",
          "elapsed",
          "axis",
          "unit mas",
          "unit us");

  static {
    try (InputStream in = Words.class.getResourceAsStream("words.txt");
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.isBlank() && !line.startsWith("#")) {
          int colon = line.indexOf(':');
          for (String word : line.substring(colon + 1).split(",")) {
            enter(word.strip(), line.substring(0, colon));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void enter(String word, String concept) {
    boolean open = word.endsWith("~");
    boolean compound = word.startsWith("~");
    String stem = word.replace("~", "");
    Map<String, Set<String>> table = open ? BEGINNINGS : compound ? ENDS : EXACT;
    table.computeIfAbsent(stem, any -> new HashSet<>()).add(concept);
    if (stem.indexOf(' ') < 0 && !compound) {
      SINGLE.add(stem);
    }
    if (stem.indexOf(' ') > 0 && stem.length() >= SHORTEST_COMPACT) {
      EXACT.computeIfAbsent(stem.replace(" ", ""), any -> new HashSet<>()).add(concept);
    }
    if (open && stem.indexOf(' ') > 0) {
      OPEN_PHRASES.add(stem.substring(0, stem.lastIndexOf(' ') + 1));
    }
    if (open || compound) {
      EXACT.computeIfAbsent(stem, any -> new HashSet<>()).add(concept);
    }
  }

  /** Units that ordinary words end in. */
  private static final Set<String> AMBIGUOUS = Set.of("as", "min", "mins", "seg", "sec");

  private final List<String> tokens;
  private final Set<String> concepts = new HashSet<>();
  private final Map<String, Integer> longest = new HashMap<>();

  private Words(List<String> tokens) {
    this.tokens = tokens;
    List<String> parts = new ArrayList<>();
    for (String token : tokens) {
      parts.addAll(parts(token));
    }
    for (int i = 0; i < parts.size(); i++) {
      StringBuilder phrase = new StringBuilder();
      for (int length = 1; length <= LONGEST_PHRASE && i + length <= parts.size(); length++) {
        phrase.append(length == 1 ? "" : " ").append(parts.get(i + length - 1));
        Set<String> found = length == 1 ? meanings(phrase.toString()) : phrase(phrase.toString());
        concepts.addAll(found);
        int words = length;
        found.forEach(concept -> longest.merge(concept, words, Math::max));
      }
    }
  }

  /** The words of a text. */
  public static Words of(String text) {
    Words words = new Words(tokens(text));
    if (text.length() <= LONGEST_NAME && text.indexOf('.') > 0) {
      Matcher cut = CUT.matcher(text);
      while (cut.find()) {
        words.takeCut(cut.group(1).toLowerCase(Locale.ROOT));
      }
    }
    return words;
  }

  /** A word that was cut off, with a point behind it, means what all words mean that begin so. */
  private void takeCut(String beginning) {
    List<String> bare = tokens(beginning);
    if (bare.size() != 1 || !meanings(bare.get(0)).isEmpty()) {
      return;
    }
    Set<String> common = null;
    for (String word : SINGLE.tailSet(bare.get(0))) {
      if (!word.startsWith(bare.get(0))) {
        break;
      }
      common = common == null ? new HashSet<>(exact(word)) : common;
      common.retainAll(exact(word));
    }
    if (common != null) {
      concepts.addAll(common);
      common.forEach(concept -> longest.merge(concept, 1, Math::max));
    }
  }

  /** Words without accents, in lower case, parted where the case or the kind of sign changes. */
  public static List<String> tokens(String text) {
    StringBuilder plain = new StringBuilder();
    String whole = text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text;
    String signs = Normalizer.normalize(whole, Normalizer.Form.NFD);
    char before = ' ';
    for (int i = 0; i < signs.length(); i++) {
      char c = signs.charAt(i);
      if (Character.getType(c) == Character.NON_SPACING_MARK) {
        continue;
      }
      char next = i + 1 < signs.length() ? signs.charAt(i + 1) : ' ';
      boolean parts =
          Character.isLowerCase(before) && Character.isUpperCase(c)
              || Character.isUpperCase(before)
                  && Character.isUpperCase(c)
                  && Character.isLowerCase(next)
                  && next != 's'
              || Character.isLetter(before) && Character.isDigit(c)
              || Character.isDigit(before) && Character.isLetter(c);
      plain.append(parts ? " " : "").append(sign(c, next));
      before = c;
    }
    String lower = plain.toString().toLowerCase(Locale.ROOT).strip();
    return lower.isEmpty() ? List.of() : Arrays.asList(BLANKS.split(lower));
  }

  private static String sign(char c, char next) {
    return switch (c) {
      case '\u03b1', '\u0391' -> " alpha ";
      case '\u0394', '\u2206' -> " delta ";
      case '\u03b4' -> "RrDdAaXxYy\u03b1\u03b4".indexOf(next) >= 0 ? " delta " : " declgreek ";
      case '\u00df' -> "ss";
      case '\u0142', '\u0141' -> "l";
      case '\u03bc', '\u00b5' -> "u";
      case '"', '\u2033', '\u201d' -> " arcsec ";
      default -> Character.isLetterOrDigit(c) ? String.valueOf(c) : " ";
    };
  }

  private static Set<String> exact(String word) {
    return EXACT.getOrDefault(word, Set.of());
  }

  /** Meanings of several words, of which the last may go on as it likes. */
  private static Set<String> phrase(String words) {
    Set<String> exact = exact(words);
    int last = words.lastIndexOf(' ') + 1;
    if (!OPEN_PHRASES.contains(words.substring(0, last))) {
      return exact;
    }
    Set<String> all = new HashSet<>(exact);
    for (int end = last + 1; end < words.length(); end++) {
      all.addAll(BEGINNINGS.getOrDefault(words.substring(0, end), Set.of()));
    }
    return all;
  }

  private static Set<String> meanings(String word) {
    Set<String> all = new HashSet<>(exact(word));
    for (int end = SHORTEST_STEM; end < word.length(); end++) {
      all.addAll(BEGINNINGS.getOrDefault(word.substring(0, end), Set.of()));
    }
    for (int from = 1; from <= word.length() - SHORTEST_STEM; from++) {
      all.addAll(ENDS.getOrDefault(word.substring(from), Set.of()));
    }
    return all;
  }

  /** A word as it is if it is known, else the two known words that it is made of. */
  private static List<String> parts(String token) {
    if (token.length() < 2 || token.length() > 40 || !exact(token).isEmpty()) {
      return List.of(token);
    }
    List<String> glued = glued(token, 4);
    return glued.isEmpty() ? List.of(token) : glued;
  }

  /** Whether a name is one word made of known ones. */
  public static boolean areGlued(String name) {
    List<String> tokens = tokens(name);
    return tokens.size() == 1 && parts(tokens.get(0)).size() > 1;
  }

  private static List<String> glued(String token, int most) {
    for (int at = token.length() - 1; at > 0; at--) {
      String one = token.substring(0, at);
      String two = token.substring(at);
      boolean long2 = two.length() > 1 || "xy".contains(two);
      boolean long1 = one.length() > 1 || "dpxy".contains(one);
      if (long1 && long2 && isGlued(one)) {
        if (isGlued(two)) {
          return List.of(one, two);
        }
        List<String> rest = most > 2 ? glued(two, most - 1) : List.of();
        if (!rest.isEmpty()) {
          List<String> all = new ArrayList<>(List.of(one));
          all.addAll(rest);
          return all;
        }
      }
    }
    return List.of();
  }

  /** The unit that is glued to the end of a word. */
  public static Optional<String> gluedUnit(String token) {
    List<String> tokens = tokens(token);
    String last = tokens.isEmpty() ? "" : tokens.get(tokens.size() - 1);
    for (int at = 1; at < last.length() - 1; at++) {
      Optional<String> found = unit(last.substring(at));
      if (found.isPresent() && !AMBIGUOUS.contains(last.substring(at))) {
        if (!meanings(last.substring(0, at)).isEmpty()
            || !glued(last.substring(0, at), 4).isEmpty()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isGlued(String word) {
    Set<String> all = word.length() < SHORTEST_GLUED_STEM ? exact(word) : meanings(word);
    return all.stream().anyMatch(GLUED::contains);
  }

  /** Whether some word means this. */
  public boolean has(String concept) {
    return concepts.contains(concept);
  }

  /** Words of the longest phrase that means this; 0 if none does. */
  int longest(String concept) {
    return longest.getOrDefault(concept, 0);
  }

  /** Whether the very word stands there. */
  public boolean says(String word) {
    return tokens.contains(word);
  }

  /** Whether the words are one phrase with this meaning. */
  public boolean isJust(String concept) {
    return exact(String.join(" ", tokens)).contains(concept);
  }

  public boolean isEmpty() {
    return tokens.isEmpty();
  }

  public List<String> tokens() {
    return tokens;
  }

  /** Whether nothing that is said is of another kind. */
  public boolean hasAny(String... all) {
    return Arrays.stream(all).anyMatch(concepts::contains);
  }

  /** The one direction that the words name; a single letter counts where there is but one. */
  public Optional<Direction> direction(boolean eastIsO) {
    Set<Direction> found = new HashSet<>();
    for (Direction to : List.of(Direction.EAST, Direction.WEST, Direction.NORTH, Direction.SOUTH)) {
      if (has(to.word())) {
        found.add(to);
      }
    }
    if (found.isEmpty()) {
      for (int i = 0; i < tokens.size(); i++) {
        boolean joins = i > 0 && i + 1 < tokens.size() && of(tokens.get(i + 1)).hasAny("ra", "dec");
        if (!joins) { // a letter that joins two words, as in Polish, is none of the compass
          letter(tokens.get(i), eastIsO).ifPresent(found::add);
        }
      }
    }
    return found.size() == 1 ? Optional.of(found.iterator().next()) : Optional.empty();
  }

  /** 'r' for right ascension, 'd' for declination, 'x', 'y', or ' ' for none. */
  public char axis(boolean eastIsO) {
    boolean ra = has("ra");
    boolean dec = has("dec");
    if (ra != dec) {
      return ra ? 'r' : 'd';
    }
    if (has("x") != has("y") && !hasAny("statistic other")) {
      return has("x") ? 'x' : 'y';
    }
    Optional<Direction> to = direction(eastIsO);
    if (to.isPresent()) {
      return to.get() == Direction.EAST || to.get() == Direction.WEST ? 'r' : 'd';
    }
    boolean eastWest = has("east") && has("west");
    boolean northSouth = has("north") && has("south");
    return eastWest ? 'r' : northSouth ? 'd' : ' ';
  }

  /** The direction that a word or letter names in one of the languages of the dictionary. */
  public static Optional<Direction> direction(String text) {
    return of(text).direction(false);
  }

  /** The direction of a single letter. */
  public static Optional<Direction> letter(String token, boolean eastIsO) {
    return switch (token.toLowerCase(Locale.ROOT)) {
      case "e", "l" -> Optional.of(Direction.EAST);
      case "w" -> Optional.of(Direction.WEST);
      case "n" -> Optional.of(Direction.NORTH);
      case "s", "z" -> Optional.of(Direction.SOUTH);
      case "o" -> Optional.of(eastIsO ? Direction.EAST : Direction.WEST);
      default -> Optional.empty();
    };
  }

  /** The unit that a text is. */
  public static Optional<String> unit(String text) {
    String bare = BRACKETS.matcher(text).replaceAll("").strip();
    if (bare.isEmpty() || bare.length() > 20) {
      return Optional.empty();
    }
    if (bare.equals("\"") || bare.equals("''") || bare.equals("\u2033") || bare.equals("\u201d")) {
      return Optional.of("arcsec");
    }
    String words = String.join(" ", tokens(bare));
    for (String concept : exact(words)) {
      if (concept.startsWith("unit ")) {
        return Optional.of(concept.substring(5));
      }
    }
    return Optional.empty();
  }

  /** The month that a word begins as; 0 for none. */
  static int month(String word) {
    List<String> tokens = tokens(word);
    if (tokens.size() == 1) {
      for (String concept : meanings(tokens.get(0))) {
        if (concept.startsWith("month ")) {
          return Integer.parseInt(concept.substring(6));
        }
      }
    }
    return 0;
  }
}
