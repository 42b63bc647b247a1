/**
 * The ladder of cures: a night played again with each cure applied, what moved the star drawn from
 * the posterior, and judged as exposures are. {@link
 * io.github.roundstar.diagnosis.ladder.Treatments} says what could be changed, {@link
 * io.github.roundstar.diagnosis.ladder.PlayedNight} plays it, {@link
 * io.github.roundstar.diagnosis.ladder.Ladder} puts it in order of effort and risk.
 */
package io.github.roundstar.diagnosis.ladder;
