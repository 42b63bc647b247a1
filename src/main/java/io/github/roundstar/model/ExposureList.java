package io.github.roundstar.model;

import java.util.List;

/**
 * The exposures that the user named.
 *
 * @param frames those that can be used, in order of time
 * @param problems the others, each {@code file:line: what is wrong: how to mend it}
 */
public record ExposureList(List<ExposureFrame> frames, List<String> problems) {
  /** No exposures. */
  public static final ExposureList NONE = new ExposureList(List.of(), List.of());

  /** Copies. */
  public ExposureList {
    frames = List.copyOf(frames);
    problems = List.copyOf(problems);
  }
}
