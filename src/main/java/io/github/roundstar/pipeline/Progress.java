package io.github.roundstar.pipeline;

/** Hears how far a long job is; called from several threads, never at the same time. */
public interface Progress {
  /** Says nothing. */
  Progress SILENT = (done, of) -> {};

  /**
   * So much is done.
   *
   * @param done parts finished
   * @param of parts in all
   */
  void at(int done, int of);
}
