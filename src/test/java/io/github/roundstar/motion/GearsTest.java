package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Lines are given to the gears they can belong to. */
class GearsTest {
  private static final double RESOLUTION = 0.5 / 7200;

  private static final Gears WORM = new Gears(OptionalDouble.of(478.7), List.of());
  private static final Gears UNKNOWN = new Gears(OptionalDouble.empty(), List.of());
  private static final Gears WITH_TRANSFER =
      new Gears(
          OptionalDouble.of(478.7), List.of(new Equipment.Gear("transfer", 66), gear("motor", 12)));

  @Test
  void wormAndItsHarmonicsAreOneFamily() {
    List<Family> families = place(WORM, List.of(), 479.5);
    assertThat(families).hasSize(1);
    assertThat(families.get(0).label(1)).isEqualTo("worm");
    families = place(WORM, families, 239.6);
    assertThat(families).hasSize(1);
    assertThat(families.get(0).harmonics()).containsExactly(1, 2);
    assertThat(families.get(0).label(2)).isEqualTo("worm/2");
    assertThat(families.get(0).periodSeconds()).isCloseTo(479.5, within(1e-9));
  }

  @Test
  void harmonicFoundFirstIsStillTheWorms() {
    List<Family> families = place(WORM, List.of(), 160);
    assertThat(families.get(0).harmonics()).containsExactly(3);
    assertThat(families.get(0).periodSeconds()).isCloseTo(480, within(1e-9));
    families = place(WORM, families, 479);
    assertThat(families.get(0).harmonics()).containsExactly(1, 3);
  }

  @Test
  void namedGearIsCalledByItsName() {
    List<Family> families = place(WITH_TRANSFER, List.of(), 66.2);
    assertThat(families.get(0).label(1)).isEqualTo("gear:transfer");
    families = place(WITH_TRANSFER, families, 12.02);
    assertThat(families).extracting(f -> f.label(1)).containsExactly("gear:transfer", "gear:motor");
  }

  @Test
  void lineThatIsNobodysMakesAFamilyOfItsOwn() {
    List<Family> families = place(WITH_TRANSFER, List.of(), 100);
    assertThat(families.get(0).label(1)).isEqualTo("unlabelled");
    families = place(WITH_TRANSFER, families, 73);
    assertThat(families).hasSize(2);
  }

  @Test
  void fundamentalFoundAfterItsHarmonicTakesTheFamilyOver() {
    List<Family> families = place(UNKNOWN, List.of(), 240);
    families = place(UNKNOWN, families, 479.8);
    assertThat(families).hasSize(1);
    assertThat(families.get(0).harmonics()).containsExactly(1, 2);
    assertThat(families.get(0).periodSeconds()).isCloseTo(480, within(1e-9));
    families = place(UNKNOWN, families, 160);
    assertThat(families.get(0).harmonics()).containsExactly(1, 2, 3);
  }

  @Test
  void firstFamilyWithHarmonicsIsTheStrainWaveDrive() {
    Gears gears =
        new Gears(OptionalDouble.empty(), List.of(), Optional.of(Equipment.Drive.STRAIN_WAVE));
    List<Family> families = place(gears, List.of(), 100);
    families = place(gears, families, 240);
    assertThat(families).extracting(Family::source).containsOnly(Family.UNLABELLED);
    families = place(gears, families, 479.8);
    families = place(gears, families, 160);
    families = place(gears, families, 50);
    assertThat(families).extracting(Family::source).containsExactly("unlabelled", "strain-wave");
    assertThat(families.get(1).harmonics()).containsExactly(1, 2, 3);
    assertThat(families.get(1).label(2)).isEqualTo("strain-wave/2");
  }

  @Test
  void periodsWithinAPercentBelongToTheGear() {
    assertThat(WORM.place(List.of(), 1 / (478.7 * 1.009), 1e-6).get(0).source())
        .isEqualTo(Family.WORM);
    assertThat(WORM.place(List.of(), 1 / (478.7 * 1.012), 1e-6).get(0).source())
        .isEqualTo(Family.UNLABELLED);
  }

  @Test
  void shortRunIsGivenItsResolution() {
    double blurred = 1 / 478.7 + 0.9 * RESOLUTION;
    assertThat(WORM.place(List.of(), blurred, RESOLUTION).get(0).source()).isEqualTo(Family.WORM);
    assertThat(WORM.place(List.of(), blurred, RESOLUTION / 2).get(0).source())
        .isEqualTo(Family.UNLABELLED);
  }

  @Test
  void equipmentFileGivesTheGears() {
    Gears gears = Gears.of(Equipment.UNKNOWN);
    assertThat(gears.wormPeriodSeconds()).isEmpty();
    assertThat(gears.others()).isEmpty();
  }

  private static Equipment.Gear gear(String name, double periodSeconds) {
    return new Equipment.Gear(name, periodSeconds);
  }

  private static List<Family> place(Gears gears, List<Family> families, double periodSeconds) {
    return gears.place(families, 1 / periodSeconds, RESOLUTION);
  }
}
