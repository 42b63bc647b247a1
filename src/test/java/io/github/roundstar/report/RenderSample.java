package io.github.roundstar.report;

import java.nio.file.Files;
import java.nio.file.Path;

/** Writes the sample pages into a folder, to be looked at. */
final class RenderSample {
  private RenderSample() {}

  /** The first argument is the folder. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    SampleNight two = SampleNight.twoHours();
    Files.writeString(
        folder.resolve("two-hours.html"), NightPage.render(two.result(), two.evidence()).html());
    SampleNight ten = SampleNight.tenHours();
    Files.writeString(
        folder.resolve("ten-hours.html"), NightPage.render(ten.result(), ten.evidence()).html());
    Files.writeString(
        folder.resolve("sparse.html"),
        NightPage.render(SampleNight.sparseResult(), SampleNight.sparseEvidence()).html());
    SampleNight undated = two.undated();
    Files.writeString(
        folder.resolve("judged.html"), NightPage.render(two.judged(), two.evidence()).html());
    Files.writeString(
        folder.resolve("undated.html"),
        NightPage.render(undated.result(), undated.evidence()).html());
  }
}
