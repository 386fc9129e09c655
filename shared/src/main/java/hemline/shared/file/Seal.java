package hemline.shared.file;

import hemline.shared.problem.InputException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Digest of a text that stands in the text itself, under the key {@code seal}: SHA-256 of the text
 * with zeros in its place.
 *
 * <p>It shows that a file was damaged or changed by hand. It does not show who wrote it: whoever
 * knows the rule can seal anything.
 */
public final class Seal {
  /** What stands in place of the digest while it is taken. */
  public static final String BLANK = "0".repeat(64);

  private static final Pattern PLACE = Pattern.compile("\"seal\"\\s*:\\s*\"([0-9a-f]{64})\"");

  /** The seal is one of the first keys. */
  private static final int LATEST = 400;

  private Seal() {}

  /**
   * Puts the digest in place of {@link #BLANK}.
   *
   * @throws IllegalArgumentException if the text has no key for it near its beginning
   */
  public static String close(String text) {
    Matcher m = place(text);
    if (!m.find()) {
      throw new IllegalArgumentException("no place for a seal");
    }
    return text.substring(0, m.start(1)) + digest(text, m) + text.substring(m.end(1));
  }

  /**
   * Checks the digest.
   *
   * @param file name for messages
   * @throws InputException if there is none or the text was changed after it was sealed
   */
  public static void check(String text, String file) throws InputException {
    Matcher m = place(text);
    if (!m.find() || !digest(text, m).equals(m.group(1))) {
      throw new InputException(
          "kept.seal", file, "was changed or damaged after the program wrote it; it is not used");
    }
  }

  private static Matcher place(String text) {
    return PLACE.matcher(text).region(0, Math.min(text.length(), LATEST));
  }

  private static String digest(String text, Matcher place) {
    String blank = text.substring(0, place.start(1)) + BLANK + text.substring(place.end(1));
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(blank.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
