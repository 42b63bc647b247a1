package io.github.roundstar.results;

/**
 * What a comparison with other nights needs to know besides the figures.
 *
 * @param mountName what the user calls the mount
 * @param imagingArcsecPerPixel scale of the main camera [arcsec per binned pixel]
 * @param hemisphere north or south; null when the latitude is not known or not to be told
 * @param guidedIntervals how well the night knows its scatter; null when no frame was usable
 */
public record ComparisonBasis(
    String mountName,
    Double imagingArcsecPerPixel,
    String hemisphere,
    GuidedIntervals guidedIntervals) {}
