package hemline.shared.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.io.JsonStringEncoder;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.regex.Pattern;

/** Changes single values of a JSON text and leaves all else as it is written. */
final class JsonEdit {
  private static final Pattern STEP = Pattern.compile("[A-Za-z][A-Za-z0-9]*|\\d{1,4}");
  private static final JsonFactory FACTORY = new JsonFactory();

  private final String text;
  private final List<String> path;

  private JsonEdit(String text, List<String> path) {
    this.text = text;
    this.path = path;
  }

  /**
   * The text with one value changed; a key that is not there is put into its group, which is made
   * where it lacks.
   *
   * @param text sound JSON whose top is an object
   * @param path keys joined by points, items of lists by number: {@code axles.0.stiffness}
   * @param value a number, true or false as such unless it takes the place of a text, all else as a
   *     text; an empty one takes the key away
   * @throws InputException if the path is badly written or leads into something that is no group
   */
  static String set(String text, String path, String value) throws InputException {
    List<String> steps = List.of(path.split("\\.", -1));
    if (!steps.stream().allMatch(step -> STEP.matcher(step).matches())) {
      throw new InputException(
          "change.path", path, "is no place in the file; write it as fan.speed");
    }
    try (JsonParser parser = FACTORY.createParser(text)) {
      parser.nextToken();
      return new JsonEdit(text, steps).within(parser, 0, path, value);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // the text was read before
    }
  }

  private String within(JsonParser parser, int depth, String whole, String value)
      throws IOException, InputException {
    if (depth == path.size()) {
      boolean writtenAsText = parser.currentToken() == JsonToken.VALUE_STRING;
      int start = (int) parser.currentTokenLocation().getCharOffset();
      return text.substring(0, start) + literal(value, writtenAsText) + text.substring(end(parser));
    }
    String step = path.get(depth);
    boolean item = Character.isDigit(step.charAt(0));
    if (parser.currentToken() != (item ? JsonToken.START_ARRAY : JsonToken.START_OBJECT)) {
      throw new InputException(
          "change.path", whole, "leads into something that is no " + (item ? "list" : "group"));
    }
    int inside = (int) parser.currentTokenLocation().getCharOffset() + 1;
    int members = 0;
    JsonToken last = item ? JsonToken.END_ARRAY : JsonToken.END_OBJECT;
    while (parser.nextToken() != last) {
      boolean here = item ? members == Integer.parseInt(step) : parser.currentName().equals(step);
      int start = (int) parser.currentTokenLocation().getCharOffset();
      members++;
      if (!item) {
        parser.nextToken();
      }
      if (here && value.isEmpty() && depth + 1 == path.size()) {
        return without(start, end(parser));
      } else if (here) {
        return within(parser, depth + 1, whole, value);
      }
      parser.skipChildren();
    }
    if (item || path.stream().skip(depth).anyMatch(s -> Character.isDigit(s.charAt(0)))) {
      throw new InputException("change.path", whole, "is not in the list; items count from 0");
    }
    if (value.isEmpty()) {
      return text;
    }
    StringBuilder made = new StringBuilder(literal(value, false));
    for (int k = path.size() - 1; k >= depth; k--) {
      made.insert(0, "\"" + path.get(k) + "\": ");
      if (k > depth) {
        made.insert(0, "{").append('}');
      }
    }
    return text.substring(0, inside) + made + (members > 0 ? ", " : "") + text.substring(inside);
  }

  /** End of the value that the parser is at, with all that it holds. */
  private static int end(JsonParser parser) throws IOException {
    parser.skipChildren();
    parser.getText();
    return (int) parser.currentLocation().getCharOffset();
  }

  /** The text without a key and its value, and without the comma that parted them from others. */
  private String without(int start, int end) {
    String before = text.substring(0, start);
    String after = text.substring(end);
    if (after.stripLeading().startsWith(",")) {
      return before + after.stripLeading().substring(1).stripLeading();
    }
    String lead = before.stripTrailing();
    return (lead.endsWith(",") ? lead.substring(0, lead.length() - 1) : before) + after;
  }

  private static String literal(String value, boolean writtenAsText) {
    return !writtenAsText && ChangedValues.isPlain(value)
        ? value
        : "\"" + new String(JsonStringEncoder.getInstance().quoteAsString(value)) + "\"";
  }
}
