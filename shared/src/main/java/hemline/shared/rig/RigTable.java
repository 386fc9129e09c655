package hemline.shared.rig;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * The cells of a rig file: which column holds what in which unit, and the lines below the head.
 *
 * <p>Cells are separated as RFC 4180 says, or by semicolons or tabs where the head line is. Lines
 * that begin with # are remarks, empty ones are passed over.
 */
final class RigTable {
  /** Title of the first column, which says what a line is. */
  static final String WHAT = "what";

  /** Title of the column with the file of a fan's curve. */
  static final String CURVE = "fan curve";

  private static final Pattern COLUMN =
      Pattern.compile("\\s*([^(]*?)\\s*\\(\\s*([^)]*?)\\s*\\)\\s*");

  private static final int MOST_PROBLEMS = 8;
  private static final int MOST_LINES = 10_000;

  private final String file;
  private final List<Problem> problems;
  private final Map<Instrument, Integer> columns = new EnumMap<>(Instrument.class);
  private final Map<Instrument, String> units = new EnumMap<>(Instrument.class);
  private final List<Row> rows = new ArrayList<>();
  private int curveColumn = -1;
  private int width;

  private RigTable(String file, List<Problem> problems) {
    this.file = file;
    this.problems = problems;
  }

  /** A line below the head. */
  record Row(int line, String what, List<String> cells) {}

  /** Reads the cells; problems are added to a list. */
  static RigTable of(String text, String file, List<Problem> problems) {
    RigTable table = new RigTable(file, problems);
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(delimiter(text))
            .setCommentMarker('#')
            .setIgnoreEmptyLines(true)
            .setIgnoreSurroundingSpaces(true)
            .setTrim(true)
            .get();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      boolean head = false;
      for (CSVRecord found : parser) {
        List<String> cells = found.stream().toList();
        int line = (int) parser.getCurrentLineNumber();
        if (cells.stream().allMatch(String::isEmpty)) {
          continue;
        }
        if (!head) {
          head = true;
          if (!table.readHead(line, cells)) {
            return table;
          }
        } else {
          table.readRow(line, cells);
        }
        if (problems.size() >= MOST_PROBLEMS || table.rows.size() > MOST_LINES) {
          break;
        }
      }
      if (!head) {
        table.fault(1, "the head line is missing; compare --template writes a file to fill in");
      }
    } catch (IOException | UncheckedIOException | IllegalStateException e) {
      table.fault(
          table.rows.isEmpty() ? 1 : table.rows.get(table.rows.size() - 1).line() + 1,
          "the cells from here on cannot be told apart; close every quotation mark and save the"
              + " sheet as comma-separated values");
    }
    if (table.rows.size() > MOST_LINES) {
      table.fault(MOST_LINES, "a rig file holds at most " + MOST_LINES + " lines");
    }
    return table;
  }

  /** What stands between the cells of the first line that is no remark. */
  private static char delimiter(String text) {
    String head =
        text.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).findFirst().orElse("");
    return head.indexOf(';') >= 0 ? ';' : head.indexOf('\t') >= 0 ? '\t' : ',';
  }

  private boolean readHead(int line, List<String> cells) {
    if (!cells.get(0).equalsIgnoreCase(WHAT)) {
      fault(line, "the head line must begin with \"" + WHAT + "\"; compare --template writes one");
      return false;
    }
    width = cells.size();
    int before = problems.size();
    for (int c = 1; c < width; c++) {
      if (!cells.get(c).isEmpty()) {
        readColumn(line, c, cells.get(c));
      }
    }
    return problems.size() == before;
  }

  private void readColumn(int line, int c, String cell) {
    String place = "column " + (c + 1) + " \"" + cell + "\": ";
    if (cell.equalsIgnoreCase(CURVE)) {
      curveColumn = c;
      return;
    }
    Matcher m = COLUMN.matcher(cell);
    String title = m.matches() ? m.group(1) : cell;
    for (Instrument instrument : Instrument.values()) {
      if (!instrument.title().equalsIgnoreCase(title)) {
        continue;
      }
      String example = instrument.title() + " (" + instrument.unit() + ")";
      if (!m.matches()) {
        fault(line, place + "the unit is missing; write it in brackets, as " + example);
      } else if (columns.putIfAbsent(instrument, c) != null) {
        fault(line, place + "is there twice; keep one column of a kind");
      } else {
        units.put(instrument, m.group(2));
        try {
          Quantities.read(instrument.kind(), instrument.title(), "1" + m.group(2));
        } catch (InputException e) {
          fault(line, place + e.problems().get(0).text());
        }
      }
      return;
    }
    List<String> known = new ArrayList<>();
    for (Instrument instrument : Instrument.values()) {
      known.add(instrument.title());
    }
    fault(
        line,
        place
            + "is no column of a rig file; there are "
            + String.join(", ", known)
            + " and "
            + CURVE);
  }

  private void readRow(int line, List<String> cells) {
    for (int c = width; c < cells.size(); c++) {
      if (!cells.get(c).isEmpty()) {
        fault(
            line,
            "has a value in column "
                + (c + 1)
                + ", but the head line names "
                + width
                + " columns; write decimals with a point");
        return;
      }
    }
    List<String> whole = new ArrayList<>(cells);
    while (whole.size() < width) {
      whole.add("");
    }
    rows.add(new Row(line, cells.get(0), whole));
  }

  List<Row> rows() {
    return rows;
  }

  boolean has(Instrument instrument) {
    return columns.containsKey(instrument);
  }

  /** File name of the fan's curve in a line; empty for none. */
  String curve(Row row) {
    return curveColumn < 0 ? "" : row.cells().get(curveColumn);
  }

  /**
   * A quantity in SI; not a number where its cell is empty, there is no such column or no number.
   */
  double value(Row row, Instrument instrument) {
    String cell = cell(row, instrument);
    if (cell.isEmpty()) {
      return Double.NaN;
    }
    return read(row, instrument, cell);
  }

  /** A difference of a quantity in SI, such as an accuracy; not a number as {@link #value}. */
  double difference(Row row, Instrument instrument) {
    double value = value(row, instrument);
    return instrument.kind() == QuantityKind.TEMPERATURE && !Double.isNaN(value)
        ? value - read(row, instrument, "0")
        : value;
  }

  /** A plain number of a column, such as a percentage; not a number as {@link #value}. */
  double number(Row row, Instrument instrument) {
    return number(row, instrument.title(), cell(row, instrument));
  }

  /** A plain number of a cell; not a number where it is empty or none. */
  double number(Row row, String title, String cell) {
    if (cell.isEmpty()) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(cell);
    } catch (NumberFormatException e) {
      fault(row.line(), noNumber(cell, title));
      return Double.NaN;
    }
  }

  private String cell(Row row, Instrument instrument) {
    @Nullable Integer column = columns.get(instrument);
    return column == null ? "" : row.cells().get(column);
  }

  private double read(Row row, Instrument instrument, String cell) {
    try {
      return Quantities.read(
          instrument.kind(), instrument.title(), cell + units.getOrDefault(instrument, ""));
    } catch (InputException e) {
      fault(row.line(), noNumber(cell, instrument.title()));
      return Double.NaN;
    }
  }

  private static String noNumber(String cell, String title) {
    return "\""
        + cell
        + "\" is no number for the column \""
        + title
        + "\"; write it as 12.5, with the unit in the head line alone";
  }

  void fault(int line, String text) {
    problems.add(new Problem("rig.file", file + ", line " + line, text));
  }
}
