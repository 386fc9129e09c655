package hemline.viewer.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Estimate;
import java.util.Locale;

/** Pieces all JSON documents share. Numbers are SI; there is no NaN and no infinity. */
final class JsonText {
  static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private JsonText() {}

  /** The document as text with a closing line feed. */
  static String of(ObjectNode document) {
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter(
            Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER));
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    try {
      return new ObjectMapper().writer(printer).writeValueAsString(document) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A number, or null where there is none. */
  static void number(ObjectNode to, String key, double value) {
    if (Double.isFinite(value)) {
      to.put(key, value == 0 ? 0.0 : value);
    } else {
      to.putNull(key);
    }
  }

  /**
   * An estimate: value between low and high, its unit, and how the band is made up.
   *
   * @param unit SI unit, or "1" for a pure number
   */
  static ObjectNode estimate(Estimate estimate, String unit) {
    ObjectNode node = NODES.objectNode();
    number(node, "value", estimate.value());
    number(node, "low", estimate.low());
    number(node, "high", estimate.high());
    node.put("unit", unit);
    ObjectNode parts = node.putObject("band");
    number(parts, "numerical", estimate.numerical());
    number(parts, "iteration", estimate.iteration());
    number(parts, "modelLow", estimate.modelLow());
    number(parts, "modelHigh", estimate.modelHigh());
    ObjectNode halves = node.putObject("parts");
    number(halves, "grid", estimate.numerical());
    number(halves, "iteration", estimate.iteration());
    number(halves, "model", estimate.model());
    node.put("trend", estimate.trend().name().toLowerCase(Locale.ROOT));
    return node;
  }
}
