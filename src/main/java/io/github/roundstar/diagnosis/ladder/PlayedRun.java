package io.github.roundstar.diagnosis.ladder;

import io.github.roundstar.motion.PlayedAxis;
import java.util.Optional;

/**
 * A run with its axes.
 *
 * @param ra nothing where its motion is not known; it then stays as it was
 * @param dec likewise
 */
public record PlayedRun(Optional<PlayedAxis> ra, Optional<PlayedAxis> dec) {}
