/**
 * The charts of a report as inline SVG, in one house style.
 *
 * <p>Every chart class takes decimated series and gives an {@link
 * io.github.roundstar.report.chart.Svg}. Axes and layout are JFreeChart's; data is drawn as one
 * path per line, band or cloud ({@code DataPath}); the raw SVG passes {@code SvgStep}, which makes
 * it fit a strict Content-Security-Policy and the page's palette.
 *
 * <p><b>Units.</b> Those of the evidence: seconds and arcseconds, east and north positive.
 *
 * <p><b>Missing data.</b> A chart without points is an empty {@code Optional}. A machine on which
 * Java cannot load a font throws {@link io.github.roundstar.report.chart.ChartsUnavailable}.
 *
 * <p><b>Neighbours.</b> Imports results, model and the report's words. Used by the page. Start at
 * {@link io.github.roundstar.report.chart.TimelineChart}.
 */
package io.github.roundstar.report.chart;
