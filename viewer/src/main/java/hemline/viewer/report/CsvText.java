package hemline.viewer.report;

import hemline.shared.result.Estimate;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/** A table of comma-separated values (RFC 4180), SI. */
final class CsvText {
  private final StringBuilder out = new StringBuilder();
  private final CSVPrinter printer;

  /** Three cells: value, low and high end; empty for none. */
  private record Band(@Nullable Estimate estimate) {}

  /**
   * Begins a table.
   *
   * @param head names of the columns with commas between
   */
  CsvText(String head) {
    try {
      printer = new CSVPrinter(out, CSVFormat.RFC4180);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    row((Object[]) head.split(","));
  }

  /** Cells of an estimate within its band. */
  static Object band(@Nullable Estimate e) {
    return new Band(e);
  }

  /**
   * Adds a row.
   *
   * @param cells texts, numbers, bands; null for an empty cell; lists for several cells
   */
  CsvText row(@Nullable Object... cells) {
    List<@Nullable Object> flat = new ArrayList<>();
    for (Object cell : cells) {
      add(flat, cell);
    }
    try {
      printer.printRecord(flat);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return this;
  }

  private static void add(List<@Nullable Object> flat, @Nullable Object cell) {
    if (cell instanceof List<?> several) {
      several.forEach(one -> add(flat, one));
    } else if (cell instanceof Band band) {
      Estimate e = band.estimate();
      add(flat, e == null ? null : e.value());
      add(flat, e == null ? null : e.low());
      add(flat, e == null ? null : e.high());
    } else if (cell instanceof OptionalDouble number) {
      add(flat, number.isPresent() ? (Object) number.getAsDouble() : null);
    } else if (cell instanceof Double number) {
      flat.add(number == 0 ? 0.0 : number);
    } else {
      flat.add(cell instanceof String text ? safe(text) : cell);
    }
  }

  /**
   * A text that no spreadsheet takes for a formula: an apostrophe before it says "this is a text".
   */
  private static String safe(String text) {
    return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }

  /** The table so far. */
  @Override
  public String toString() {
    return out.toString();
  }
}
