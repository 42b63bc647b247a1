package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/** Judges one kind of finding: a pure function of the figures. */
interface Rule {
  /** What it is about. */
  FindingCode code();

  /** The finding, also when all is fine; or why the log cannot tell. */
  Answer<Finding> judge(Facts facts);
}
