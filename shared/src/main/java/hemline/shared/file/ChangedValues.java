package hemline.shared.file;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Values put in place of those of a file before it is read, so that they are checked like its own.
 *
 * <p>A value is named by its keys with dots between them; an entry of a list by its name or its
 * place from 0: {@code fan.speed}, {@code axles.front.stiffness}. A value without text takes the
 * key away.
 */
final class ChangedValues {
  private static final Pattern PLAIN =
      Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][+-]?\\d{1,3})?|true|false");

  /** Stands for a line that the file does not have. */
  static final int NO_LINE = 0;

  private final JsonKeys keys;

  private ChangedValues(JsonKeys keys) {
    this.keys = keys;
  }

  /**
   * Puts values in place.
   *
   * @param top of the file
   * @param values text by name
   * @param keys told what cannot be set
   */
  static JsonItem.Members put(JsonItem.Members top, Map<String, String> values, JsonKeys keys) {
    ChangedValues changed = new ChangedValues(keys);
    JsonItem.Members now = top;
    for (Map.Entry<String, String> value : values.entrySet()) {
      List<String> path = List.of(value.getKey().split("\\.", -1));
      now = changed.in(now, path, value.getValue(), value.getKey());
    }
    return now;
  }

  private JsonItem.Members in(
      JsonItem.Members group, List<String> path, String text, String whole) {
    String key = path.get(0);
    LinkedHashMap<String, JsonItem> values = new LinkedHashMap<>(group.values());
    Map<String, Integer> lines = new HashMap<>(group.keyLines());
    lines.put(key, NO_LINE);
    JsonItem before = values.get(key);
    if (path.size() > 1) {
      values.put(key, deeper(before, path.subList(1, path.size()), text, whole));
    } else if (text.isEmpty()) {
      values.remove(key);
    } else {
      values.put(key, leaf(before, text));
    }
    return new JsonItem.Members(group.line(), values, lines);
  }

  private JsonItem deeper(@Nullable JsonItem item, List<String> path, String text, String whole) {
    if (item == null) {
      return in(new JsonItem.Members(NO_LINE, new LinkedHashMap<>(), Map.of()), path, text, whole);
    }
    if (item instanceof JsonItem.Members group) {
      return in(group, path, text, whole);
    }
    if (!(item instanceof JsonItem.Array list)) {
      keys.fault("file.set", NO_LINE, whole, "there are no keys within " + item.noun());
      return item;
    }
    List<String> names = list.items().stream().map(ChangedValues::nameOf).toList();
    int at = names.indexOf(path.get(0));
    if (at < 0 && path.get(0).matches("\\d{1,4}")) {
      at = Integer.parseInt(path.get(0));
    }
    if (at < 0 || at >= list.items().size() || path.size() < 2) {
      keys.fault(
          "file.set",
          NO_LINE,
          whole,
          "name an entry of this list and a key of it; entries are "
              + (names.stream().allMatch(String::isEmpty)
                  ? "0 to " + (names.size() - 1)
                  : String.join(", ", names)));
      return item;
    }
    List<JsonItem> items = new ArrayList<>(list.items());
    items.set(at, deeper(items.get(at), path.subList(1, path.size()), text, whole));
    return new JsonItem.Array(list.line(), items);
  }

  private static String nameOf(JsonItem item) {
    return item instanceof JsonItem.Members group
            && group.values().get("name") instanceof JsonItem.Text name
        ? name.value()
        : "";
  }

  /** True for a number, true or false, which stand in a file without quotes. */
  static boolean isPlain(String text) {
    return PLAIN.matcher(text).matches();
  }

  private static JsonItem leaf(@Nullable JsonItem before, String text) {
    if (before instanceof JsonItem.Text || !isPlain(text)) {
      return new JsonItem.Text(NO_LINE, text);
    }
    return text.equals("true") || text.equals("false")
        ? new JsonItem.Truth(NO_LINE, text.equals("true"))
        : new JsonItem.Number(NO_LINE, text);
  }
}
