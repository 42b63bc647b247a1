/**
 * Files of a night in, the model out: guide tables, text logs by their layout, the equipment file,
 * and files into nights.
 *
 * <p><b>Units.</b> The column table turns the file's units into the model's: arcseconds on the sky,
 * milliseconds of pulse, seconds since the run's start in the middle of the exposure.
 *
 * <p><b>Missing data.</b> A setting that the log leaves out is an empty {@code Optional}. No row is
 * dropped in silence: rows = used + settling + lost + dither + idle + duplicate + rejected +
 * unusable.
 *
 * <p><b>Faults.</b> A file that cannot be used at all is an {@link
 * io.github.roundstar.ingest.UnusableInputException}; a row that cannot be used is counted by kind
 * and, for the first thousand, kept with its line and what to do.
 *
 * <p><b>Neighbours.</b> {@code formats} opens the files, {@code model} is the result. Start at
 * {@link io.github.roundstar.ingest.LogReader}, then {@link
 * io.github.roundstar.ingest.NightGrouping}.
 */
package io.github.roundstar.ingest;
