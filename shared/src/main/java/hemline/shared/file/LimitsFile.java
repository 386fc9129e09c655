package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.SearchLimits;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.shared.units.QuantityRange;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Files of what a search may change and what can be built, schema {@code hemline.limits/1}.
 *
 * <p>All keys but {@code schema} may be left out: {@code notes}; {@code width}, {@code height},
 * {@code wall}, {@code slot} and {@code reach}, lengths with their unit; {@code family}, {@code
 * number} and {@code vary} (ranges by the name of a length, such as {@code "pitch": "2mm..5mm"});
 * {@code corners}, numbers from 0; {@code symmetric}, true or false.
 */
public final class LimitsFile {
  private static final String KIND = "limits";
  private static final int VERSION = 1;

  /** Smallest and largest length that is taken. */
  private static final String LEAST = "0.001mm";

  private static final String MOST = "1000mm";

  private final JsonKeys keys;

  private LimitsFile(JsonKeys keys) {
    this.keys = keys;
  }

  /**
   * Reads limits.
   *
   * @throws InputException with every problem found
   */
  public static SearchLimits read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString());
  }

  /** Reads the text of a limits file; the file name serves the messages. */
  public static SearchLimits parse(String text, String file) throws InputException {
    List<Problem> problems = new ArrayList<>();
    JsonKeys keys = new JsonKeys(file, "", JsonTree.read(text, file), problems);
    SearchLimits limits =
        SchemaKey.check(keys, KIND, VERSION) ? new LimitsFile(keys).limits() : SearchLimits.NONE;
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    return limits;
  }

  private SearchLimits limits() {
    keys.allow(
        "schema",
        "notes",
        "width",
        "height",
        "wall",
        "slot",
        "family",
        "number",
        "vary",
        "corners",
        "reach",
        "symmetric");
    keys.text("notes", "", "a free text");
    String family = keys.has("family") ? keys.text("family", "", "teeth") : null;
    int number = keys.has("number") ? keys.index("number", "a whole number such as 3") : -1;
    return new SearchLimits(
        new SearchLimits.Sizes(length("width"), length("height"), length("wall"), length("slot")),
        new SearchLimits.Family(family, number < 0 ? null : number, vary()),
        new SearchLimits.Corners(
            keys.has("corners") ? corners() : null,
            length("reach"),
            keys.truth("symmetric", false)));
  }

  private @Nullable Double length(String key) {
    double value = QuantityKeys.optional(keys, key, QuantityKind.LENGTH, LEAST, MOST, Double.NaN);
    return Double.isNaN(value) ? null : value;
  }

  private Map<String, QuantityRange> vary() {
    Map<String, QuantityRange> ranges = new LinkedHashMap<>();
    JsonKeys group = keys.group("vary");
    if (group == null || !(keys.item("vary") instanceof JsonItem.Members members)) {
      return ranges;
    }
    for (String name : members.values().keySet()) {
      String text = group.text(name, "", "2mm..5mm");
      if (members.values().get(name) instanceof JsonItem.Text) {
        try {
          ranges.put(name, Quantities.readRange(QuantityKind.LENGTH, name, text));
        } catch (InputException e) {
          e.problems().forEach(p -> group.fault(p.code(), name, p.text()));
        }
      }
    }
    return ranges;
  }

  private List<Integer> corners() {
    List<Integer> corners = new ArrayList<>();
    for (JsonItem item : keys.list("corners")) {
      if (item instanceof JsonItem.Number number && number.literal().matches("\\d{1,6}")) {
        corners.add(Integer.valueOf(number.literal()));
      } else {
        keys.fault(
            "file.type",
            item.line(),
            "corners",
            "corners are whole numbers from 0, such as [0, 1]");
        return corners;
      }
    }
    return corners;
  }
}
