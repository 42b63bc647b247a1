/**
 * A log's text: lines, the fields of a row, numbers, clocks and words.
 *
 * <p><b>Where to start.</b> {@link io.github.roundstar.ingest.layout.text.RowShape} says which
 * lines are rows and how they part; {@link io.github.roundstar.ingest.layout.text.Splitting}
 * chooses the way; {@link io.github.roundstar.ingest.layout.text.TableHead} is what stands around
 * the rows. With a layout at hand, {@link io.github.roundstar.ingest.layout.text.LayoutLines} gives
 * the rows one by one.
 *
 * <p><b>Words.</b> {@code words.txt} is the dictionary, in nine languages; {@link
 * io.github.roundstar.ingest.layout.text.Words} are the concepts that a text names by it.
 *
 * <p><b>Units.</b> None: numbers are as written.
 *
 * <p><b>Missing data.</b> A field without a value is an empty text or one of those that stand for
 * none; NaN once it is a number.
 *
 * <p><b>Neighbours.</b> Imports {@code formats}, {@code model} and the language of layouts.
 */
package io.github.roundstar.ingest.layout.text;
