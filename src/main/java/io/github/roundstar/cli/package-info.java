/**
 * The command line: options, exit codes, what is printed where. The only package that prints, and
 * the only one that may ask for clock, locale or zone. Start at {@link
 * io.github.roundstar.cli.Main}.
 */
package io.github.roundstar.cli;
