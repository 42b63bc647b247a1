package io.github.roundstar.compare;

import io.github.roundstar.results.NightEvidence;
import io.github.roundstar.results.NightResult;
import java.util.Optional;

/**
 * A night to be compared.
 *
 * @param result its figures
 * @param file the result or log it comes from, without folders
 * @param evidence what its charts show; nothing when it comes from a JSON result
 */
public record NightInput(NightResult result, String file, Optional<NightEvidence> evidence) {
  /** Name of the night. */
  public String night() {
    return result.night().date();
  }
}
