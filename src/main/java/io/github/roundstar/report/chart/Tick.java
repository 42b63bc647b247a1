package io.github.roundstar.report.chart;

/** A labelled place on an axis. */
record Tick(double value, String label) {}
