package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.stars.ImageShape;
import java.util.List;
import java.util.Map;

/**
 * The main camera's exposures of a night.
 *
 * @param frames in order of time
 * @param shapes stars of those that were measured, by file name
 * @param problems files that could not be used, each with its remedy
 */
public record MainCamera(
    List<ExposureFrame> frames, Map<String, ImageShape> shapes, List<String> problems) {
  /** Copies. */
  public MainCamera {
    frames = List.copyOf(frames);
    shapes = Map.copyOf(shapes);
    problems = List.copyOf(problems);
  }
}
