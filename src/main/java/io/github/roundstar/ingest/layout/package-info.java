/**
 * How a text log is laid out: the language of layouts, and the way from a log to its layout.
 *
 * <p><b>Where to start.</b> {@link io.github.roundstar.ingest.layout.Layout} is the description,
 * {@link io.github.roundstar.ingest.layout.LayoutFile} and {@link
 * io.github.roundstar.ingest.layout.LayoutText} are its TOML file. {@link
 * io.github.roundstar.ingest.layout.choice.LayoutInference} works a layout out of a log, and gives
 * it with its decisions as {@link io.github.roundstar.ingest.layout.Inference}.
 *
 * <p><b>Packages.</b> This one is the language and imports none of the others. {@code text} takes
 * lines apart into fields and words; {@code evidence} says what speaks for the meaning of a column;
 * {@code choice} weighs it, decides and asks.
 *
 * <p><b>Units.</b> Each column and setting carries the unit it is written in; {@code ingest} turns
 * them into the model's.
 *
 * <p><b>Missing data.</b> What a layout does not say is an empty {@code Optional}. A direction that
 * cannot be known is {@code one-way} or {@code other-way}, never a guess.
 *
 * <p><b>Limits.</b> Patterns count the characters they look at, so that none can hang; lines beyond
 * 4096 characters match no pattern.
 *
 * <p><b>Neighbours.</b> Imports {@code formats} and {@code model}; {@link
 * io.github.roundstar.ingest.LayoutReader} turns a log and its layout into the model.
 */
package io.github.roundstar.ingest.layout;
