package io.github.roundstar.simulate;

import io.github.roundstar.model.GuideRun;

/**
 * One simulated run.
 *
 * @param log the run as a log would tell it, but not rounded; pulses stand with the frame they
 *     answer
 * @param frames what really happened
 * @param truth true figures of the whole run
 */
public record SimulatedRun(GuideRun log, FrameTruth frames, RunTruth truth) {}
