/**
 * How a report writes numbers, times and periods; nothing here depends on a locale or a time zone.
 *
 * <p><b>Units.</b> In the names of the parameters. Minus signs are U+2212.
 *
 * <p><b>Missing data.</b> A null figure is written as {@link
 * io.github.roundstar.report.words.Numbers#NOT_KNOWN}.
 *
 * <p><b>Neighbours.</b> Imports the model. Used by the page and its charts. Start at {@link
 * io.github.roundstar.report.words.Numbers}.
 */
package io.github.roundstar.report.words;
