package hemline.viewer.format;

import static java.nio.charset.StandardCharsets.UTF_8;

import hemline.shared.problem.Notice;
import hemline.shared.units.NumberText;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Sentences of notices, by their kinds from {@code notices.properties}. In braces stand a name
 * ({@code a} is the first) or numbers ({@code 0} is the first), behind a colon the way to write
 * them, or the key of words for several kinds.
 */
public final class NoticeWords {
  private static final Properties WORDS = read();

  private static final Pattern PLACE = Pattern.compile("\\{([^}:]+):?([^}]*)}");

  /** 0 \u00b0C, K. */
  private static final double ICE = 273.15;

  private final Notice notice;

  private NoticeWords(Notice notice) {
    this.notice = notice;
  }

  private static Properties read() {
    Properties words = new Properties();
    try (Reader in =
        new InputStreamReader(
            Objects.requireNonNull(NoticeWords.class.getResourceAsStream("notices.properties")),
            UTF_8)) {
      words.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return words;
  }

  /** The sentence of a notice; empty for none. */
  public static String of(@Nullable Notice notice) {
    if (notice == null) {
      return "";
    }
    String words = new NoticeWords(notice).filled(notice.kind().name());
    return notice.lip().isEmpty() ? words : notice.lip() + ": " + words;
  }

  /** The sentences of notices. */
  public static List<String> of(List<Notice> notices) {
    return notices.stream().map(NoticeWords::of).toList();
  }

  /** Why no hold is shown, as a clause. */
  public static String reason(Notice notice) {
    String sentence = of(notice);
    return sentence.substring(0, 1).toLowerCase(Locale.ROOT)
        + sentence.substring(1, sentence.lastIndexOf(':'));
  }

  private String filled(String key) {
    String words = Objects.requireNonNull(WORDS.getProperty(key), key);
    return PLACE
        .matcher(words)
        .replaceAll(place -> Matcher.quoteReplacement(part(place.group(1), place.group(2))));
  }

  private String part(String what, String way) {
    if (what.equals("each")) {
      return way.equals("lips") ? lips() : String.join(", ", byLip().values());
    }
    if (Character.isDigit(what.charAt(0))) {
      double first = notice.numbers().get(what.charAt(0) - '0');
      return what.length() == 1
          ? number(first, way)
          : numbers(first, notice.numbers().get(what.charAt(2) - '0'), way);
    }
    if (what.length() > 1) {
      return filled(what);
    }
    String name = notice.names().get(what.charAt(0) - 'a');
    return switch (way) {
      // files of strangers may name anything
      case "ending" -> WORDS.containsKey("ending." + name) ? filled("ending." + name) : name;
      case "before" -> name.isEmpty() ? "" : name + " ";
      default -> name;
    };
  }

  private static String number(double v, String way) {
    return switch (way) {
      case "mm" -> NumberText.millimetres(v);
      case "mm2" -> NumberText.significant(1e3 * v, 2) + " mm";
      case "Pa" -> NumberText.pressure(v);
      case "hPa" -> NumberText.significant(v / 100, 4) + " hPa";
      case "W" -> NumberText.significant(v, 3) + " W";
      case "K" -> NumberText.significant(v, 4);
      case "\u00b0C" -> NumberText.significant(v - ICE, 4) + " \u00b0C";
      case "points" -> fixed(v, "0") + (v == 1 ? " point" : " points");
      case "invented" -> v == 0 ? "" : " (invented readings)";
      default -> fixed(way.startsWith("%") ? 100 * v : v, way.substring(1));
    };
  }

  private static String numbers(double v, double w, String way) {
    return switch (way) {
      case "point" -> NumberText.point(v, w);
      case "band" -> NumberText.within(v, w) + " \u00b1 " + NumberText.significant(w, 2);
      case "plus" ->
          v == 0 && w == 0 ? "" : (v < 0 ? ", less " : ", plus ") + numbers(Math.abs(v), w, "band");
      case "of" -> (v == w ? "all " : fixed(v, "0") + " of ") + fixed(w, "0");
      case "gaps" ->
          v == w ? "gap " + number(v, "mm") : "gaps " + number(v, "mm") + " to " + number(w, "mm");
      case "range" ->
          fixed(v, "0") + (fixed(v, "0").equals(fixed(w, "0")) ? "" : " to " + fixed(w, "0"));
      default -> fixed(w == 0 ? 0 : 100 * v / Math.abs(w), way.substring(1));
    };
  }

  private static String fixed(double v, String decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", v);
  }

  private String lips() {
    return byLip().entrySet().stream()
        .map(lip -> lip.getKey() + " at " + lip.getValue())
        .collect(Collectors.joining("; "));
  }

  /** Gaps of each lip. */
  private Map<String, String> byLip() {
    Map<String, String> gaps = new LinkedHashMap<>();
    for (int k = 0; k < notice.names().size(); k++) {
      String gap = number(notice.numbers().get(k), "mm");
      gaps.merge(notice.names().get(k), gap, (before, one) -> before + ", " + one);
    }
    return gaps;
  }
}
