package io.github.roundstar.model;

/**
 * Whether an axis tells its two directions apart. Offsets and pulses negated together give the same
 * log, so only letters, a declared sign or the user can tell; where they do not, the offsets are
 * right but for one sign that all of an axis share.
 *
 * @param ra whether east is known from west
 * @param dec whether north is known from south
 */
public record SkySense(boolean ra, boolean dec) {
  /** Both known. */
  public static final SkySense KNOWN = new SkySense(true, true);

  /** Whether all directions are known. */
  public boolean known() {
    return ra && dec;
  }

  /** What holds for two runs together. */
  public SkySense and(SkySense other) {
    return new SkySense(ra && other.ra, dec && other.dec);
  }
}
