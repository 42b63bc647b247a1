package io.github.roundstar.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every key of the equipment file arrives; every other key or value is refused by name. */
class EquipmentReaderTest {
  @TempDir Path folder;
  private LogFiles files;

  @BeforeEach
  void inFolder() {
    files = new LogFiles(folder);
  }

  private Equipment read(String text) throws Exception {
    return EquipmentReader.read(files.write("equipment.toml", text));
  }

  @Test
  void everyKeyArrives() throws Exception {
    Equipment equipment =
        read(
            """
            [site]
            latitude_deg = 48.2
            longitude_deg = 16.4
            elevation_m = 320
            pressure_hpa = 980
            temperature_c = -3.5
            [mount]
            name = "the old one"
            worm_period_s = 479
            guide_rate = 0.5
            drive = "strain-wave"
            [[mount.gear]]
            name = "belt"
            period_s = 13.3
            [[mount.gear]]
            period_s = 61
            [guide]
            focal_length_mm = 240
            pixel_um = 3.75
            binning = 2
            aperture_mm = 60
            mirrored = true
            star_x_arcmin = 12
            star_y_arcmin = -30
            arrangement = "off-axis"
            [imaging]
            focal_length_mm = 800
            pixel_um = 3.76
            width_px = 6248
            height_px = 4176
            binning = 1
            exposure_s = 300
            position_angle_deg = 90
            mirrored = true
            [sky]
            seeing_fwhm_arcsec = 2.5
            [limits]
            elongation = 1.2
            rms_arcsec = 0.8
            """);
    assertThat(equipment.site().latitudeDegrees()).hasValue(48.2);
    assertThat(equipment.site().longitudeDegrees()).hasValue(16.4);
    assertThat(equipment.site().elevationMetres()).hasValue(320);
    assertThat(equipment.site().pressureHectopascal()).hasValue(980);
    assertThat(equipment.site().temperatureCelsius()).hasValue(-3.5);
    assertThat(equipment.mount().name()).hasValue("the old one");
    assertThat(equipment.mount().wormPeriodSeconds()).hasValue(479);
    assertThat(equipment.mount().guideRateSidereal()).hasValue(0.5);
    assertThat(equipment.mount().drive()).hasValue(Equipment.Drive.STRAIN_WAVE);
    assertThat(equipment.mount().gears())
        .containsExactly(new Equipment.Gear("belt", 13.3), new Equipment.Gear("gear 2", 61));
    assertThat(equipment.guide().focalLengthMillimetres()).hasValue(240);
    assertThat(equipment.guide().pixelMicrometres()).hasValue(3.75);
    assertThat(equipment.guide().binning()).hasValue(2);
    assertThat(equipment.guide().apertureMillimetres()).hasValue(60);
    assertThat(equipment.guide().mirrored()).isTrue();
    assertThat(equipment.guide().starXArcmin()).hasValue(12);
    assertThat(equipment.guide().starYArcmin()).hasValue(-30);
    assertThat(equipment.guide().arrangement()).hasValue(Equipment.Arrangement.OFF_AXIS);
    assertThat(equipment.imaging().focalLengthMillimetres()).hasValue(800);
    assertThat(equipment.imaging().pixelMicrometres()).hasValue(3.76);
    assertThat(equipment.imaging().widthPixels()).hasValue(6248);
    assertThat(equipment.imaging().heightPixels()).hasValue(4176);
    assertThat(equipment.imaging().binning()).hasValue(1);
    assertThat(equipment.imaging().exposureSeconds()).hasValue(300);
    assertThat(equipment.imaging().positionAngleDegrees()).hasValue(90);
    assertThat(equipment.imaging().mirrored()).isTrue();
    assertThat(equipment.seeingFwhmArcsec()).hasValue(2.5);
    assertThat(equipment.limits().elongation()).isEqualTo(1.2);
    assertThat(equipment.limits().rmsArcsec()).hasValue(0.8);
  }

  @Test
  void anEmptyFileSaysNothing() throws Exception {
    assertThat(read("")).isEqualTo(Equipment.UNKNOWN);
  }

  /** 86164.0905 s of a mean sidereal day over 180 teeth. */
  @Tag("identity")
  @Test
  void teethGiveThePeriod() throws Exception {
    assertThat(read("[mount]\nworm_teeth = 180").mount().wormPeriodSeconds().getAsDouble())
        .isCloseTo(478.689392, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"worm, WORM", "friction, FRICTION", "strain-wave, STRAIN_WAVE"})
  void drivesHaveTheirWords(String word, Equipment.Drive drive) throws Exception {
    assertThat(read("[mount]\ndrive = \"" + word + "\"").mount().drive()).hasValue(drive);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          [mount];guide_rate = "fast" | mount.guide_rate: found "fast", expected a number such as 0.5: give a number from 0.001 to 10 without quotes, or remove the key
          [mount];guide_speed = 1     | mount.guide_speed: unknown key, the nearest known one is guide_rate: correct the key or remove it
          [mnt];name = "a"            | mnt: unknown key, the nearest known one is mount: correct the key or remove it
          [mount];drive = "gears"     | mount.drive: found "gears", expected one of "worm", "strain-wave", "friction": use one of these words, or remove the key
          [mount];worm_teeth = 1;worm_period_s = 400 | mount.worm_period_s: found together with worm_teeth: keep the one that you are sure of
          [[mount.gear]];name = "a"   | mount.gear[1].period_s: missing: give the seconds of one turn at the sidereal rate
          [site];latitude_deg = 97    | site.latitude_deg: found 97, expected a number such as 0.5: give a number from -90 to 90 without quotes, or remove the key
          """)
  void faultsNameTheKey(String lines, String message) {
    assertThatThrownBy(() -> read(lines.replace(';', '\n')))
        .isInstanceOf(UnusableInputException.class)
        .hasMessage("equipment.toml: " + message);
  }

  @Test
  void wrongSyntaxNamesTheLine() {
    assertThatThrownBy(() -> read("[mount]\nname = old\n"))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith("equipment.toml:2: ");
    assertThatThrownBy(() -> EquipmentReader.read(folder.resolve("none.toml")))
        .isInstanceOf(UnusableInputException.class)
        .hasMessageStartingWith("none.toml: no such file: ");
  }
}
