package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.PierSide;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.stream.Collectors;

/** Three more invented ways to write a night, each of which tells all that a reader needs. */
public enum PlainLog {
  /** German words, tabulators, decimal commas, a length and a word for its direction. */
  MOLE {
    @Override
    String header() {
      return "# Belichtung 2,0 s; Geschwindigkeit der Korrektur 0,5 x siderisch\n"
          + "# Abbildungsma\u00dfstab: 2,43 Bogensekunden je Pixel; Breite 47,2 Grad\n"
          + "# Uhrzeit: MEZ. Ost und Nord sind positiv; die Montierung wird dorthin gedr\u00fcckt, wo es steht.\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
                  Locale.ROOT,
                  "# Lauf %d beginnt, Deklination %.2f Grad, Stundenwinkel %.3f h, S\u00e4ule %s\n",
                  run.id(),
                  run.pointing().declinationDegrees().orElseThrow(),
                  run.pointing().hourAngleHours().orElseThrow(),
                  PlainLog.east(run) ? "Ost" : "West")
              .replace('.', ',')
          + "Zeitpunkt\tAbweichung Rektaszension [Bogensek]\tAbweichung Deklination [Bogensek]\t"
          + "Dauer Rekt [ms]\tRichtung Rekt\tDauer Dekl [ms]\tRichtung Dekl\tZustand\n";
    }

    @Override
    String row(LogPen pen) {
      return String.join(
          "\t",
          pen.clock("dd.MM.yyyy HH:mm:ss,SSS", 1),
          pen.number(pen.ra(), 3, "-"),
          pen.number(pen.dec(), 3, "-"),
          pen.number(Math.abs(pen.raPulse()), 0, ""),
          pen.raPulse() > 0 ? "Ost" : pen.raPulse() < 0 ? "West" : "",
          pen.number(Math.abs(pen.decPulse()), 0, ""),
          pen.decPulse() > 0 ? "Nord" : pen.decPulse() < 0 ? "S\u00fcd" : "",
          pen.dither()
              ? "versetzt"
              : pen.settling() ? "beruhigt sich" : pen.lost() ? "verloren" : "gut");
    }

    @Override
    boolean comma() {
      return true;
    }
  },
  /** Keys and values in any order that a reader may wish for. */
  GULL {
    @Override
    String header() {
      return "scale=2.43 arcsec/px\nguide_rate=0.5\nexposure_ms=2000\nlatitude=47.2 deg\n"
          + "times are UTC; east and north are positive\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "run %d begins\ndeclination=%.2f deg\nhour_angle=%.4f h\npier=%s\n",
          run.id(),
          run.pointing().declinationDegrees().orElseThrow(),
          run.pointing().hourAngleHours().orElseThrow(),
          PlainLog.east(run) ? "east" : "west");
    }

    @Override
    String row(LogPen pen) {
      return "at="
          + pen.clock("yyyy-MM-dd'T'HH:mm:ss.SSS", 0)
          + " ra_error="
          + pen.number(pen.ra() / 2.43, 4, "none")
          + "px dec_error="
          + pen.number(pen.dec() / 2.43, 4, "none")
          + "px ra_pulse="
          + pen.number(pen.raPulse() / 1000, 3, "0")
          + "s dec_pulse="
          + pen.number(pen.decPulse() / 1000, 3, "0")
          + "s snr="
          + pen.number(pen.snr(), 1, "none")
          + " state="
          + (pen.dither() ? "dither" : pen.settling() ? "settling" : pen.lost() ? "lost" : "ok");
    }
  },
  /** A JSON object to a line; those without a frame tell of the night. */
  NEWT {
    @Override
    String header() {
      return "{\"night\": {\"scale\": \"2.43 arcsec/px\", \"guide rate\": 0.5, \"exposure\": \"2.0 s\","
          + " \"latitude\": 47.2}}\n";
    }

    @Override
    String runHead(GuideRun run) {
      return String.format(
          Locale.ROOT,
          "{\"run\": %d, \"target declination\": %.2f, \"hour angle\": \"%.4f h\", \"pier side\": \"%s\"}\n",
          run.id(),
          run.pointing().declinationDegrees().orElseThrow(),
          run.pointing().hourAngleHours().orElseThrow(),
          PlainLog.east(run) ? "east" : "west");
    }

    @Override
    String row(LogPen pen) {
      return "{\"unix\": "
          + String.format(Locale.ROOT, "%.3f", pen.epochSeconds())
          + ", \"star\": {\"east_arcsec\": "
          + pen.number(pen.ra(), 3, "null")
          + ", \"north_arcsec\": "
          + pen.number(pen.dec(), 3, "null")
          + "}, \"pulse\": {\"east_ms\": "
          + pen.number(pen.raPulse(), 0, "0")
          + ", \"north_ms\": "
          + pen.number(pen.decPulse(), 0, "0")
          + "}, \"state\": \""
          + (pen.dither() ? "dither" : pen.settling() ? "settling" : pen.lost() ? "lost" : "ok")
          + "\"}";
    }
  };

  abstract String header();

  abstract String runHead(GuideRun run);

  abstract String row(LogPen pen);

  boolean comma() {
    return false;
  }

  private static boolean east(GuideRun run) {
    return run.pointing().pierSide().orElseThrow() == PierSide.EAST;
  }

  /** The night as the bytes of this log. */
  public byte[] bytes(SimulatedNight night) {
    String text =
        header()
            + night.runs().stream()
                .map(SimulatedRun::log)
                .map(this::run)
                .collect(Collectors.joining());
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private String run(GuideRun run) {
    StringBuilder text = new StringBuilder(runHead(run));
    for (int i = 0; i < run.frames().size(); i++) {
      text.append(row(new LogPen(run, i, comma()))).append('\n');
    }
    return text.toString();
  }
}
