package io.github.roundstar.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.GuideLog;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What follows from settings: the hour angle from the clock, sky axes from the camera's angle. */
class LayoutSettingsTest {
  private static final String NAMES = "[text]\nnames = '^t,'\n";
  private static final String SKY =
      """
      [[column]]
      name = "t"
      means = "time"
      [[column]]
      name = "e"
      means = "ra-offset"
      unit = "arcsec"
      positive = "east"
      [[column]]
      name = "n"
      means = "dec-offset"
      unit = "arcsec"
      positive = "north"
      """;
  private static final String CAMERA =
      SKY.replace("ra-offset", "x-offset")
          .replace("dec-offset", "y-offset")
          .replaceAll("positive = .*\n", "");

  private static String setting(String means, String more) {
    return "[[setting]]\nmeans = \"" + means + "\"\n" + more + "\n";
  }

  /**
   * 9.662438 degrees: mean sidereal time at Greenwich by the formula of 1982 (ERFA 2.0.0, gmst82)
   * for this instant, plus 9.25 degrees of longitude, less 8.5 h.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource({
    "date-time, 2024-03-10T21:15:30.500Z, 08:30:00, h",
    "date-time, 2024-03-10 22:15:30.500, 8.5, h",
    "clock, 22:15:30.500, 127.5, deg",
    "elapsed-s, 330.5, 8h30m, h",
    "mjd, 60379.885769676, 8.5, h",
    "unix-ms, 1710105330500, 8.5, h",
  })
  void hourAngleFollowsFromRightAscensionSiteAndTime(
      String form, String time, String ra, String unit) throws Exception {
    String layout =
        NAMES
            + "[time]\nform = \""
            + form
            + "\"\nutc_offset = \"+01:00\"\n"
            + SKY
            + setting("longitude", "value = \"9.25\"")
            + setting("right-ascension", "line = 'at (?<value>.+)'\nunit = \"" + unit + "\"")
            + (form.equals("clock") ? setting("date", "value = \"2024-03-10\"") : "")
            + (form.equals("elapsed-s") ? setting("start", "value = \"2024-03-10T22:10:00\"") : "");

    GuideLog log = LayoutReaderTest.read("at " + ra + "\nt,e,n\n" + time + ",0.1,0.2\n", layout);

    assertThat(log.runs().get(0).pointing().hourAngleHours().orElseThrow() * 15)
        .isCloseTo(9.662438, within(1e-5));
  }

  /** Ninety seconds, in each of the units that elapsed time may have. */
  @ParameterizedTest
  @CsvSource({"elapsed-s, 90", "elapsed-ms, 90000", "elapsed-min, 1.5"})
  void elapsedTimeIsInSecondsWhateverItsUnit(String form, String time) throws Exception {
    String layout = NAMES + "[time]\nform = \"" + form + "\"\n" + SKY;

    GuideLog log = LayoutReaderTest.read("t,e,n\n0,0,0\n" + time + ",0.1,0.2\n", layout);

    assertThat(log.runs().get(0).frames().timeSeconds(1)).isEqualTo(90);
  }

  @Test
  void hourAngleNeedsTheLongitude() throws Exception {
    String layout =
        NAMES
            + "[time]\nform = \"date-time\"\n"
            + SKY
            + setting("right-ascension", "value = \"8\"");

    GuideLog log = LayoutReaderTest.read("t,e,n\n2024-03-10T21:15:30Z,0.1,0.2\n", layout);

    assertThat(log.runs().get(0).pointing().hourAngleHours()).isEmpty();
  }

  /** Of a star at x = 1, y = 2, turned by hand. */
  @ParameterizedTest
  @CsvSource({"0, 1, 2", "90, 2, -1", "180, -1, -2", "-90, -2, 1"})
  void cameraAngleOfTheLogTurnsTheOffsets(String angle, double east, double north)
      throws Exception {
    String layout = NAMES + CAMERA + setting("camera-angle", "line = '^angle (?<value>\\S+)'");

    Frames frames =
        LayoutReaderTest.read("angle " + angle + "\nt,e,n\n1,1,2\n", layout).runs().get(0).frames();

    assertThat(frames.raArcsec(0)).isCloseTo(east, within(1e-12));
    assertThat(frames.decArcsec(0)).isCloseTo(north, within(1e-12));
  }

  @Test
  void cameraAngleOfTheLayoutHoldsForAMirroredCameraToo() throws Exception {
    String layout =
        NAMES
            + "[camera]\nra_deg = 0\ndec_deg = -90\n"
            + CAMERA
            + setting("camera-angle", "value = \"90\"");

    Frames frames = LayoutReaderTest.read("t,e,n\n1,1,2\n", layout).runs().get(0).frames();

    assertThat(frames.raArcsec(0)).isCloseTo(2, within(1e-12));
    assertThat(frames.decArcsec(0)).isCloseTo(1, within(1e-12));
  }

  @Test
  void lineThatTellsOfALostStarIsAFrameAtItsTime() throws Exception {
    String layout =
        NAMES + SKY + "[[event]]\nmeans = \"lost\"\nline = '^star lost at (?<time>\\S+) s'\n";

    GuideLog log =
        LayoutReaderTest.read("t,e,n\n1,1,2\nstar lost at 3 s\nstar lost at x s\n5,1,2\n", layout);

    Frames frames = log.runs().get(0).frames();
    assertThat(log.source().rows()).isEqualTo(4);
    assertThat(log.source().unusable()).isEqualTo(1);
    assertThat(log.runs().get(0).counts().lost()).isEqualTo(1);
    assertThat(frames.timeSeconds(1)).isEqualTo(3);
    assertThat(frames.state(1)).isEqualTo(FrameState.LOST);
    assertThat(frames.state(2)).isEqualTo(FrameState.USED);
  }

  @Test
  void tableLeftOutEndsBeforeTheNextNames() throws Exception {
    String layout = NAMES + "[[leave_out]]\nfrom = '^step,'\n" + SKY;

    GuideLog log = LayoutReaderTest.read("t,e,n\n1,1,2\nstep,x,y\n9,9,9\nt,e,n\n3,1,2\n", layout);

    assertThat(log.source().rows()).isEqualTo(2);
    assertThat(log.source().unusable()).isZero();
  }
}
