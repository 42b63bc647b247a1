package io.github.roundstar.simulate;

import io.github.roundstar.formats.EcsvWriter;
import io.github.roundstar.formats.EcsvWriter.Column;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideRun;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes a simulated night as a guide table (ECSV), rounded as a guider's log would be. */
public final class GuideTableWriter {
  private final SimulatedNight night;
  private final double offsetUnitArcsec;

  private GuideTableWriter(SimulatedNight night) {
    this.night = night;
    Scenario.Evening evening = night.scenario().evening();
    this.offsetUnitArcsec = evening.inPixels() ? evening.scaleArcsecPerPixel() : 1;
  }

  /**
   * Writes the table.
   *
   * @param out where to; stays open
   */
  public static void write(SimulatedNight night, Appendable out) throws IOException {
    GuideTableWriter writer = new GuideTableWriter(night);
    EcsvWriter table = new EcsvWriter(out, writer.columns(), writer.meta());
    for (SimulatedRun run : night.runs()) {
      for (int i = 0; i < run.log().frames().size(); i++) {
        table.row(writer.row(run.log(), i));
      }
    }
  }

  private boolean severalRuns() {
    return night.runs().size() > 1;
  }

  private boolean dithers() {
    return night.scenario().dither().isPresent();
  }

  private List<Column> columns() {
    String offset = night.scenario().evening().inPixels() ? "pix" : "arcsec";
    List<Column> columns = new ArrayList<>();
    if (severalRuns()) {
      columns.add(new Column("run", "int64", ""));
    }
    columns.add(new Column("time", "float64", "s"));
    columns.add(new Column("ra_offset", "float64", offset));
    columns.add(new Column("dec_offset", "float64", offset));
    columns.add(new Column("ra_pulse", "int64", "ms"));
    columns.add(new Column("dec_pulse", "int64", "ms"));
    columns.add(new Column("snr", "float64", ""));
    columns.add(new Column("flux", "int64", "adu"));
    if (dithers()) {
      columns.add(new Column("dither_ra", "float64", "arcsec"));
      columns.add(new Column("dither_dec", "float64", "arcsec"));
    }
    columns.add(new Column("event", "string", ""));
    return columns;
  }

  private Map<String, Object> meta() {
    Scenario scenario = night.scenario();
    LoopPlan loop = scenario.loop();
    Map<String, Object> meta = new LinkedHashMap<>();
    meta.put("start", scenario.evening().start().toString());
    meta.put("guide_scale", number(scenario.evening().scaleArcsecPerPixel()));
    meta.put("guide_exposure", number(scenario.evening().exposureSeconds()));
    meta.put("time_mark", "middle");
    meta.put("pulse_row", loop.loggedInNextRow() ? "next" : "same");
    meta.put("guide_rate", number(scenario.mount().guideRateSidereal()));
    meta.put("gain_ra", number(loop.ra().gain()));
    meta.put("gain_dec", number(loop.dec().gain()));
    meta.put("deadband_ra", number(loop.ra().deadbandArcsec()));
    meta.put("deadband_dec", number(loop.dec().deadbandArcsec()));
    meta.put("pulse_limit", number(loop.pulseLimitMillis()));
    meta.put("dec_direction", loop.decDirection().name().toLowerCase(Locale.ROOT));
    meta.put("site_latitude", number(scenario.evening().latitudeDegrees()));
    List<Map<String, Object>> runs = new ArrayList<>();
    for (SimulatedRun run : night.runs()) {
      runs.add(pointing(run));
    }
    if (severalRuns()) {
      meta.put("runs", runs);
    } else {
      meta.putAll(runs.get(0));
    }
    return meta;
  }

  private Map<String, Object> pointing(SimulatedRun run) {
    Map<String, Object> keys = new LinkedHashMap<>();
    if (severalRuns()) {
      keys.put("run", run.truth().id());
    }
    keys.put("start", run.log().start().orElseThrow().toString());
    keys.put("declination", number(run.truth().declinationDegrees()));
    keys.put("hour_angle", number(run.truth().hourAngleHours()));
    keys.put("pier_side", run.truth().pierSide().name().toLowerCase(Locale.ROOT));
    return keys;
  }

  private List<String> row(GuideRun run, int i) {
    Frames frames = run.frames();
    List<String> row = new ArrayList<>();
    if (severalRuns()) {
      row.add(Integer.toString(run.id()));
    }
    row.add(FixedDecimal.text(frames.timeSeconds(i), 3));
    row.add(FixedDecimal.text(frames.raArcsec(i) / offsetUnitArcsec, 3));
    row.add(FixedDecimal.text(frames.decArcsec(i) / offsetUnitArcsec, 3));
    int sent = night.scenario().loop().loggedInNextRow() ? i - 1 : i;
    row.add(FixedDecimal.text(sent < 0 ? 0 : frames.raPulseMillis(sent), 0));
    row.add(FixedDecimal.text(sent < 0 ? 0 : frames.decPulseMillis(sent), 0));
    row.add(FixedDecimal.text(frames.snr(i), 1));
    row.add(FixedDecimal.text(frames.fluxAdu(i), 0));
    if (dithers()) {
      row.add(FixedDecimal.text(frames.ditherRaArcsec(i), 3));
      row.add(FixedDecimal.text(frames.ditherDecArcsec(i), 3));
    }
    row.add(
        switch (frames.state(i)) {
          case DITHER -> "dither";
          case SETTLING -> "settling";
          case LOST -> "lost";
          case IDLE -> "idle";
          case USED, REJECTED -> "";
        });
    return row;
  }

  private static BigDecimal number(double value) {
    return FixedDecimal.shortest(value, 6);
  }
}
