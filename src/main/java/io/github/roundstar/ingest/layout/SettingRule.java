package io.github.roundstar.ingest.layout;

import java.util.Optional;

/**
 * Where a setting stands, or what it is.
 *
 * @param means which setting
 * @param line pattern with a group {@code value}
 * @param value the value itself, where the log does not tell it
 * @param unit its unit
 */
public record SettingRule(
    Setting means, Optional<LinePattern> line, Optional<String> value, Optional<String> unit) {}
