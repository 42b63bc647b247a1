/**
 * From files to finished reports: expands what the user named, reads logs, forms nights, has each
 * analysed and rendered, and moves the finished files into place. One bad night never stops the
 * others.
 *
 * <p><b>Files.</b> A result is written under a temporary name beside its place and moved, so that
 * no half file is ever seen and no earlier report is lost to a failure.
 *
 * <p><b>Neighbours.</b> Imports {@code ingest}, {@code diagnosis}, {@code compare}, {@code results}
 * and {@code report}. Start at {@link io.github.roundstar.pipeline.Analysis}, {@link
 * io.github.roundstar.pipeline.Compare} or {@link io.github.roundstar.pipeline.SeasonRun}.
 */
package io.github.roundstar.pipeline;
