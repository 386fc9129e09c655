package hemline.shared.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads JSON text into values that know their line. */
final class JsonTree {
  private static final int DEEPEST = 50;

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
          .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
          .build();

  private JsonTree() {}

  /**
   * Reads a text whose top is an object.
   *
   * @param file name for messages
   */
  static JsonItem.Members read(String text, String file) throws InputException {
    try (JsonParser parser = FACTORY.createParser(text)) {
      JsonToken first = parser.nextToken();
      if (first == null) {
        throw new InputException("file.empty", file, "the file is empty");
      }
      JsonItem top = value(parser);
      if (!(top instanceof JsonItem.Members members)) {
        throw new InputException(
            "file.json",
            file + ", line " + top.line(),
            "the file must be one object in braces { }");
      }
      if (parser.nextToken() != null) {
        throw new InputException(
            "file.json",
            file + ", line " + line(parser),
            "there is text after the closing brace; remove it");
      }
      return members;
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      String place = at == null ? file : file + ", line " + Math.max(1, at.getLineNr());
      String why = plain(e.getOriginalMessage().lines().findFirst().orElse("").strip());
      throw new InputException("file.json", place, "this is not sound JSON: " + why);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The parser's reason without its hints to programmers. */
  private static String plain(String reason) {
    if (reason.startsWith("Unexpected end-of-input")) {
      return "the file ends before the last bracket, brace or quote is closed";
    }
    if (reason.startsWith("Document nesting depth")) {
      return "brackets and braces lie more than " + DEEPEST + " deep in each other";
    }
    String shortened =
        reason.replaceAll(" ?\\(start marker at .*", "").replaceAll(": enable `.*", "");
    return shortened.replace("Non-standard token", "a number cannot be");
  }

  private static JsonItem value(JsonParser parser) throws IOException {
    int line = line(parser);
    switch (parser.currentToken()) {
      case START_OBJECT:
        return members(parser, line);
      case START_ARRAY:
        List<JsonItem> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          items.add(value(parser));
        }
        return new JsonItem.Array(line, items);
      case VALUE_NUMBER_INT:
      case VALUE_NUMBER_FLOAT:
        return new JsonItem.Number(line, parser.getText());
      case VALUE_TRUE:
      case VALUE_FALSE:
        return new JsonItem.Truth(line, parser.getBooleanValue());
      case VALUE_NULL:
        return new JsonItem.Nothing(line);
      default:
        return new JsonItem.Text(line, parser.getText());
    }
  }

  private static JsonItem.Members members(JsonParser parser, int line) throws IOException {
    LinkedHashMap<String, JsonItem> values = new LinkedHashMap<>();
    Map<String, Integer> keyLines = new HashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      keyLines.put(key, line(parser));
      parser.nextToken();
      values.put(key, value(parser));
    }
    return new JsonItem.Members(line, values, keyLines);
  }

  private static int line(JsonParser parser) {
    return parser.currentTokenLocation().getLineNr();
  }
}
