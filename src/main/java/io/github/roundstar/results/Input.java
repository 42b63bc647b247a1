package io.github.roundstar.results;

/**
 * A file that went in.
 *
 * @param file file name without folders
 * @param sha256 hash of the file's bytes
 * @param bytes size on disk
 * @param layout how the rows were laid out
 * @param rows data rows read
 * @param used rows in the RMS
 * @param unusable rows that could not be read
 */
public record Input(
    String file, String sha256, long bytes, String layout, int rows, int used, Unusable unusable) {}
