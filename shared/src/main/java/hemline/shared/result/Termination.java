package hemline.shared.result;

/**
 * How the solve on one grid came to its end.
 *
 * @param attempt the last one made
 * @param reason why it stopped
 * @param cycle passes per cycle when the iteration cycles, else 0
 */
public record Termination(Attempt attempt, Reason reason, int cycle) {

  /** The attempts a solve makes, in this order, each only after the one before did not settle. */
  public enum Attempt {
    /** Newton's method, laminar flows only. */
    NEWTON("newton"),
    /** Accelerated iteration. */
    ACCELERATED("accelerated"),
    /** Accelerated iteration with more relaxation. */
    RELAXED("relaxed"),
    /** Plain iteration, averaged when it does not settle. */
    AVERAGED("averaged");

    private final String key;

    Attempt(String key) {
      this.key = key;
    }

    /** Name in files. */
    public String key() {
      return key;
    }
  }

  /** Why an attempt stopped. */
  public enum Reason {
    /** Figure, residuals and operating point have settled. */
    SETTLED("settled"),
    /** The figure swings with a steady period. */
    CYCLING("cycling"),
    /** The figure moves without a period. */
    WANDERING("wandering"),
    /** The figure stands still, the residuals do not fall to their limit. */
    STALLED("stalled"),
    /** The numbers ran away. */
    DIVERGED("diverged"),
    /** Stopped on request. */
    CANCELLED("cancelled");

    private final String key;

    Reason(String key) {
      this.key = key;
    }

    /** Name in files. */
    public String key() {
      return key;
    }
  }

  /** A termination of which only the status is known. */
  public static Termination of(SolveStatus status) {
    return new Termination(
        Attempt.ACCELERATED,
        switch (status) {
          case CONVERGED -> Reason.SETTLED;
          case UNSTEADY -> Reason.WANDERING;
          case FAILED -> Reason.DIVERGED;
          case CANCELLED -> Reason.CANCELLED;
        },
        0);
  }
}
