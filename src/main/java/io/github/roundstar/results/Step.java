package io.github.roundstar.results;

/**
 * One thing to do next.
 *
 * @param cure which cure, as on the ladder; record where more is to be logged first
 * @param rung its rung
 * @param text what to do, with its number
 * @param effort what it takes
 * @param wins what it wins, in words; empty where it wins nothing by itself
 * @param nextLog how the next log will show that it worked
 * @param caution what to take care of; empty where nothing can be hurt
 */
public record Step(
    String cure,
    String rung,
    String text,
    String effort,
    String wins,
    String nextLog,
    String caution) {}
