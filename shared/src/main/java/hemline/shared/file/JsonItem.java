package hemline.shared.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A value of a JSON text that knows its line. */
sealed interface JsonItem {
  /** Line of the value, from 1. */
  int line();

  /** What a person would call it. */
  String noun();

  record Text(int line, String value) implements JsonItem {
    @Override
    public String noun() {
      return "a text";
    }
  }

  /** A number, kept as written. */
  record Number(int line, String literal) implements JsonItem {
    @Override
    public String noun() {
      return "a number";
    }
  }

  record Truth(int line, boolean value) implements JsonItem {
    @Override
    public String noun() {
      return value ? "true" : "false";
    }
  }

  record Nothing(int line) implements JsonItem {
    @Override
    public String noun() {
      return "null";
    }
  }

  record Array(int line, List<JsonItem> items) implements JsonItem {
    @Override
    public String noun() {
      return "a list";
    }
  }

  /**
   * An object.
   *
   * @param keyLines line of each key
   */
  record Members(int line, LinkedHashMap<String, JsonItem> values, Map<String, Integer> keyLines)
      implements JsonItem {
    @Override
    public String noun() {
      return "a group of keys";
    }
  }
}
