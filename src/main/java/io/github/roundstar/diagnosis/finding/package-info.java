/**
 * From figures to a decision: what trailed the stars, how sure that is, what to do about it in the
 * order of a careful owner, and what to expect after.
 *
 * <p><b>How.</b> {@link io.github.roundstar.diagnosis.finding.Diagnosis} is the front door. Every
 * code of {@link io.github.roundstar.diagnosis.finding.FindingCode} has one {@code Rule}, a pure
 * function of {@code Facts}: the night's result and what the user says of the equipment. A rule
 * judges bounds of intervals, never a bare value, by the limits in {@code Thresholds}, and answers
 * with a finding or with the reason why the log cannot tell. {@code LadderReading} reads the
 * decision off the ladder; {@code Draft} gives a finding the level that its cure has there, {@code
 * Verdicts} puts the decision into a sentence, {@code CureWords} into steps.
 *
 * <p><b>Readers.</b> Figures of one kind are read in one class each: {@code TrailingBudget}, {@code
 * ReplayReading}, {@code LoopReading}, {@code PulseReading}, {@code AxisReading}, {@code
 * ExposureTally}, {@code EventTally}.
 *
 * <p><b>Units.</b> In the names; shares are parts of one.
 *
 * <p><b>Missing data.</b> {@code motion.Answer}: a value or the reason why there is none.
 *
 * <p><b>Neighbours.</b> Imports {@code results}, {@code motion} (its {@code Answer} and {@code
 * Axis}), {@code sky} and {@code model}; used by {@code diagnosis}.
 */
package io.github.roundstar.diagnosis.finding;
