/**
 * How a text log is laid out: the description, its TOML file, lines taken apart by it, and its
 * inference from text alone.
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
 * io.github.roundstar.ingest.LayoutReader} turns a log and its layout into the model. Start at
 * {@link io.github.roundstar.ingest.layout.Layout}, then {@link
 * io.github.roundstar.ingest.layout.LayoutFile} and {@link
 * io.github.roundstar.ingest.layout.choice.LayoutInference}.
 */
package io.github.roundstar.ingest.layout;
