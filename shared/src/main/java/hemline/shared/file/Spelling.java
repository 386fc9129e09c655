package hemline.shared.file;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Finds the word that was probably meant. */
final class Spelling {
  private static final int LONGEST = 60;

  private Spelling() {}

  /** The known word within half its length in changed letters, or null. */
  static @Nullable String nearest(String word, List<String> known) {
    if (word.length() > LONGEST) {
      return null;
    }
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int distance = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (distance < least && 2 * distance <= candidate.length()) {
        least = distance;
        best = candidate;
      }
    }
    return best;
  }

  /** Letters to insert, remove or replace (Levenshtein 1966, Soviet Phys. Dokl. 10, 707). */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
