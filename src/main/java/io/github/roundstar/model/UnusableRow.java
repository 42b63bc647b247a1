package io.github.roundstar.model;

/**
 * A row that could not be read.
 *
 * @param line line number in the (unpacked) file, from 1
 * @param reason what is wrong with it and how to mend it
 */
public record UnusableRow(long line, String reason) {}
