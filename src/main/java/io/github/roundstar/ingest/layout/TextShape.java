package io.github.roundstar.ingest.layout;

import io.github.roundstar.formats.TextEncoding;
import java.util.List;
import java.util.Optional;

/**
 * How a log is written as text.
 *
 * @param encoding encoding of the file
 * @param delimiter what separates the fields of a row
 * @param widths widths of the fields with {@link Delimiter#FIXED} [characters]; else empty
 * @param decimalComma whether decimals are written with a comma
 * @param remark marks lines that hold no row; they may still tell settings and events
 * @param names marks the line that names the columns; none where columns are told by their place
 * @param rows marks the lines that are rows, where others have fields like theirs
 * @param lead words or brackets in front of the fields, which blanks part from them and each other
 * @param joins marks a line that continues the row before it
 */
public record TextShape(
    TextEncoding encoding,
    Delimiter delimiter,
    List<Integer> widths,
    boolean decimalComma,
    Optional<LinePattern> remark,
    Optional<LinePattern> names,
    Optional<LinePattern> rows,
    Optional<LinePattern> lead,
    Optional<LinePattern> joins) {
  /** Copies. */
  public TextShape {
    widths = List.copyOf(widths);
  }
}
