package hemline.shared.result;

/** State of the flow in the gap, judged by the gap Reynolds number q/ν. */
public enum Regime {
  LAMINAR("laminar"),
  TRANSITIONAL("transitional"),
  TURBULENT("turbulent");

  /** Below this gap Reynolds number the flow is taken as laminar. Common practice, no source. */
  public static final double TRANSITION_FROM = 500;

  /** Above this gap Reynolds number the flow is taken as turbulent. Common practice, no source. */
  public static final double TRANSITION_TO = 3000;

  private final String key;

  Regime(String key) {
    this.key = key;
  }

  public static Regime at(double gapReynolds) {
    double re = Math.abs(gapReynolds);
    return re < TRANSITION_FROM ? LAMINAR : re > TRANSITION_TO ? TURBULENT : TRANSITIONAL;
  }

  /** Name in files. */
  public String key() {
    return key;
  }
}
