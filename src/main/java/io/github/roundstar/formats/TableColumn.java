package io.github.roundstar.formats;

import java.util.Optional;

/**
 * A column of a table, as its header declares it.
 *
 * @param name name
 * @param unit unit, where one is given
 * @param line line that declares it, from 1
 */
public record TableColumn(String name, Optional<String> unit, long line) {}
