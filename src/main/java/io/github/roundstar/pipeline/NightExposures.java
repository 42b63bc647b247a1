package io.github.roundstar.pipeline;

import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.stars.ImageShape;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The exposures that the user named, with their stars measured, dealt out to the nights. */
final class NightExposures {
  private final List<ExposureFrame> frames;
  private final Map<String, ImageShape> shapes;
  private final List<String> problems;

  private NightExposures(
      List<ExposureFrame> frames, Map<String, ImageShape> shapes, List<String> problems) {
    this.frames = frames;
    this.shapes = shapes;
    this.problems = problems;
  }

  /**
   * Reads and measures.
   *
   * @param unusable gets what could not be used
   * @return nothing when no exposures were named, or nothing could be read there
   */
  static Optional<NightExposures> read(Optional<Path> named, List<String> unusable) {
    if (named.isEmpty()) {
      return Optional.empty();
    }
    try {
      var list = ExposureReader.read(named.get());
      List<String> problems = new ArrayList<>(list.problems());
      List<Path> images = list.frames().stream().flatMap(f -> f.image().stream()).toList();
      Map<String, ImageShape> shapes = new HashMap<>();
      for (StarImages.Measured image : StarImages.measure(images)) {
        if (image.shape().isEmpty()) {
          problems.add(image.problem());
        } else if (image.shape().get().stars().isEmpty()) {
          problems.add(
              image.file()
                  + ": no star that could be measured"
                  + image.shape().get().rejectedWords()
                  + ": look whether clouds or a cap were in front");
        } else {
          shapes.put(image.file(), image.shape().get());
        }
      }
      unusable.addAll(problems);
      List<ExposureFrame> usable =
          list.frames().stream()
              .filter(f -> f.image().isEmpty() || shapes.containsKey(f.file()))
              .toList();
      return Optional.of(new NightExposures(usable, shapes, problems));
    } catch (UnusableInputException e) {
      unusable.add(e.getMessage());
      return Optional.empty();
    }
  }

  /** Those of one night: all when it is the only one, else those nearer to it than to any other. */
  MainCamera of(Night night, List<Night> nights) {
    List<ExposureFrame> own =
        frames.stream().filter(frame -> nearest(frame, nights).equals(night)).toList();
    return new MainCamera(own, shapes, problems);
  }

  private static Night nearest(ExposureFrame frame, List<Night> nights) {
    return nights.stream()
        .min(Comparator.comparing(night -> distance(frame.start(), night)))
        .orElseThrow();
  }

  private static Duration distance(Instant at, Night night) {
    return night.runs().stream()
        .filter(run -> run.start().isPresent() && run.frames().size() > 0)
        .map(run -> distance(at, run))
        .min(Comparator.naturalOrder())
        .orElse(Duration.ofDays(36_500));
  }

  private static Duration distance(Instant at, GuideRun run) {
    Instant from = run.instantAt(run.frames().timeSeconds(0)).orElseThrow();
    Instant to = run.instantAt(run.frames().timeSeconds(run.frames().size() - 1)).orElseThrow();
    return at.isBefore(from)
        ? Duration.between(at, from)
        : at.isAfter(to) ? Duration.between(to, at) : Duration.ZERO;
  }
}
