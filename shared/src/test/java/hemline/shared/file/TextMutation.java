package hemline.shared.file;

import java.util.SplittableRandom;

/** Damages a text the way hands and disks do. */
final class TextMutation {
  private static final String[] PIECES = {
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    "\"",
    "null",
    "true",
    "-",
    "1e308",
    "1e-320",
    "1e999999999",
    "0",
    "NaN",
    "\\",
    "\u0000",
    "é",
    "99999999999999999999",
    "[[",
    "{\"a\":",
    "-0",
    ".5",
    "\n",
    "1e5",
    "1e-7",
    "\ud800",
    "0.000001",
    "7"
  };

  private TextMutation() {}

  /** The text after one to four damages. */
  static String mutate(String text, SplittableRandom random) {
    StringBuilder out = new StringBuilder(text);
    for (int k = 1 + random.nextInt(4); k > 0 && !out.isEmpty(); k--) {
      int at = random.nextInt(out.length());
      int end = Math.min(out.length(), at + 1 + random.nextInt(8));
      switch (random.nextInt(6)) {
        case 0 -> out.delete(at, end);
        case 1 -> out.insert(at, PIECES[random.nextInt(PIECES.length)]);
        case 2 -> out.replace(at, end, PIECES[random.nextInt(PIECES.length)]);
        case 3 -> out.setCharAt(at, (char) random.nextInt(32, 127));
        case 4 -> changeDigit(out, at, random);
        default -> out.insert(at, out.substring(at, Math.min(out.length(), at + 40)));
      }
    }
    return out.toString();
  }

  /** Keeps the form of the text and changes a figure. */
  private static void changeDigit(StringBuilder out, int from, SplittableRandom random) {
    for (int i = from; i < out.length(); i++) {
      if (Character.isDigit(out.charAt(i))) {
        out.replace(i, i + 1, Integer.toString(random.nextInt(-20, 1000)));
        return;
      }
    }
  }
}
