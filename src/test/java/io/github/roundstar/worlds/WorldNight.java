package io.github.roundstar.worlds;

import java.util.List;

/** A night that was played: its log, the equipment as its owner believes it, and the truth. */
public final class WorldNight {
  /** How the log is written. */
  public enum Precision {
    /** Every digit of a double; pulses with fractions of a millisecond. */
    FULL,
    /** Offsets with two or three decimals, whole milliseconds: as guiding programs write. */
    ROUNDED
  }

  /** An image of the main camera [s since the start of the log]. */
  public record Exposure(double startSeconds, double seconds) {}

  private final World world;
  private final long seed;
  private final NightPlan plan;
  private final Playthrough played;
  private final Truth truth;

  private WorldNight(World world, long seed, NightPlan plan) {
    this.world = world;
    this.seed = seed;
    this.plan = plan;
    this.played = Playthrough.of(plan);
    this.truth = Truth.of(plan, played.runs);
  }

  static WorldNight play(World world, long seed, NightPlan plan) {
    return new WorldNight(world, seed, plan);
  }

  /** The same night with something done differently; cures act in the order given. */
  public WorldNight again(Cure... cures) {
    NightPlan other = plan.copy();
    for (Cure cure : cures) {
      cure.apply(other);
    }
    return new WorldNight(world, seed, other);
  }

  public World world() {
    return world;
  }

  public long seed() {
    return seed;
  }

  public Truth truth() {
    return truth;
  }

  /** The log as a guide table (ECSV 1.0). */
  public String guideTable(Precision precision) {
    return GuideTableText.of(plan, played.rows, precision);
  }

  /** The equipment file (TOML) with what the owner believes. */
  public String equipment() {
    return EquipmentText.of(plan);
  }

  /**
   * What the owner has set.
   *
   * @param raGain as the controller has it
   * @param raGainDone what a gain of 1 in the controller comes to, as the motors do it
   * @param pauseSeconds from a dither to the next image; NaN = until settled
   */
  public record Settings(
      double raGain,
      double decGain,
      double raGainDone,
      double decGainDone,
      double raDeadbandArcsec,
      double decDeadbandArcsec,
      double cadenceSeconds,
      double guideExposureSeconds,
      double imageSeconds,
      double pauseSeconds) {}

  /** What the owner has set. */
  public Settings settings() {
    double believed = plan.believedGuideRate;
    return new Settings(
        plan.ra.gain,
        plan.dec.gain,
        (plan.eastRate + plan.westRate) / 2 / believed,
        (plan.northRate + plan.southRate) / 2 / believed,
        plan.ra.deadbandArcsec,
        plan.dec.deadbandArcsec,
        plan.cadenceSeconds,
        plan.exposureSeconds,
        plan.imagingSeconds,
        plan.pauseSeconds);
  }

  /** The same night, so many days later by the calendar; the sky is not turned. */
  public WorldNight onDay(int days) {
    NightPlan other = plan.copy();
    other.start = plan.start.plus(java.time.Duration.ofDays(days));
    return new WorldNight(world, seed, other);
  }

  /** What becomes of the main camera's images. */
  public Images images() {
    return new Images(plan, played.motion);
  }

  /** Main camera's image motion. */
  public ImageMotion mainCamera() {
    return played.motion;
  }

  /** Images of the main camera that lie between settling and the next dither. */
  public List<Exposure> exposures() {
    return List.copyOf(played.exposures);
  }

  /** The guide star's true place, row for row of the guide table. */
  public StarTruth star() {
    return played.star;
  }

  /** Row values as the controller had them, for the checks of this package. */
  LogRows rows() {
    return played.rows;
  }

  NightPlan plan() {
    return plan;
  }

  @Override
  public String toString() {
    return (plan.label.isEmpty() ? world.toString() : plan.label) + " seed " + seed;
  }
}
