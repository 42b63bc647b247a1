package io.github.roundstar.pipeline;

import io.github.roundstar.diagnosis.exposures.MainCamera;
import io.github.roundstar.diagnosis.exposures.NightOffset;
import io.github.roundstar.ingest.ExposureReader;
import io.github.roundstar.ingest.UnusableInputException;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Faults;
import io.github.roundstar.stars.ImageShape;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
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
   * @param faults hears of images that a fault of the tool took
   * @return nothing when no exposures were named, or nothing could be read there
   */
  static Optional<NightExposures> read(Optional<Path> named, List<String> unusable, Faults faults) {
    if (named.isEmpty()) {
      return Optional.empty();
    }
    try {
      var list = ExposureReader.read(named.get());
      List<String> problems = new ArrayList<>(list.problems());
      List<Path> images = list.frames().stream().flatMap(f -> f.image().stream()).toList();
      Map<String, ImageShape> shapes = new HashMap<>();
      for (StarImages.Measured image : StarImages.measure(images, faults)) {
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

  /**
   * Deals them out: a single night gets all, of several each gets those nearer to it than to any
   * other, by the offset of the clocks that all nights together give.
   *
   * @param warnings gets that dates alone tell the nights apart, where that is so
   * @return what each night gets, in their order
   */
  List<MainCamera> dealt(List<Night> nights, List<String> warnings) {
    if (nights.size() < 2) {
      return nights.stream().map(night -> new MainCamera(frames, shapes, problems)).toList();
    }
    List<GuideRun> runs = nights.stream().flatMap(night -> night.runs().stream()).toList();
    NightOffset offset = NightOffset.of(frames, runs);
    if (!offset.certain()) {
      warnings.add(
          "exposures: they fit the guide logs of other nights as well, so that a camera clock wrong"
              + " by a whole day could not be told: check that their dates are right");
    }
    Map<Night, List<ExposureFrame>> own = new IdentityHashMap<>();
    for (ExposureFrame frame : frames) {
      Night night = nearest(offset.inLog(frame.start()), nights);
      own.computeIfAbsent(night, n -> new ArrayList<>()).add(frame);
    }
    return nights.stream()
        .map(night -> new MainCamera(own.getOrDefault(night, List.of()), shapes, problems))
        .toList();
  }

  private static Night nearest(Instant start, List<Night> nights) {
    return nights.stream().min(Comparator.comparing(night -> distance(start, night))).orElseThrow();
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
