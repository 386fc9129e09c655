package hemline.viewer.format;

/**
 * The unit in which lengths of lips, gaps and machines are read and told to people. It is chosen
 * once for the whole program; files for programs keep SI, messages of the solver millimetres.
 */
public enum LengthUnit {
  MM("mm", 1e-3, 2),
  INCH("in", 25.4e-3, 4);

  /** Finest common fraction of an inch. */
  private static final int FRACTION = 64;

  private static volatile LengthUnit now = MM;

  private final String symbol;
  private final double metres;
  private final int decimals;

  LengthUnit(String symbol, double metres, int decimals) {
    this.symbol = symbol;
    this.metres = metres;
    this.decimals = decimals;
  }

  /** The unit in use. */
  public static LengthUnit now() {
    return now;
  }

  /** Chooses the unit for all that is told from here on. */
  public static void use(LengthUnit unit) {
    now = unit;
  }

  /** The unit in use, as it stands behind a number. */
  public static String unit() {
    return now.symbol;
  }

  /** Shown number over metres, in the unit in use. */
  public static double factor() {
    return 1 / now.metres;
  }

  /** A length in the unit in use: "2 mm", "0.07874 in". */
  public static String text(double metres, int significant) {
    return bare(metres, significant) + " " + unit();
  }

  /** The same without the unit. */
  public static String bare(double metres, int significant) {
    return Digits.plain(factor() * metres, significant);
  }

  /** The same with the decimals that a drawing deserves. */
  public static String drawn(double metres) {
    return Digits.fixed(factor() * metres, now.decimals);
  }

  /** A length as it stands in a field. */
  public static String exactly(double metres) {
    return text(metres, now == MM ? 6 : 5);
  }

  /** A length as a fraction of an inch where it is one and inches are in use: "1/64 in". */
  public static String fraction(double metres) {
    double parts = FRACTION * metres / INCH.metres;
    long whole = Math.round(parts);
    if (now != INCH || whole <= 0 || whole >= FRACTION || Math.abs(parts - whole) > 1e-9) {
      return exactly(metres);
    }
    long common = Long.lowestOneBit(whole);
    return whole / common + "/" + FRACTION / common + " in";
  }

  /** An area: "20 mm\u00b2", "0.031 in\u00b2". */
  public static String area(double squareMetres, int significant) {
    return Digits.plain(areaFactor() * squareMetres, significant) + " " + areaUnit();
  }

  /** The unit of areas, as it stands behind a number. */
  public static String areaUnit() {
    return unit() + "\u00b2";
  }

  /** Shown number over square metres. */
  public static double areaFactor() {
    return factor() * factor();
  }

  /** Symbol of this unit. */
  public String symbol() {
    return symbol;
  }

  /** Step of a new drawing grid, m: a tenth of a millimetre, or 1/64 in. */
  public double gridStep() {
    return this == MM ? 0.1e-3 : metres / FRACTION;
  }
}
