package hemline.viewer.picture;

/**
 * Estimates how wide a text is, without asking any font, so that a layout is the same everywhere.
 */
public final class TextWidth {
  private static final String NARROW = "iljI.,:;'|!() ";
  private static final String WIDE = "mwMW@%\u00b1\u2212+=<>\u2265\u2264~";

  private TextWidth() {}

  /** Width in sheet units of text set at a size. */
  public static double of(String text, double size) {
    double ems = 0;
    for (int k = 0; k < text.length(); k++) {
      char c = text.charAt(k);
      if (NARROW.indexOf(c) >= 0) {
        ems += 0.34;
      } else if (WIDE.indexOf(c) >= 0) {
        ems += 0.84;
      } else if (Character.isUpperCase(c) || Character.isDigit(c)) {
        ems += 0.66;
      } else {
        ems += 0.59;
      }
    }
    return ems * size;
  }

  /** The text, or its beginning with an ellipsis where it would be wider than allowed. */
  public static String fitted(String text, double size, double allowed) {
    if (of(text, size) <= allowed) {
      return text;
    }
    int keep = text.length();
    while (keep > 1 && of(text.substring(0, keep) + "\u2026", size) > allowed) {
      keep--;
    }
    return text.substring(0, keep).stripTrailing() + "\u2026";
  }
}
