/**
 * The only door to delimited text, ECSV, TOML, YAML, gzip, FITS images and the Exif headers of
 * photographs. Knows no guiding.
 *
 * <p><b>Limits.</b> Everything is bounded by counts (bytes, line length, columns, depth), never by
 * clocks; what is over a limit is refused, never cut in silence.
 *
 * <p><b>Faults.</b> {@link io.github.roundstar.formats.FormatException}: a place, what was found,
 * how to mend it. File names carry no folders.
 *
 * <p><b>Missing data.</b> An absent key or header entry is an empty {@code Optional}; an empty
 * field is an empty field.
 *
 * <p><b>Neighbours.</b> Imports nothing of ours. Start at {@link
 * io.github.roundstar.formats.TomlTable}.
 */
package io.github.roundstar.formats;
