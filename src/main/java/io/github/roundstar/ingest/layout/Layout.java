package io.github.roundstar.ingest.layout;

import java.util.List;

/**
 * How a text log is to be read.
 *
 * @param name name of the layout for messages and reports
 * @param text the text
 * @param runs where runs begin and end
 * @param time how times are written
 * @param pulseInNextRow whether a row holds the pulse that answers the offset of the row before
 * @param camera how the camera lies on the sky
 * @param columns what the columns mean
 * @param settings where settings stand
 * @param events how events are told
 */
public record Layout(
    String name,
    TextShape text,
    RunMarks runs,
    TimeForm time,
    boolean pulseInNextRow,
    CameraAxes camera,
    List<ColumnRule> columns,
    List<SettingRule> settings,
    List<EventRule> events) {
  /** Copies. */
  public Layout {
    columns = List.copyOf(columns);
    settings = List.copyOf(settings);
    events = List.copyOf(events);
  }

  /** Whether some column means this. */
  public boolean has(Meaning meaning) {
    return columns.stream().anyMatch(column -> column.means() == meaning);
  }

  /** Whether offsets lie along the camera's axes. */
  public boolean alongCamera() {
    return columns.stream().anyMatch(column -> column.means().isOfCamera());
  }

  /** Whether all columns of an axis name their directions on the sky. */
  public boolean senseKnown(boolean dec) {
    return columns.stream()
        .filter(column -> column.means().isDec() == dec)
        .allMatch(column -> column.positive().map(Direction::isNamed).orElse(true));
  }
}
