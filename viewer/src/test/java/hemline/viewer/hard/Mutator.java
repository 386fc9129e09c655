package hemline.viewer.hard;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Changes a file as accident, haste or malice would; the same seed gives the same change. */
final class Mutator {
  private static final int LONGEST = 400_000;

  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?([eE][-+]?\\d+)?");
  private static final Pattern QUOTED = Pattern.compile("\"[^\"\\n]*\"");

  private static final List<String> NUMBERS =
      List.of(
          "1e999999999",
          "-1e308",
          "1e-400",
          "NaN",
          "Infinity",
          "0",
          "-0",
          "9".repeat(3000),
          "1e12",
          "2147483648",
          "-1",
          "1e9",
          "1.0000000000000002",
          "null",
          "true",
          "[]",
          "{}",
          "\"2 mm\"",
          "\"1e999999999 mm\"",
          "0x10",
          "1e5",
          "1e-9");

  private static final List<String> TEXTS =
      List.of(
          "\u001b[2J",
          "\\u202e",
          "\\ufffe",
          "\\ud800",
          "\\u0000",
          "=1+2",
          "../../../../etc/passwd",
          "/dev/zero",
          "\u0000",
          "\u00ff\u00fe",
          "&a;",
          "<!DOCTYPE a [",
          "\\",
          "\"",
          "]",
          "}",
          ",",
          "\n\n",
          "\r",
          "hemline.lip/999999",
          "-0mm",
          "x".repeat(300),
          "%s%n",
          "1 2 3");

  private Mutator() {}

  /** A changed copy of a file, with one to three changes. */
  static byte[] change(byte[] file, SplittableRandom random) {
    String text = new String(file, ISO_8859_1);
    for (int k = random.nextInt(1, 4); k > 0; k--) {
      text = once(text, random);
      text = text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    }
    return text.getBytes(ISO_8859_1);
  }

  private static String once(String text, SplittableRandom random) {
    int n = text.length();
    int at = random.nextInt(n + 1);
    int to = Math.min(n, at + 1 + random.nextInt(1 + random.nextInt(200)));
    String part = text.substring(at, to);
    switch (random.nextInt(12)) {
      case 0:
        return text.substring(0, at);
      case 1:
        return text.substring(0, at) + text.substring(to);
      case 2:
        return text.substring(0, at) + part.repeat(1 + random.nextInt(20)) + text.substring(at);
      case 3:
        return text.substring(0, at) + part.repeat(1 + random.nextInt(3000)) + text.substring(at);
      case 4:
        return n == 0
            ? "x"
            : text.substring(0, at) + (char) random.nextInt(256) + tail(text, at + 1);
      case 5:
        return text.substring(0, at) + pick(TEXTS, random) + text.substring(at);
      case 6, 7, 8:
        return replaced(text, NUMBER, pick(NUMBERS, random), random);
      case 9:
        return replaced(text, QUOTED, "\"" + pick(TEXTS, random) + "\"", random);
      case 10:
        String deep = random.nextBoolean() ? "[" : "{\"a\":";
        return text.substring(0, at) + deep.repeat(1 + random.nextInt(5000)) + text.substring(at);
      default:
        return swapped(text, random);
    }
  }

  private static String tail(String text, int from) {
    return from < text.length() ? text.substring(from) : "";
  }

  private static String pick(List<String> all, SplittableRandom random) {
    return all.get(random.nextInt(all.size()));
  }

  private static String replaced(String text, Pattern what, String by, SplittableRandom random) {
    List<MatchResult> found = what.matcher(text).results().limit(5000).toList();
    if (found.isEmpty()) {
      return text + by;
    }
    MatchResult one = found.get(random.nextInt(found.size()));
    return text.substring(0, one.start()) + by + text.substring(one.end());
  }

  private static String swapped(String text, SplittableRandom random) {
    String[] lines = text.split("\n", -1);
    int a = random.nextInt(lines.length);
    int b = random.nextInt(lines.length);
    String kept = lines[a];
    lines[a] = lines[b];
    lines[b] = kept;
    return String.join("\n", lines);
  }
}
