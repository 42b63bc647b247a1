package io.github.roundstar.compare;

import java.time.LocalDate;

/**
 * Work on the mount.
 *
 * @param date the day it was done; the night that begins that evening is the first after it
 * @param what what was done
 */
public record MountChange(LocalDate date, String what) {}
