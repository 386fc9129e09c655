package hemline.solver.flow;

/** Hears how far long work has come; may be called from several threads. */
@FunctionalInterface
public interface ProgressListener {
  ProgressListener NONE = (done, what) -> {};

  /**
   * Reports progress.
   *
   * @param done share of the whole work, 0 to 1
   * @param what the part just finished or running, a short phrase
   */
  void progress(double done, String what);
}
