package io.github.roundstar.ingest.layout;

import java.util.List;

/** What is asked about signs and axes. */
record PulseQuestions(PulseSeries series, List<Decision> decisions) {
  void openChange(String about) {
    decisions.add(
        Decision.open(
            about,
            "they change within the log, as after a flip, and no line tells the pier side",
            "[[setting]]\nmeans = \"pier-side\"\nline = '(?<value>east|west)'   # the line that"
                + " tells it"));
  }

  void openCamera(String because) {
    decisions.add(
        Decision.open(
            "camera angle",
            because,
            "[camera]\nra_deg = 0   # direction of east on the camera, from X through Y\n"
                + "dec_deg = 90   # the same of north"));
  }

  void noteSense(boolean dec) {
    String toward = dec ? "north" : "east";
    String away = dec ? "south" : "west";
    decisions.add(
        Decision.noted(
            "direction of " + word(dec),
            "not known",
            "no letter, name or declared sign tells "
                + toward
                + " from "
                + away
                + ", and offset and pulse negated together give the same log: drift direction,"
                + " polar axis and angles stay out",
            "positive = \""
                + toward
                + "\"   # in place of one-way, and \""
                + away
                + "\" in place of other-way; or the reverse"));
  }

  String ask(Meaning offset, Direction toward, Direction away) {
    ColumnRule rule = series.offset(offset.isDec()).rule(offset);
    return LayoutText.column(rule).strip()
        + "\npositive = \""
        + toward.word()
        + "\"   # or \""
        + away.word()
        + "\"";
  }

  static String word(boolean dec) {
    return dec ? "declination" : "right ascension";
  }
}
