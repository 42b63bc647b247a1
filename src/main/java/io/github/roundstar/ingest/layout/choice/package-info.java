/**
 * Decides how a log is to be read, each time with the evidence and the runner-up, and asks where
 * the log does not tell.
 *
 * <p><b>Where to start.</b> {@link io.github.roundstar.ingest.layout.choice.LayoutInference} goes
 * through all decisions in order: time ({@link
 * io.github.roundstar.ingest.layout.choice.TimeGuess}), settings ({@link
 * io.github.roundstar.ingest.layout.choice.SettingLines}), offsets and pulses jointly ({@link
 * io.github.roundstar.ingest.layout.choice.ColumnChoice}), events, signs and camera ({@link
 * io.github.roundstar.ingest.layout.choice.PulseSigns}), units ({@link
 * io.github.roundstar.ingest.layout.choice.ColumnUnits}).
 *
 * <p><b>Units.</b> Of evidence: 1 is a slight reason; an axis that is named weighs 4, a pulse that
 * follows its offset exactly 6.
 *
 * <p><b>Missing data.</b> What is not known and changes figures is an open {@link
 * io.github.roundstar.ingest.layout.Decision}; what changes none is noted.
 *
 * <p><b>Neighbours.</b> Imports {@code layout.evidence}, {@code layout.text} and the language of
 * layouts.
 */
package io.github.roundstar.ingest.layout.choice;
