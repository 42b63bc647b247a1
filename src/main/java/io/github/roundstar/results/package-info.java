/**
 * What an analysis found: the records that are the JSON ({@link
 * io.github.roundstar.results.NightResult}), their codec and schema, and the decimated series that
 * the charts of a report show ({@link io.github.roundstar.results.NightEvidence}).
 *
 * <p><b>Units.</b> In the names; where a name has none, seconds and arcseconds. Signs as in the
 * model: east and north positive.
 *
 * <p><b>Missing data.</b> A figure that cannot be had is {@code null}, as it is in the JSON, and
 * {@link io.github.roundstar.results.NotComputed} says why. This is the one package where null has
 * a meaning.
 *
 * <p><b>Neighbours.</b> Imports the model. Filled by diagnosis, shown by report, stored by
 * pipeline.
 */
package io.github.roundstar.results;
