package io.github.roundstar.dialects;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.dialects.Obstacle.Aspect;
import io.github.roundstar.dialects.Truth.Event;
import io.github.roundstar.dialects.Truth.Frame;
import java.nio.charset.Charset;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The generator of invented logs says the truth about them: read back here by small readers that
 * know each family's recipe and share no code with it.
 */
@Tag("identity")
class DialectsTest {

  // ------------------------------------------------------------------ the generator as a whole

  @Test
  void theSameSeedGivesTheSameBytesAndTruth() {
    for (long seed = 0; seed < 40; seed++) {
      DialectLog one = Dialect.of(seed);
      DialectLog two = Dialect.of(seed);
      assertThat(one.bytes()).as("seed %d", seed).isEqualTo(two.bytes());
      assertThat(one.truth()).isEqualTo(two.truth());
    }
  }

  @Test
  void anotherSeedGivesAnotherLog() {
    Set<String> texts = new HashSet<>();
    for (long seed = 0; seed < 40; seed++) {
      DialectLog log = Dialect.of(seed);
      if (!log.notGuiding()) {
        assertThat(texts.add(log.text())).as("seed %d", seed).isTrue();
      }
    }
  }

  @Test
  void theHostsLocaleDoesNotMatter() {
    byte[][] before = new byte[15][];
    for (int seed = 0; seed < before.length; seed++) {
      before[seed] = Dialect.of(seed).bytes();
    }
    Locale own = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      for (int seed = 0; seed < before.length; seed++) {
        assertThat(Dialect.of(seed).bytes()).as("seed %d", seed).isEqualTo(before[seed]);
      }
    } finally {
      Locale.setDefault(own);
    }
  }

  @Test
  void everyObstacleAndEveryTongueOccurs() {
    Set<Obstacle> obstacles = EnumSet.noneOf(Obstacle.class);
    Set<Tongue> tongues = EnumSet.noneOf(Tongue.class);
    for (int seed = 0; seed < 8000; seed++) {
      Recipe recipe = Dialect.recipe(new Random(seed));
      obstacles.addAll(recipe.obstacles);
      tongues.add(recipe.tongue);
    }
    assertThat(obstacles).containsExactlyInAnyOrder(Obstacle.values());
    assertThat(tongues).containsExactlyInAnyOrder(Tongue.values());
  }

  @Test
  void aLogCarriesOneObstacleOfAnAspectAndOneOpenFactThatCountsAtMost() {
    int open = 0;
    for (int seed = 0; seed < 8000; seed++) {
      Recipe recipe = Dialect.recipe(new Random(seed));
      assertThat(recipe.obstacles)
          .as("seed %d", seed)
          .extracting(Obstacle::aspect)
          .doesNotHaveDuplicates();
      long facts = recipe.open().stream().filter(OpenFact::changesFigures).count();
      boolean meant = recipe.obstacles.stream().anyMatch(o -> o.aspect() == Aspect.OPEN);
      assertThat(facts)
          .as("seed %d %s %s", seed, recipe.obstacles, recipe.open())
          .isLessThanOrEqualTo(meant ? 1 : 0);
      open += facts > 0 ? 1 : 0;
    }
    assertThat(open).as("logs with an open fact of 8000").isBetween(300, 2000);
  }

  @Test
  void thereAreAHundredObstaclesAndMore() {
    assertThat(Obstacle.values()).hasSizeGreaterThan(150);
  }

  // ------------------------------------------------------------------ one obstacle alone

  @ParameterizedTest
  @EnumSource(Obstacle.class)
  void oneObstacleAloneLeavesItsOwnFactOpenAndNoOther(Obstacle obstacle) {
    DialectLog log = obstacle.alone(5);
    assertThat(log.obstacles()).containsExactly(obstacle);
    assertThat(log.openFacts()).as(log.toString()).hasSizeLessThanOrEqualTo(2);
    assertThat(log.answers().keySet()).isEqualTo(log.openFacts());
    if (obstacle.aspect() == Aspect.OPEN) {
      assertThat(log.openFacts()).hasSize(1);
    } else {
      assertThat(log.answerable()).as(log.toString()).isTrue();
    }
    Truth truth = log.truth().orElseThrow();
    assertThat(truth.frames()).hasSizeBetween(100, 1500);
    assertThat(truth.raRmsArcsec()).isBetween(0.1, 3.0);
    assertThat(truth.decRmsArcsec()).isBetween(0.1, 3.0);
    double before = -1;
    for (Frame frame : truth.frames()) {
      assertThat(frame.seconds()).as(log.toString()).isGreaterThan(before);
      before = frame.seconds();
    }
    assertThat(before).isLessThan(12 * 3600);
  }

  @Test
  void theBytesAreTheTextInTheNamedEncoding() {
    assertDecodes(Obstacle.BYTE_ORDER_MARK.alone(3), "UTF-8", 3);
    assertDecodes(Obstacle.UTF_16_LITTLE_ENDIAN.alone(3), "UTF-16LE", 2);
    assertDecodes(Obstacle.UTF_16_BIG_ENDIAN.alone(3), "UTF-16BE", 2);
    assertDecodes(Obstacle.LATIN_1.alone(3), "ISO-8859-1", 0);
    for (long seed = 0; seed < 40; seed++) {
      DialectLog log = Dialect.of(seed);
      if (log.obstacles().contains(Obstacle.LATIN_1)) {
        assertDecodes(log, "ISO-8859-1", 0);
      }
    }
  }

  private static void assertDecodes(DialectLog log, String charset, int mark) {
    byte[] bytes = log.bytes();
    assertThat(new String(bytes, mark, bytes.length - mark, Charset.forName(charset)))
        .as(log.toString())
        .isEqualTo(log.text());
  }

  // ------------------------------------------------------------------ words

  @ParameterizedTest
  @EnumSource(value = Tongue.class, names = "GREEK", mode = EnumSource.Mode.EXCLUDE)
  void everyTongueHasItsOwnWords(Tongue tongue) {
    for (String key :
        new String[] {
          "ra",
          "dec",
          "offset",
          "pulse",
          "time",
          "settling",
          "lost",
          "scale",
          "s.sign",
          "s.unit",
          "remarks"
        }) {
      assertThat(tongue.words(key)).as("%s %s", tongue, key).isNotEmpty();
      if (tongue != Tongue.ENGLISH && !key.equals("dec") && !key.equals("ra")) {
        assertThat(tongue.words(key))
            .as("%s %s", tongue, key)
            .isNotEqualTo(Tongue.ENGLISH.words(key));
      }
    }
    assertThat(tongue.words("months").get(0).split(" ")).hasSize(12).doesNotHaveDuplicates();
    assertThat(tongue.words("longmonths").get(0).split(" ")).hasSize(12).doesNotHaveDuplicates();
    assertThat(Arrays.stream(Tongue.Way.values()).map(tongue::letter)).doesNotHaveDuplicates();
  }

  @Test
  void theWordsOfATongueStandInItsLogs() {
    Map<Obstacle, String> word =
        Map.of(
            Obstacle.GERMAN, "(?s).*(Abweichung|Fehler|Ablage|Versatz|Abw).*",
            Obstacle.FRENCH, "(?s).*(écart|erreur|déviation|décalage).*",
            Obstacle.SPANISH, "(?s).*(desviación|error|desvío|desplazamiento).*",
            Obstacle.ITALIAN, "(?s).*(scarto|errore|deviazione|scostamento).*",
            Obstacle.PORTUGUESE, "(?s).*(desvio|erro|afastamento|deslocamento).*",
            Obstacle.DUTCH, "(?s).*(afwijking|fout|verschuiving|afstand).*",
            Obstacle.GREEK_LETTERS, "(?s).*(α.*δ).*");
    word.forEach(
        (obstacle, pattern) ->
            assertThat(obstacle.alone(2).text())
                .as(obstacle.toString())
                .matches(
                    Pattern.compile(pattern, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)));
  }

  @Test
  void withoutAccentsNoneIsLeft() {
    for (long seed = 0; seed < 10; seed++) {
      assertThat(Obstacle.NO_ACCENTS.alone(seed).text().replaceAll("[°]", ""))
          .matches("\\p{ASCII}*");
    }
  }

  // ------------------------------------------------------------------ read back by small readers

  /** What a small reader found in a row; NaN where nothing stands. */
  private record Row(double ra, double dec, double raPulse, double decPulse) {}

  private static void assertSame(DialectLog log, List<Row> rows, double toArcsec) {
    List<Frame> frames = log.truth().orElseThrow().frames();
    assertThat(rows).as(log.toString()).hasSameSizeAs(frames);
    for (int k = 0; k < rows.size(); k++) {
      Frame frame = frames.get(k);
      Row row = rows.get(k);
      String where = log + " row " + k;
      assertThat(Double.isNaN(row.ra())).as(where).isEqualTo(frame.missing());
      if (!frame.missing()) {
        assertThat(row.ra() * toArcsec).as(where).isCloseTo(frame.raArcsec(), within(1e-9));
        assertThat(row.dec() * toArcsec).as(where).isCloseTo(frame.decArcsec(), within(1e-9));
      }
      assertThat(Double.valueOf(row.raPulse()))
          .as(where)
          .isEqualTo(Double.valueOf(frame.raPulseMillis()));
      assertThat(Double.valueOf(row.decPulse()))
          .as(where)
          .isEqualTo(Double.valueOf(frame.decPulseMillis()));
    }
  }

  private static List<Row> rows(DialectLog log, Function<String, Row> reader) {
    List<Row> rows = new ArrayList<>();
    for (String line : log.text().split("\r?\n")) {
      Row row = reader.apply(line);
      if (row != null) {
        rows.add(row);
      }
    }
    return rows;
  }

  private static double value(String text) {
    return text.isBlank() || text.equals("null")
        ? Double.NaN
        : Double.parseDouble(text.strip().replace(',', '.').replace('\u2212', '-'));
  }

  /** Reads rows of time, two offsets, two pulses, signal, split by a pattern. */
  private static Function<String, Row> split(String delimiter) {
    return line -> {
      String[] c = line.split(delimiter, -1);
      return c.length >= 5 && c[0].matches("\\d{4}-.*")
          ? new Row(value(c[1]), value(c[2]), value(c[3]), value(c[4]))
          : null;
    };
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void delimitedLogsHoldTheTruth(long seed) {
    assertSame(Dialect.plain(seed), rows(Dialect.plain(seed), split(",")), 1);
    Map<Obstacle, String> delimiters =
        Map.of(
            Obstacle.SEMICOLONS, ";",
            Obstacle.TABS, "\t",
            Obstacle.PIPES, "\\|",
            Obstacle.COMMA_AND_BLANK, ", ",
            Obstacle.DECIMAL_COMMA, ";",
            Obstacle.DECIMAL_COMMA_BETWEEN_COMMAS, ", ",
            Obstacle.MINUS_SIGN_OF_UNICODE, ",",
            Obstacle.PLUS_SIGNS, ",",
            Obstacle.SCIENTIFIC_DIGITS, ",",
            Obstacle.NINE_DECIMALS, ",");
    delimiters.forEach(
        (obstacle, delimiter) ->
            assertSame(obstacle.alone(seed), rows(obstacle.alone(seed), split(delimiter)), 1));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void jsonAndKeysHoldTheTruth(long seed) {
    for (Obstacle obstacle :
        List.of(
            Obstacle.JSON_LINES,
            Obstacle.KEY_EQUALS_VALUE,
            Obstacle.KEY_EQUALS_VALUE_COMMA,
            Obstacle.KEY_COLON_VALUE)) {
      DialectLog log = obstacle.alone(seed);
      assertSame(
          log,
          rows(
              log,
              line ->
                  line.contains("ra_pulse_ms")
                      ? new Row(
                          keyed(line, "ra_offset_arcsec"),
                          keyed(line, "dec_offset_arcsec"),
                          keyed(line, "ra_pulse_ms"),
                          keyed(line, "dec_pulse_ms"))
                      : null),
          1);
    }
  }

  private static double keyed(String line, String key) {
    Matcher matcher = Pattern.compile("(^|[ ,{\"])" + key + "\"?[=:] ?(-?[0-9.]+)").matcher(line);
    return matcher.find() ? Double.parseDouble(matcher.group(2)) : Double.NaN;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void proseHoldsTheTruth(long seed) {
    DialectLog log = Obstacle.PROSE.alone(seed);
    Pattern sentence =
        Pattern.compile(
            ".*: star ([0-9.]+) arcsec (east|west) and ([0-9.]+) arcsec (north|south) of its mark; mount pushed (\\d+) ms (east|west), (\\d+) ms (north|south)");
    assertSame(
        log,
        rows(
            log,
            line -> {
              Matcher m = sentence.matcher(line);
              return m.matches()
                  ? new Row(toward(m, 1), toward(m, 3), toward(m, 5), toward(m, 7))
                  : null;
            }),
        1);
  }

  private static double toward(Matcher m, int group) {
    boolean minus = m.group(group + 1).matches("west|south");
    double size = Double.parseDouble(m.group(group));
    return minus && size != 0 ? -size : size;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void lettersAndWordsOfPulsesMeanWhereTheMountIsPushed(long seed) {
    for (Obstacle obstacle :
        List.of(
            Obstacle.LETTER_BEHIND_PULSE,
            Obstacle.LETTER_BEFORE_PULSE,
            Obstacle.LETTER_BEHIND_PULSE_WITH_BLANK)) {
      DialectLog log = obstacle.alone(seed);
      assertSame(log, rows(log, line -> lettered(line.split(",", -1))), 1);
    }
    DialectLog beside = Obstacle.DIRECTION_AS_WORD.alone(seed);
    assertSame(
        beside,
        rows(
            beside,
            line -> {
              String[] c = line.split(",", -1);
              return c[0].matches("\\d{4}-.*")
                  ? new Row(
                      value(c[1]),
                      value(c[2]),
                      value(c[3]) * (c[4].equals("west") ? -1 : 1),
                      value(c[5]) * (c[6].equals("south") ? -1 : 1))
                  : null;
            }),
        1);
    DialectLog apart = Obstacle.FOUR_PULSE_COLUMNS.alone(seed);
    assertThat(apart.text()).contains("pulse_east_ms,pulse_west_ms,pulse_north_ms,pulse_south_ms");
    assertSame(
        apart,
        rows(
            apart,
            line -> {
              String[] c = line.split(",", -1);
              return c[0].matches("\\d{4}-.*")
                  ? new Row(
                      value(c[1]),
                      value(c[2]),
                      value(c[3]) - value(c[4]),
                      value(c[5]) - value(c[6]))
                  : null;
            }),
        1);
  }

  private static Row lettered(String[] c) {
    if (!c[0].matches("\\d{4}-.*")) {
      return null;
    }
    double[] pulses = new double[2];
    for (int p = 0; p < 2; p++) {
      String cell = c[3 + p];
      pulses[p] =
          Double.parseDouble(cell.replaceAll("[A-Z ]", "")) * (cell.matches(".*[WS].*") ? -1 : 1);
    }
    return new Row(value(c[1]), value(c[2]), pulses[0], pulses[1]);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void signsOfPulsesAreWhatTheSentenceSays(long seed) {
    DialectLog mount = Obstacle.PULSE_SIGN_OF_MOUNT_TOLD.alone(seed);
    Matcher m =
        Pattern.compile("positive correction pushes the mount (east|west) / (north|south)")
            .matcher(mount.text());
    assertThat(m.find()).isTrue();
    int ra = m.group(1).equals("east") ? 1 : -1;
    int dec = m.group(2).equals("north") ? 1 : -1;
    assertSame(mount, rows(mount, line -> signed(split(",").apply(line), ra, dec)), 1);
    DialectLog star = Obstacle.PULSE_SIGN_OF_STAR_TOLD.alone(seed);
    Matcher s =
        Pattern.compile("positive correction pushes the star (east|west) / (north|south)")
            .matcher(star.text());
    assertThat(s.find()).isTrue();
    int raStar = s.group(1).equals("west") ? 1 : -1;
    int decStar = s.group(2).equals("south") ? 1 : -1;
    assertSame(star, rows(star, line -> signed(split(",").apply(line), raStar, decStar)), 1);
  }

  /** Negates pulses; 0 stays plus 0. */
  private static Row signed(Row row, int ra, int dec) {
    return row == null
        ? null
        : new Row(row.ra(), row.dec(), ra * row.raPulse() + 0.0, dec * row.decPulse() + 0.0);
  }

  @Test
  void pixelsTimesTheToldScaleAreTheTruth() {
    for (long seed = 1; seed < 4; seed++) {
      DialectLog log = Obstacle.PIXELS_AND_SCALE.alone(seed);
      Matcher m = Pattern.compile("scale: ([0-9.]+) arcsec/px").matcher(log.text());
      assertThat(m.find()).isTrue();
      assertSame(log, rows(log, split(",")), Double.parseDouble(m.group(1)));
      DialectLog optics = Obstacle.PIXELS_AND_FOCAL_LENGTH.alone(seed);
      Matcher f =
          Pattern.compile("focal length: ([0-9.]+) mm\n# pixel size: ([0-9.]+) um")
              .matcher(optics.text());
      assertThat(f.find()).isTrue();
      double scale =
          Math.toDegrees(Double.parseDouble(f.group(2)) / 1000 / Double.parseDouble(f.group(1)))
              * 3600;
      List<Frame> frames = optics.truth().orElseThrow().frames();
      List<Row> rows = rows(optics, split(","));
      for (int k = 0; k < rows.size(); k++) {
        if (!frames.get(k).missing()) {
          assertThat(rows.get(k).ra() * scale).isCloseTo(frames.get(k).raArcsec(), within(1e-6));
        }
      }
      assertThat(optics.truth().orElseThrow().arcsecPerPixel().orElseThrow())
          .isCloseTo(scale, within(1e-6));
    }
  }

  @Test
  void placesLessTheMarkAndTurnedCamerasGiveTheTruth() {
    DialectLog log = Obstacle.PLACES_AND_MARK_ONLY.alone(4);
    Matcher m = Pattern.compile("x = ([0-9.]+), y = ([0-9.]+)").matcher(log.text());
    assertThat(m.find()).isTrue();
    double x = Double.parseDouble(m.group(1));
    double y = Double.parseDouble(m.group(2));
    double scale = log.truth().orElseThrow().arcsecPerPixel().orElseThrow();
    assertSame(
        log,
        rows(
            log,
            line -> {
              Row row = split(",").apply(line);
              return row == null
                  ? null
                  : new Row(row.ra() - x, row.dec() - y, row.raPulse(), row.decPulse());
            }),
        scale);
    DialectLog turned = Obstacle.CAMERA_TURNED_BY_TOLD_ANGLE.alone(4);
    Matcher t =
        Pattern.compile(
                "turned by ([0-9.]+) degrees: RA = x cos a \\+ y sin a, Dec = y cos a - x sin a")
            .matcher(turned.text());
    assertThat(t.find()).isTrue();
    double a = Math.toRadians(Double.parseDouble(t.group(1)));
    assertSame(
        turned,
        rows(
            turned,
            line -> {
              Row row = split(",").apply(line);
              return row == null
                  ? null
                  : new Row(
                      row.ra() * Math.cos(a) + row.dec() * Math.sin(a),
                      row.dec() * Math.cos(a) - row.ra() * Math.sin(a),
                      row.raPulse(),
                      row.decPulse());
            }),
        turned.truth().orElseThrow().arcsecPerPixel().orElseThrow());
  }

  @Test
  void aPulseInTheNextRowBelongsToTheFrameBefore() {
    DialectLog log = Obstacle.PULSE_IN_NEXT_ROW.alone(3);
    List<Row> rows = rows(log, split(","));
    List<Row> moved = new ArrayList<>();
    for (int k = 0; k < rows.size(); k++) {
      boolean last = k == rows.size() - 1;
      moved.add(
          new Row(
              rows.get(k).ra(),
              rows.get(k).dec(),
              last ? Double.NaN : rows.get(k + 1).raPulse(),
              last ? Double.NaN : rows.get(k + 1).decPulse()));
    }
    assertSame(log, moved, 1);
    assertThat(log.truth().orElseThrow().pulsesInNextRow()).isTrue();
  }

  // ------------------------------------------------------------------ clocks

  @Test
  void instantsAreThoseOfTheText() {
    assertInstants(Dialect.plain(3), cell -> OffsetDateTime.parse(cell).toInstant());
    assertInstants(
        Obstacle.ISO_WITH_OFFSET.alone(3), cell -> OffsetDateTime.parse(cell).toInstant());
    assertInstants(Obstacle.UTC_IN_NAME.alone(3), cell -> Instant.parse(cell + "Z"));
    assertInstants(
        Obstacle.UNIX_MILLISECONDS.alone(3), cell -> Instant.ofEpochMilli(Long.parseLong(cell)));
    // JD 2440587.5 is 1970-01-01T00:00 UTC (Explanatory Supplement to the Astronomical Almanac;
    // from memory).
    assertInstants(
        Obstacle.JULIAN_DATE.alone(3),
        cell ->
            Instant.ofEpochMilli(Math.round((Double.parseDouble(cell) - 2440587.5) * 86_400_000)));
    assertInstants(
        Obstacle.MODIFIED_JULIAN_DATE.alone(3),
        cell -> Instant.ofEpochMilli(Math.round((Double.parseDouble(cell) - 40587) * 86_400_000)));
  }

  private static void assertInstants(DialectLog log, Function<String, Instant> reader) {
    Truth truth = log.truth().orElseThrow();
    int k = 0;
    for (String line : log.text().split("\n")) {
      if (line.matches("\\d.*")) {
        Instant read = reader.apply(line.substring(0, line.indexOf(',')));
        double seconds =
            (read.toEpochMilli() - truth.start().orElseThrow().toEpochMilli()) / 1000.0;
        assertThat(truth.frames().get(k).seconds())
            .as("%s row %d", log, k)
            .isCloseTo(seconds, within(0.0011));
        k++;
      }
    }
    assertThat(k).isEqualTo(truth.frames().size());
  }

  @Test
  void timesOfDayCrossMidnight() {
    DialectLog log = Obstacle.TIME_OF_DAY_OVER_MIDNIGHT.alone(1);
    assertThat(log.text()).contains("\n23:").contains("\n00:");
    assertThat(Obstacle.TWELVE_HOURS_OVER_MIDNIGHT.alone(1).text())
        .containsPattern("\n11:\\d\\d:\\d\\d\\S* PM,")
        .containsPattern("\n12:\\d\\d:\\d\\d\\S* AM,");
  }

  // ------------------------------------------------------------------ the night

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void pulsesAnswerOffsetsAndMoveTheStarAtTheGuideRate(long seed) {
    Truth truth = Dialect.plain(seed).truth().orElseThrow();
    List<Frame> frames = truth.frames();
    double rate = 15.041 / 1000 * truth.guideRate().orElseThrow();
    double gain = 0;
    double product = 0;
    double square = 0;
    int answered = 0;
    for (int k = 0; k + 1 < frames.size(); k++) {
      Frame frame = frames.get(k);
      Frame next = frames.get(k + 1);
      if (frame.missing() || next.missing() || frame.decPulseMillis() == 0) {
        continue;
      }
      assertThat(frame.decPulseMillis() * frame.decArcsec())
          .as("seed %d frame %d", seed, k)
          .isPositive();
      answered++;
      double push = -frame.decPulseMillis() * rate;
      product += (next.decArcsec() - frame.decArcsec()) * push;
      square += push * push;
      gain += push / -frame.decArcsec();
    }
    assertThat(answered).isGreaterThan(40);
    // The move is the push (slope 1); where an offset was nothing but the frame's own noise, that
    // is gone from the
    // next frame besides, and the push has moved the star for nothing: slope 1 + 1/gain, with the
    // gain the share of
    // an offset that is pushed away. A push the wrong way would give 1/gain - 1 at most.
    assertThat(product / square).isBetween(1.0, 1.1 * (1 + answered / gain));
  }

  @Test
  void eventsAreThoseTheTextTells() {
    DialectLog flags = Obstacle.FLAGS_AS_CODES.alone(2);
    List<Set<Event>> kinds =
        List.of(Set.of(), Set.of(Event.SETTLING), Set.of(Event.LOST), Set.of(Event.DITHER));
    List<Frame> frames = flags.truth().orElseThrow().frames();
    int k = 0;
    Set<Event> seen = EnumSet.noneOf(Event.class);
    for (String line : flags.text().split("\n")) {
      if (line.matches("\\d{4}-.*")) {
        Set<Event> wanted = kinds.get(line.charAt(line.length() - 1) - '0');
        assertThat(frames.get(k++).events()).as(line).isEqualTo(wanted);
        seen.addAll(wanted);
      }
    }
    assertThat(seen)
        .isEqualTo(flags.truth().orElseThrow().toldEvents())
        .contains(Event.DITHER, Event.SETTLING, Event.LOST);
    DialectLog lines = Obstacle.EVENT_LINES.alone(2);
    boolean lost = false;
    boolean settling = false;
    boolean dither = false;
    k = 0;
    for (String line : lines.text().split("\n")) {
      switch (line) {
        case "dither" -> dither = true;
        case "settling" -> settling = true;
        case "settled" -> settling = false;
        case "star lost" -> lost = true;
        case "star found" -> lost = false;
        default -> {
          if (line.matches("\\d{4}-.*")) {
            Set<Event> wanted = EnumSet.noneOf(Event.class);
            if (dither) {
              wanted.add(Event.DITHER);
            }
            if (settling) {
              wanted.add(Event.SETTLING);
            }
            if (lost) {
              wanted.add(Event.LOST);
            }
            assertThat(lines.truth().orElseThrow().frames().get(k++).events())
                .as(line)
                .isEqualTo(wanted);
            dither = false;
          }
        }
      }
    }
    assertThat(k).isEqualTo(lines.truth().orElseThrow().frames().size());
  }

  // ------------------------------------------------------------------ the guide table

  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11})
  void theGuideTableIsEcsvAndHoldsTheTruth(long seed) {
    DialectLog log = Dialect.of(seed);
    if (log.notGuiding()) {
      return;
    }
    Truth truth = log.truth().orElseThrow();
    String[] lines = truth.guideTable().split("\n");
    // Astropy APE6: "# %ECSV 1.0" first, "# ---" next, then YAML, then the names.
    assertThat(lines[0]).isEqualTo("# %ECSV 1.0");
    assertThat(lines[1]).isEqualTo("# ---");
    List<String> declared = new ArrayList<>();
    int at = 0;
    for (; lines[at].startsWith("#"); at++) {
      Matcher m =
          Pattern.compile("# - \\{name: (\\w+),.*datatype: (float64|int64|string)\\}")
              .matcher(lines[at]);
      if (m.matches()) {
        declared.add(m.group(1));
      }
    }
    assertThat(lines[at].split(",")).containsExactlyElementsOf(declared);
    assertThat(declared).startsWith("time", "ra_offset", "dec_offset").endsWith("run", "event");
    assertThat(lines.length - at - 1).isEqualTo(truth.frames().size());
    for (int k = 0; k < truth.frames().size(); k++) {
      String[] c = lines[at + 1 + k].split(",", -1);
      Frame frame = truth.frames().get(k);
      assertThat(c).hasSameSizeAs(declared);
      assertThat(Double.parseDouble(c[0])).isCloseTo(frame.seconds(), within(1e-6));
      assertThat(c[1].isEmpty()).isEqualTo(frame.missing());
      if (!frame.missing()) {
        assertThat(Double.parseDouble(c[1])).isCloseTo(frame.raArcsec(), within(1e-9));
        assertThat(Double.parseDouble(c[2])).isCloseTo(frame.decArcsec(), within(1e-9));
      }
      if (truth.hasPulses() && !Double.isNaN(frame.raPulseMillis())) {
        assertThat(Double.parseDouble(c[3])).isEqualTo(frame.raPulseMillis());
        assertThat(Double.parseDouble(c[4])).isEqualTo(frame.decPulseMillis());
      }
      assertThat(Integer.parseInt(c[c.length - 2])).isEqualTo(frame.run());
      assertThat(c[c.length - 1]).isIn("", "settling", "lost", "dither", "flip");
    }
  }

  // ------------------------------------------------------------------ no logs of guiding

  @ParameterizedTest
  @EnumSource(NotGuiding.class)
  void whatIsNoLogOfGuidingHasNoTruth(NotGuiding kind) {
    DialectLog log = kind.log(1);
    assertThat(log.notGuiding()).isTrue();
    assertThat(log.answerable()).isFalse();
    assertThat(log.truth()).isEmpty();
    assertThat(log.bytes().length == 0).isEqualTo(kind == NotGuiding.EMPTY);
    assertThat(kind.log(1).bytes()).isEqualTo(log.bytes());
  }
}
