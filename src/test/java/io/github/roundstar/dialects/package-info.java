/**
 * Invented logs of telescope guiding, thousands of them, each with its truth: against these the
 * reading of unknown logs is judged.
 *
 * <p><b>Where to start.</b> {@link Dialect#of(long)} gives a log from a seed; {@link
 * Obstacle#alone(long)} one obstacle on a log that otherwise reads well; {@link
 * NotGuiding#log(long)} a file that is no such log. A {@link DialectLog} holds bytes, obstacles,
 * {@link OpenFact open facts} and {@link Truth}; the truth holds the same night as guide table.
 *
 * <p><b>How one is made.</b> A {@code Recipe} is every choice of a log's writer; obstacles change
 * it. A {@code Night} happens (a small closed loop). The {@code LogClock} and the {@code Scribe}
 * write it in the words of a {@code Tongue}; {@code NativeTable} writes the same as guide table.
 * Truth is taken from the digits as written, so a perfect reading is exact.
 *
 * <p><b>Conventions of the truth.</b> Offsets in arcsec on the sky, star minus set point, east and
 * north positive; pulses in ms, positive when the mount is pushed east or north, in the row of the
 * offset that they answer. Where neither names nor text tell the sign of an offset, {@link
 * Truth#raSignTold()} is false and both offset and pulse of that axis may be negated.
 *
 * <p><b>What a careful reader can find.</b> The sign of a pulse, since it answers an offset; the
 * row it belongs to; the unit of pulses, by size; an axis, when only its pulses are named; a
 * sentinel that stands far off; a scale, when offsets stand in pixels and in arcsec. Not: the way
 * of the sky, the unit of an offset, a scale nowhere told, a camera's turn (but to a few degrees),
 * the zone of a clock.
 *
 * <p><b>Independence.</b> Words come from dictionaries and from the trade; no format is that of a
 * program. Nothing here imports the code under test, and its readers were not looked at. All
 * places, programs and nights are invented.
 */
package io.github.roundstar.dialects;
