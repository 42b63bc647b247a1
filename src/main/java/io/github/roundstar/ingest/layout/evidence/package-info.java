/**
 * What speaks for the meaning of a column: its name and unit, the look of its values, sentences
 * about it, and its relations to other columns.
 *
 * <p><b>Where to start.</b> {@link io.github.roundstar.ingest.layout.evidence.Column} gathers it
 * for one column; {@link io.github.roundstar.ingest.layout.evidence.LogSentences} is what the text
 * says of all; {@link io.github.roundstar.ingest.layout.evidence.PulseColumns} are columns, or
 * pairs of them, that may hold pulses; {@link io.github.roundstar.ingest.layout.evidence.Relation}
 * is how one series follows another.
 *
 * <p><b>Units.</b> As told; of numbers without one, none is assumed here.
 *
 * <p><b>Missing data.</b> NaN in a column's numbers.
 *
 * <p><b>Neighbours.</b> Imports {@code layout.text} and the language of layouts. Decides nothing.
 */
package io.github.roundstar.ingest.layout.evidence;
