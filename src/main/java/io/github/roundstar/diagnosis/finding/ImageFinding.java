package io.github.roundstar.diagnosis.finding;

/** Findings that only measured images can show: what the guide log cannot hold. */
final class ImageFinding {
  private ImageFinding() {}

  /** A draft that counts exposures lost to some causes, or says why there are none to count. */
  static Draft of(FindingCode code, Facts facts, String... causes) {
    Draft draft = new Draft(code, facts);
    if (facts.exposures().isEmpty()) {
      return draft.shareUnknown(
          facts.result().exposures() == null
              ? facts.because("/exposures")
              : "the log covers too few exposures");
    }
    if (!facts.exposures().get().measured()) {
      return draft.shareUnknown(
          "only images tell, and none was measured: name them with --exposures");
    }
    return draft
        .lostTo(causes)
        .say(
            "Judged by "
                + Wording.counted(facts.exposures().get().judged(), "exposure")
                + " against the guide log.");
  }
}
