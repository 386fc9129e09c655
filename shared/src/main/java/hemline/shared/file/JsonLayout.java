package hemline.shared.file;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * Writes JSON that is pleasant to edit by hand: one key or vertex a line, short lists of numbers
 * and short groups on one line.
 */
final class JsonLayout {
  private static final int WIDTH = 90;

  private JsonLayout() {}

  /** Text of a tree of maps, lists, texts, numbers and truths, with a final line end. */
  static String text(Map<String, Object> top) {
    StringBuilder out = new StringBuilder();
    lines(out, top, "");
    return out.append('\n').toString();
  }

  private static void lines(StringBuilder out, Object value, String indent) {
    boolean nested =
        value instanceof List<?> list && list.stream().anyMatch(JsonLayout::isContainer);
    if (!nested && !indent.isEmpty()) {
      String flat = flat(value);
      if (flat.length() + indent.length() <= WIDTH || !isContainer(value)) {
        out.append(flat);
        return;
      }
    }
    String inner = indent + "  ";
    if (value instanceof Map<?, ?> map) {
      out.append("{\n");
      for (Iterator<? extends Map.Entry<?, ?>> i = map.entrySet().iterator(); i.hasNext(); ) {
        Map.Entry<?, ?> e = i.next();
        out.append(inner).append(quoted((String) e.getKey())).append(": ");
        lines(out, e.getValue(), inner);
        out.append(i.hasNext() ? ",\n" : "\n");
      }
      out.append(indent).append('}');
    } else if (value instanceof List<?> list) {
      out.append("[\n");
      for (Iterator<?> i = list.iterator(); i.hasNext(); ) {
        out.append(inner);
        lines(out, i.next(), inner);
        out.append(i.hasNext() ? ",\n" : "\n");
      }
      out.append(indent).append(']');
    }
  }

  private static boolean isContainer(Object value) {
    return value instanceof Map<?, ?> || value instanceof Collection<?>;
  }

  private static String flat(Object value) {
    if (value instanceof Map<?, ?> map) {
      StringBuilder out = new StringBuilder("{");
      map.forEach(
          (k, v) ->
              out.append(out.length() > 1 ? ", " : "")
                  .append(quoted((String) k))
                  .append(": ")
                  .append(flat(v)));
      return out.append('}').toString();
    }
    if (value instanceof List<?> list) {
      StringBuilder out = new StringBuilder("[");
      list.forEach(v -> out.append(out.length() > 1 ? ", " : "").append(flat(v)));
      return out.append(']').toString();
    }
    if (value instanceof BigDecimal number) {
      return number(number);
    }
    return value instanceof String text ? quoted(text) : String.valueOf(value);
  }

  private static String number(BigDecimal value) {
    if (value.signum() == 0) {
      return "0";
    }
    BigDecimal stripped = value.stripTrailingZeros();
    boolean plain = stripped.scale() < 25 && stripped.scale() > -10;
    return plain ? stripped.toPlainString() : stripped.toString();
  }

  private static String quoted(String text) {
    return "\"" + new String(JsonStringEncoder.getInstance().quoteAsString(text)) + "\"";
  }
}
