package hemline.solver.plenum;

/** What is told of a hold. */
public enum HoldVerdict {
  /** Every margin and its band reach the safety factor. */
  YES("yes"),
  /** As above, but once it slips it does not stop. */
  UNTIL_IT_SLIPS("until it slips"),
  /** A margin, or the low end of its band, falls short. */
  NO("no"),
  /** The margins suffice, but a limit is overstepped within which alone they are known. */
  NOT_SHOWN("not shown");

  private final String key;

  HoldVerdict(String key) {
    this.key = key;
  }

  /** Name in files and on screen. */
  public String key() {
    return key;
  }
}
