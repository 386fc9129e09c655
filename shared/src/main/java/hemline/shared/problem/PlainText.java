package hemline.shared.problem;

import java.util.function.IntPredicate;

/**
 * Texts of strangers on their way to people: what steers a terminal, turns the direction of writing
 * or is no character at all is shown as a replacement mark, and refused in names.
 */
public final class PlainText {
  /** Longest name of a lip, duct or machine. */
  public static final int LONGEST_NAME = 120;

  private static final int REPLACEMENT = 0xFFFD;

  private PlainText() {}

  /** One line in which every character can be seen. */
  public static String shown(String text) {
    if (text.codePoints().noneMatch(PlainText::unseen)) {
      return text;
    }
    StringBuilder out = new StringBuilder();
    text.codePoints().forEach(c -> out.appendCodePoint(unseen(c) ? REPLACEMENT : c));
    return out.toString();
  }

  /** A text made fit for a name: seen and not too long. */
  public static String asName(String text) {
    String seen = shown(text);
    if (seen.length() <= LONGEST_NAME) {
      return seen;
    }
    boolean half = Character.isHighSurrogate(seen.charAt(LONGEST_NAME - 1));
    return seen.substring(0, half ? LONGEST_NAME - 1 : LONGEST_NAME);
  }

  /** What is wrong with a name, as the end of a sentence; empty if nothing is. */
  public static String faultOfName(String name) {
    return name.length() > LONGEST_NAME
        ? "is longer than " + LONGEST_NAME + " characters; give a short one"
        : fault(name, PlainText::unseen);
  }

  /** What is wrong with a longer text, which may have several lines; empty if nothing is. */
  public static String faultOfText(String text) {
    return fault(text, c -> unseen(c) && c != '\n' && c != '\r' && c != '\t');
  }

  private static String fault(String text, IntPredicate wrong) {
    int[] all = text.codePoints().toArray();
    for (int k = 0; k < all.length; k++) {
      if (wrong.test(all[k])) {
        return String.format(
            "has a character that cannot be seen (U+%04X, the %d. of its characters); remove it",
            all[k], k + 1);
      }
    }
    return "";
  }

  /** Controls, marks that turn the direction of writing, halves of characters and none at all. */
  private static boolean unseen(int c) {
    boolean none = (c & 0xFFFE) == 0xFFFE || (c >= 0xFDD0 && c <= 0xFDEF);
    boolean turns =
        c == 0x061C
            || c == 0x200E
            || c == 0x200F
            || (c >= 0x202A && c <= 0x202E)
            || (c >= 0x2066 && c <= 0x2069)
            || c == 0x2028
            || c == 0x2029;
    return Character.isISOControl(c)
        || turns
        || none
        || Character.getType(c) == Character.SURROGATE;
  }
}
