package hemline.shared.result;

/** How a solve ended. */
public enum SolveStatus {
  /** Residuals and figures have settled. */
  CONVERGED("converged"),
  /** No steady state was found; figures are means with their band over the last cycles. */
  UNSTEADY("unsteady"),
  /** No usable flow was found. */
  FAILED("failed"),
  /** Stopped on request. */
  CANCELLED("cancelled");

  private final String key;

  SolveStatus(String key) {
    this.key = key;
  }

  /** Name in files. */
  public String key() {
    return key;
  }
}
