package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Loops that a careful log does not have: what can be told stands, what cannot is null with the
 * reason.
 */
class OddLoopsTest {
  private static final String PLAIN = KnownTruthTest.scenario(1, 0.6, 0.4, 0);

  private static GuideRun run(String scenario) throws Exception {
    return Simulation.run(ScenarioReader.parse("odd", scenario)).runs().get(0).log();
  }

  private static NightResult analysed(GuideRun run) {
    return NightAnalysis.of(
            new Night("odd", List.of(run), List.of()), Equipment.UNKNOWN, "test", true)
        .result();
  }

  private static GuideRun with(GuideRun run, Frames frames) {
    return new GuideRun(
        run.id(),
        run.start(),
        run.pointing(),
        run.camera(),
        run.loop(),
        frames,
        run.counts(),
        run.notes());
  }

  private static String because(NightResult result, String figure) {
    return result.notComputed().stream()
        .filter(reason -> reason.figure().equals(figure))
        .map(NotComputed::because)
        .findFirst()
        .orElse("");
  }

  private static double sum(List<BudgetPart> parts) {
    return parts.stream().mapToDouble(BudgetPart::meanSquareArcsec2).sum();
  }

  private static void assertAddsUp(RunResult run) {
    assertThat(sum(run.budget().ra()))
        .isCloseTo(
            Math.pow(run.guided().ra().rmsArcsec(), 2)
                + Math.pow(run.guided().ra().meanArcsec(), 2),
            within(1e-9));
    assertThat(sum(run.budget().dec()))
        .isCloseTo(
            Math.pow(run.guided().dec().rmsArcsec(), 2)
                + Math.pow(run.guided().dec().meanArcsec(), 2),
            within(1e-9));
  }

  @Test
  void cutOffPulsesStillTellTheGain() throws Exception {
    RunResult run =
        analysed(run(PLAIN.replace("pulse_limit_ms = 1000", "pulse_limit_ms = 30"))).runs().get(0);

    assertThat(run.loop().ra().pulseLimitMillis()).isCloseTo(30, within(1.0));
    assertThat(run.loop().ra().gain().value()).isCloseTo(0.6, within(0.05));
    assertAddsUp(run);
  }

  @Test
  void oneWayGuidingInDeclinationIsALoop() throws Exception {
    NightResult result =
        analysed(run(PLAIN.replace("[loop.ra]", "dec_direction = \"south\"\n[loop.ra]")));

    RunResult run = result.runs().get(0);
    assertThat(run.loop().dec().explainedShare()).isGreaterThan(0.99);
    assertThat(run.loop().dec().gain().value()).isCloseTo(0.6, within(0.1));
    assertAddsUp(run);
  }

  @Test
  void runWithoutAPulseIsAllMotion() throws Exception {
    GuideRun guided = run(PLAIN);
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 1200; i++) {
      frames.add(3 * i, guided.frames().raArcsec(i), guided.frames().decArcsec(i)).pulses(0, 0);
    }
    NightResult result = analysed(with(guided, frames.build()));

    RunResult run = result.runs().get(0);
    assertThat(run.loop().ra()).isNull();
    assertThat(because(result, "/runs/*/loop/ra")).contains("no pulse was sent");
    assertThat(because(result, "/replay")).contains("no pulse was sent");
    assertAddsUp(run);
  }

  @Test
  void logWithoutPulsesTellsNothingOfTheLoop() throws Exception {
    GuideRun guided = run(PLAIN);
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 600; i++) {
      frames.add(3 * i, guided.frames().raArcsec(i), guided.frames().decArcsec(i));
    }
    NightResult result = analysed(with(guided, frames.build()));

    assertThat(result.runs().get(0).budget().ra()).isNull();
    assertThat(result.replay()).isNull();
    for (String figure : List.of("/runs/*/loop/ra", "/runs/*/budget/dec", "/replay")) {
      assertThat(because(result, figure)).as(figure).contains("no pulses");
    }
  }

  @Test
  void threeMinutesAreEnoughForTheLaw() throws Exception {
    GuideRun guided = run(PLAIN);
    NightResult result = analysed(with(guided, guided.frames().slice(0, 60)));

    RunResult run = result.runs().get(0);
    assertThat(run.loop().ra().explainedShare()).isGreaterThan(0.99);
    assertThat(run.loop().ra().gain().covers(0.6)).isTrue();
    assertAddsUp(run);
  }

  @Test
  void cadenceThatChangesLeavesTheFiguresStanding() throws Exception {
    GuideRun slow = run(PLAIN);
    GuideRun fast =
        run(
            PLAIN
                .replace("cadence_s = 3.0", "cadence_s = 1.5")
                .replace("guide_exposure_s = 2.0", "guide_exposure_s = 1.0"));
    FramesBuilder frames = new FramesBuilder();
    add(frames, slow.frames(), 0, 1000);
    add(frames, fast.frames(), 3010, 1500);
    NightResult result = analysed(with(slow, frames.build()));

    RunResult run = result.runs().get(0);
    assertThat(run.loop().ra().gain().value()).isCloseTo(0.6, within(0.06));
    assertThat(run.loop().ra().explainedShare()).isGreaterThan(0.99);
    assertAddsUp(run);
  }

  private static void add(FramesBuilder to, Frames from, double later, int count) {
    for (int i = 0; i < count; i++) {
      to.add(later + from.timeSeconds(i), from.raArcsec(i), from.decArcsec(i))
          .pulses(from.raPulseMillis(i), from.decPulseMillis(i));
      if (from.ditherStart(i)) {
        to.dither(from.ditherRaArcsec(i), from.ditherDecArcsec(i));
      }
      to.state(from.state(i));
    }
  }

  /** A third of the pulses follow something that the log does not hold. */
  @Test
  void loopThatIsNotUnderstoodIsNotPlayedAgain() throws Exception {
    GuideRun guided = run(PLAIN);
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 1200; i++) {
      double stray = i % 3 == 0 ? -1 : 1;
      frames
          .add(3 * i, guided.frames().raArcsec(i), guided.frames().decArcsec(i))
          .pulses(
              stray * guided.frames().raPulseMillis(i), stray * guided.frames().decPulseMillis(i));
    }
    NightResult result = analysed(with(guided, frames.build()));

    assertThat(result.runs().get(0).loop().ra().explainedShare()).isLessThan(0.9);
    assertThat(result.replay()).isNull();
    assertThat(because(result, "/replay")).contains("90 % are needed");
  }
}
