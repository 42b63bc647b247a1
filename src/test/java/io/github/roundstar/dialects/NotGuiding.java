package io.github.roundstar.dialects;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * Files that are no log of guiding, though some look like one; the only right reading is a refusal
 * in plain words.
 */
public enum NotGuiding {
  EMPTY,
  BINARY,
  SHOPPING_LIST,
  DIARY,
  TEMPERATURES,
  FOCUS_MOTOR,
  /**
   * Wind by its east and north parts, which have the names and the steady clock of a log of
   * guiding.
   */
  WIND,
  /** Places of a walk: latitude, longitude. */
  WALK,
  EXPOSURE_LIST,
  ACCOUNTS,
  NAMES_WITHOUT_ROWS,
  PROGRAM_SOURCE;

  /** The file of this kind for a seed. */
  public DialectLog log(long seed) {
    Random random = new Random(seed * 7919 + ordinal());
    byte[] bytes;
    if (this == BINARY) {
      bytes = new byte[4000 + random.nextInt(4000)];
      random.nextBytes(bytes);
    } else {
      bytes = text(random).getBytes(StandardCharsets.UTF_8);
    }
    String name =
        "not-guiding-" + name().toLowerCase(Locale.ROOT).replace('_', '-') + "-" + seed + ".log";
    String text = this == BINARY ? "" : new String(bytes, StandardCharsets.UTF_8);
    return new DialectLog(
        seed, name, bytes, text, List.of(), Set.of(), Map.of(), true, Optional.empty());
  }

  private String text(Random random) {
    StringBuilder b = new StringBuilder();
    int rows = 200 + random.nextInt(400);
    switch (this) {
      case SHOPPING_LIST ->
          b.append(
              "for Saturday\n- 2 onions\n- flour 1,5 kg\n- oat milk 2x\n- batteries AA, 8\n- red torch (the old one leaks)\n- bread\n");
      case DIARY -> {
        for (int i = 0; i < 30; i++) {
          b.append("Evening ")
              .append(i + 1)
              .append(": set up at nine, clouds until ")
              .append(10 + i % 3)
              .append(", then a steady sky. Dew on everything. Packed up at two.\n");
        }
      }
      case TEMPERATURES -> {
        b.append("time,outside C,inside C,dew point C,humidity %\n");
        for (int i = 0; i < rows; i++) {
          b.append(
              String.format(
                      Locale.ROOT,
                      "2026-11-03T%02d:%02d:%02dZ,%.1f,%.1f,%.1f,%d%n",
                      18 + i / 360 % 6,
                      i / 6 % 60,
                      i % 6 * 10,
                      6 - 0.004 * i,
                      18.2,
                      2.1 + 0.1 * random.nextGaussian(),
                      70 + i % 20)
                  .replace("\r", ""));
        }
      }
      case FOCUS_MOTOR -> {
        b.append("time;position;temperature;star width\n");
        for (int i = 0; i < rows; i++) {
          b.append(
              String.format(
                  Locale.ROOT,
                  "%02d:%02d:%02d;%d;%.1f;%.2f\n",
                  21 + i / 120 % 3,
                  i / 2 % 60,
                  i % 2 * 30,
                  20500 - i / 9,
                  9.5 - 0.01 * i,
                  2.8 + 0.2 * random.nextGaussian()));
        }
      }
      case WIND -> {
        b.append("# mast by the barn, metres per second\ntime,wind_east,wind_north,gust\n");
        for (int i = 0; i < rows; i++) {
          double east = 1.5 + random.nextGaussian();
          double north = -0.5 + random.nextGaussian();
          b.append(
              String.format(
                  Locale.ROOT,
                  "2026-11-03T20:%02d:%02dZ,%.2f,%.2f,%.2f\n",
                  i * 3 / 60 % 60,
                  i * 3 % 60,
                  east,
                  north,
                  Math.hypot(east, north) + 0.5));
        }
      }
      case WALK -> {
        b.append("point,latitude,longitude,height_m,time\n");
        double lat = 48.1;
        double lon = 9.3;
        for (int i = 0; i < rows; i++) {
          lat += 1e-5 * random.nextGaussian();
          lon += 2e-5;
          b.append(
              String.format(
                  Locale.ROOT,
                  "%d,%.6f,%.6f,%.1f,2026-05-02T09:%02d:%02dZ\n",
                  i + 1,
                  lat,
                  lon,
                  610 + 0.1 * i,
                  i * 5 / 60 % 60,
                  i * 5 % 60));
        }
      }
      case EXPOSURE_LIST -> {
        b.append("file,start,seconds,filter,star width\n");
        for (int i = 0; i < 60; i++) {
          b.append(
              String.format(
                  Locale.ROOT,
                  "veil_%03d.fits,2026-09-12T%02d:%02d:10Z,300,%s,%.2f\n",
                  i + 1,
                  20 + i * 5 / 60 % 4,
                  i * 5 % 60,
                  i % 2 == 0 ? "red" : "green",
                  2.5 + 0.1 * random.nextGaussian()));
        }
      }
      case ACCOUNTS -> {
        b.append("Datum;Zweck;Betrag;Saldo\n");
        double balance = 1200;
        for (int i = 0; i < 120; i++) {
          double amount = Math.round(-4000 * random.nextDouble() + 1500) / 100.0;
          balance += amount;
          b.append(
              String.format(
                      Locale.ROOT,
                      "%02d.%02d.2026;Einkauf;%.2f;%.2f\n",
                      1 + i % 28,
                      1 + i / 28,
                      amount,
                      balance)
                  .replace('.', ',')
                  .replaceFirst("(\\d\\d),(\\d\\d),", "$1.$2."));
        }
      }
      case NAMES_WITHOUT_ROWS ->
          b.append(
              "# guide camera 1.9 arcsec/px\ntime,ra_offset_arcsec,dec_offset_arcsec,ra_pulse_ms,dec_pulse_ms\n");
      case PROGRAM_SOURCE -> {
        for (int i = 0; i < 40; i++) {
          b.append("double offset")
              .append(i)
              .append(" = star[")
              .append(i)
              .append("] - mark; // arcsec, east positive\nif (offset")
              .append(i)
              .append(" > 0.2) push(")
              .append(i)
              .append(");\n");
        }
      }
      default -> {}
    }
    return b.toString();
  }
}
