/**
 * A night as one HTML page that needs no network: {@link io.github.roundstar.report.NightPage} is
 * the front door; {@link io.github.roundstar.report.ComparePage} and {@link
 * io.github.roundstar.report.SeasonPage} are those of several nights.
 *
 * <p>Java puts the page's content in order and words ({@code Page} and the classes that fill it);
 * the template {@code night.html} lays it out and escapes every text; charts come ready-made from
 * {@link io.github.roundstar.report.chart}. Nothing is computed here, only rounded and worded.
 *
 * <p><b>Units.</b> Those of the results, written beside every number.
 *
 * <p><b>Missing data.</b> A null figure is shown as "not known" with the reason that the result
 * gives for it.
 *
 * <p><b>Neighbours.</b> Imports results and model. Used by pipeline. Start at {@code NightPage},
 * then {@code Page}.
 */
package io.github.roundstar.report;
