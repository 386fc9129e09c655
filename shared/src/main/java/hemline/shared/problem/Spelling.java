package hemline.shared.problem;

import java.util.Collection;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Guesses what a mistyped word was meant to be. */
public final class Spelling {
  private static final int LONGEST = 60;

  private Spelling() {}

  /**
   * The known word that takes fewest single-letter slips, at most half its length; capital letters
   * do not count. Null for none, and for a word too long to be a slip.
   */
  public static @Nullable String nearest(String word, Collection<String> known) {
    String best = null;
    if (word.length() > LONGEST) {
      return null;
    }
    int fewest = Integer.MAX_VALUE;
    for (String candidate : known) {
      int slips = slips(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (slips < fewest && 2 * slips <= candidate.length()) {
        fewest = slips;
        best = candidate;
      }
    }
    return best;
  }

  /** Letters to insert, drop, replace or swap with a neighbour (optimal string alignment). */
  private static int slips(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int replace = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + replace, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
