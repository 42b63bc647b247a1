/**
 * Star shapes in images.
 *
 * <p>{@code Plane} holds one channel; {@code Background} takes level and noise off a mesh; {@code
 * Segments} finds connected bright pixels by {@code Marks}; {@code Candidates} throws out what is
 * saturated, blended, hot or at the edge; {@code AdaptiveShape} measures a star by
 * Gaussian-weighted second moments whose weight follows the star; {@code ImageShape} brings the
 * stars of an image together; {@code FieldPattern} tells how shapes change over the field; {@code
 * StarMatch} finds the shift between two images.
 *
 * <p><b>Units and axes.</b> Pixels. x and y as in FITS: the centre of the first pixel of the file
 * is (1, 1), x along a row, y to later rows. Angles of star shapes are from +x towards +y.
 *
 * <p><b>Missing data.</b> A pixel without value is NaN and takes part in nothing. An image without
 * stars is an {@code ImageShape} with reasons and no figures.
 *
 * <p><b>Neighbours.</b> Imports {@code signal} and {@code model}; knows neither files nor guiding.
 * Start at {@link io.github.roundstar.stars.ImageShape}.
 */
package io.github.roundstar.stars;
