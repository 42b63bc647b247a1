package io.github.roundstar.pipeline;

import io.github.roundstar.report.IndexPage;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Input;
import io.github.roundstar.results.NightJson;
import io.github.roundstar.results.NightResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Puts a night's files into the output folder. */
final class ResultFiles {
  private static final int HASH_DIGITS = 8;
  private static final int ALL_DIGITS = 64;

  private final Path folder;
  private final Set<String> gone;

  ResultFiles(Path folder) {
    this(folder, Set.of());
  }

  /**
   * Files in a folder of which some results are of logs that are no more.
   *
   * @param gone hashes of those logs; results of them may be replaced
   */
  ResultFiles(Path folder, Set<String> gone) {
    this.folder = folder;
    this.gone = Set.copyOf(gone);
  }

  /**
   * Writes the files. An earlier result is replaced only if its inputs are all among the new ones;
   * else the new files take the first digits of an input's hash into their name.
   *
   * @param figures the result as JSON
   * @param outline the night in a line
   * @param beside further files by the end of their names
   * @throws UnwritableOutputException when a file cannot be written, or other nights hold every
   *     name
   */
  @SuppressWarnings("try") // the lock is held, not used
  synchronized FinishedNight write(
      String name,
      NightResult result,
      byte[] figures,
      String html,
      double[] outline,
      Optional<String> withoutCharts,
      Map<String, byte[]> beside)
      throws UnwritableOutputException {
    try (FolderLock lock = FolderLock.of(folder)) {
      String stem = stem(name, result.inputs());
      Path json = folder.resolve(stem + ".json");
      Path report = folder.resolve(stem + ".html");
      Map<Path, byte[]> files = new LinkedHashMap<>();
      files.put(report, html.getBytes(StandardCharsets.UTF_8));
      files.put(json, figures);
      beside.forEach((end, bytes) -> files.put(folder.resolve(stem + end), bytes));
      FileInPlace.write(files);
      return new FinishedNight(result, report, json, outline, withoutCharts);
    }
  }

  /**
   * Writes the page that links the nights, and gives its place.
   *
   * @param lost names of nights without a report
   * @param faults what took them
   * @throws UnwritableOutputException when it cannot be written
   */
  synchronized Path index(List<FinishedNight> nights, List<String> lost, Faults faults)
      throws UnwritableOutputException {
    Path page = folder.resolve("nights.html");
    String html =
        IndexPage.render(
            nights.stream()
                .map(
                    night ->
                        new IndexPage.Entry(
                            night.result(),
                            night.report().getFileName().toString(),
                            night.outline()))
                .toList(),
            lost,
            faults);
    FileInPlace.write(page, html.getBytes(StandardCharsets.UTF_8));
    return page;
  }

  private String stem(String name, List<Input> inputs) throws UnwritableOutputException {
    return names(name, inputs)
        .filter(stem -> mayReplace(stem, inputs))
        .findFirst()
        .orElseThrow(
            () ->
                new UnwritableOutputException(
                    folder.resolve(name + ".json"), "results of other logs are there"));
  }

  /** The plain name, then with as few digits of an input's hash as it takes. */
  private static Stream<String> names(String name, List<Input> inputs) {
    Stream<String> withDigits =
        IntStream.iterate(HASH_DIGITS, digits -> digits <= ALL_DIGITS, digits -> 2 * digits)
            .boxed()
            .flatMap(
                digits ->
                    inputs.stream().map(input -> name + "-" + input.sha256().substring(0, digits)));
    return Stream.concat(Stream.of(name), withDigits);
  }

  private boolean mayReplace(String name, List<Input> inputs) {
    Path json = folder.resolve(name + ".json");
    if (!Files.exists(json)) {
      return !Files.exists(folder.resolve(name + ".html"));
    }
    try {
      Set<String> hashes = inputs.stream().map(Input::sha256).collect(Collectors.toSet());
      return NightJson.inputHashes(Files.readAllBytes(json)).stream()
          .allMatch(hash -> hashes.contains(hash) || gone.contains(hash));
    } catch (IOException e) {
      return false;
    }
  }
}
