package io.github.roundstar.dialects;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The front door: logs by seed. The same seed gives the same bytes on every machine. */
public final class Dialect {
  private Dialect() {}

  /**
   * A log with several obstacles of different aspects. About one in twelve leaves a fact open, one
   * in forty is no log of guiding.
   *
   * @param seed any number; printed by {@link DialectLog#name()}
   */
  public static DialectLog of(long seed) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L + 17);
    if (random.nextInt(40) == 0) {
      NotGuiding[] kinds = NotGuiding.values();
      return kinds[random.nextInt(kinds.length)].log(seed);
    }
    return new Scribe(recipe(random)).write(seed, "dialect-" + seed + ".log");
  }

  /**
   * A log whose names, settings and events are whole phrases of another hand; where sentences of
   * its language are lacking they are English.
   *
   * @param hand who wrote the phrases
   * @param half those that may be looked at while the reading is made, or the others
   */
  public static DialectLog inPhrases(Phrases.Hand hand, Phrases.Half half, long seed) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L + 4711);
    Recipe recipe = recipe(random);
    while (recipe.form == Recipe.Form.PROSE) {
      recipe = recipe(random);
    }
    recipe.take(Phrases.of(hand, half, random));
    return new Scribe(recipe).write(seed, "phrases-" + seed + ".log");
  }

  /**
   * Chooses how a log will be written: at most one obstacle of each aspect, each fitting those
   * before.
   */
  static Recipe recipe(Random random) {
    Recipe recipe = new Recipe(random);
    recipe.plainestWords = random.nextInt(4) == 0;
    double density = 0.1 + 0.4 * random.nextDouble();
    for (Obstacle.Aspect aspect : Obstacle.Aspect.values()) {
      double chance =
          switch (aspect) {
            case TONGUE, FORM -> 0.7;
            case CLOCK -> 0.2 + density;
            case SOURCE, LAG, LINES -> 0.5 * density;
            case OPEN -> 0.4;
            default -> density;
          };
      if (random.nextDouble() >= chance) {
        continue;
      }
      List<Obstacle> fitting = new ArrayList<>();
      for (Obstacle obstacle : Obstacle.values()) {
        if (obstacle.aspect() == aspect && obstacle.fits(recipe)) {
          fitting.add(obstacle);
        }
      }
      if (!fitting.isEmpty()) {
        fitting.get(random.nextInt(fitting.size())).applyTo(recipe);
      }
    }
    return recipe;
  }

  /**
   * A log without any obstacle: plain CSV, English names with units, ISO time in UTC, signs told.
   */
  public static DialectLog plain(long seed) {
    return new Scribe(new Recipe(new Random(seed * 31 + 7))).write(seed, "plain-" + seed + ".log");
  }
}
