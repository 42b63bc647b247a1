/**
 * What the tool decides, against what is true: nights of the second simulator ({@link
 * io.github.roundstar.worlds.Kind}) are analysed by the whole tool, and the decision is held
 * against the same night played again with every cure. Nothing here knows how the tool comes to its
 * decision; it reads the night's JSON, the page, the terminal's lines and the nights' index as a
 * user does.
 *
 * <p>{@link io.github.roundstar.decisions.TrueLadder} is the truth, {@link
 * io.github.roundstar.decisions.ToldLadder} what the JSON says, {@link
 * io.github.roundstar.decisions.Judged} one against the other, {@link
 * io.github.roundstar.decisions.DecisionTable} a hundred nights of every kind. {@link
 * io.github.roundstar.decisions.Contradictions} reads the sentences.
 */
package io.github.roundstar.decisions;
