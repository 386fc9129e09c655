package hemline.viewer.screen;

import hemline.shared.units.QuantityKind;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * A value of a machine that the window offers to change.
 *
 * @param path key in the machine file; {@code *} for each entry of a list
 * @param measure its kind and unit
 * @param absent what counts where the key is left out; empty for one that is needed
 * @param name beside the field
 * @param help told on hover
 */
record MachineValue(String path, Measure measure, String absent, String name, String help) {
  private static final String LIST = "machine-values.csv";

  /** All of them, groups together. */
  static List<MachineValue> all() {
    List<MachineValue> all = new ArrayList<>();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader in =
            new InputStreamReader(
                Objects.requireNonNull(MachineValue.class.getResourceAsStream(LIST)),
                StandardCharsets.UTF_8);
        var records = format.parse(in)) {
      for (CSVRecord one : records) {
        all.add(
            new MachineValue(
                one.get("path"),
                Measure.of(QuantityKind.valueOf(one.get("kind")), one.get("unit")),
                one.get("default"),
                one.get("name"),
                one.get("help")));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return List.copyOf(all);
  }

  /** Group of keys that it belongs to; that of the machine itself for those in none. */
  String group() {
    int point = path.indexOf('.');
    return point < 0 || path.startsWith("air.") ? "machine" : path.substring(0, point);
  }

  boolean listed() {
    return path.contains("*");
  }

  /** The same for one entry of the list. */
  MachineValue at(int entry, String entryName) {
    return new MachineValue(
        path.replace("*", String.valueOf(entry)), measure, absent, entryName + " " + name, help);
  }
}
