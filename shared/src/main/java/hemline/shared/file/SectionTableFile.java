package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SectionLimits;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Tables of sections as comma-separated text: a head line such as {@code lip, gap (mm), suction
 * (Pa), ground speed (m/s)}, then one section a line. A lip is named by its file, seen from the
 * folder of the table.
 *
 * <p>The unit of each column stands in brackets in the head line; columns come in any order, those
 * of speeds may be left out. Lines that begin with # are remarks.
 */
public final class SectionTableFile {
  private static final String HEAD = "lip, gap (mm), suction (Pa), ground speed (m/s)";
  private static final Pattern COLUMN = Pattern.compile("([^(]*?)\\s*(?:\\(\\s*([^)]*?)\\s*\\))?");
  private static final int MOST_PROBLEMS = 8;

  /**
   * One line of a table.
   *
   * @param lip file
   * @param gap m
   * @param suction Pa
   * @param ground motion of the ground
   */
  public record Row(Path lip, double gap, double suction, GroundMotion ground) {}

  private enum Column {
    LIP("lip", null, v -> ""),
    GAP("gap", QuantityKind.LENGTH, SectionLimits::gap),
    SUCTION("suction", QuantityKind.PRESSURE, SectionLimits::suction),
    SPEED("ground speed", QuantityKind.SPEED, SectionLimits::speed),
    SPANWISE("spanwise speed", QuantityKind.SPEED, SectionLimits::speed);

    private final String title;
    private final @Nullable QuantityKind kind;
    private final DoubleFunction<String> right;

    Column(String title, @Nullable QuantityKind kind, DoubleFunction<String> right) {
      this.title = title;
      this.kind = kind;
      this.right = right;
    }
  }

  /** A column of the head line with its unit. */
  private record Headed(Column column, String unit) {}

  private final Path folder;
  private final String file;
  private final List<Problem> problems = new ArrayList<>();

  private SectionTableFile(Path folder, String file) {
    this.folder = folder;
    this.file = file;
  }

  /**
   * Reads the sections of a table, at least one; whether the lips exist is not looked at.
   *
   * @throws InputException with the problems of the first faulty lines
   */
  public static List<Row> read(Path file) throws InputException {
    Path folder = file.toAbsolutePath().getParent();
    return parse(TextFiles.read(file), folder == null ? file : folder, file.toString());
  }

  /**
   * Reads the text of a table.
   *
   * @param folder from which lip files are seen
   * @param file name for the messages
   */
  public static List<Row> parse(String text, Path folder, String file) throws InputException {
    SectionTableFile reader = new SectionTableFile(folder, file);
    List<Row> rows = reader.rows(text);
    if (reader.problems.isEmpty() && rows.isEmpty()) {
      reader.fault(1, "it holds no sections; begin with the head line " + HEAD);
    }
    if (!reader.problems.isEmpty()) {
      throw new InputException(reader.problems);
    }
    return rows;
  }

  private List<Row> rows(String text) {
    List<Row> rows = new ArrayList<>();
    List<Headed> head = List.of();
    String[] lines = text.split("\r\n|\n|\r", -1);
    for (int i = 0; i < lines.length && problems.size() < MOST_PROBLEMS; i++) {
      if (lines[i].isBlank() || lines[i].startsWith("#")) {
        continue;
      }
      String[] cells = lines[i].split(",", -1);
      if (head.isEmpty()) {
        head = head(i + 1, cells);
        if (head.isEmpty()) {
          return rows;
        }
        continue;
      }
      Row row = row(i + 1, cells, head);
      if (row != null) {
        rows.add(row);
      }
    }
    return rows;
  }

  /** The columns; none after a problem. */
  private List<Headed> head(int line, String[] cells) {
    Map<Column, Headed> found = new EnumMap<>(Column.class);
    List<Headed> head = new ArrayList<>();
    for (String cell : cells) {
      Headed one = headed(line, cell.strip());
      if (one == null) {
        return List.of();
      }
      head.add(one);
      if (found.put(one.column(), one) != null) {
        fault(line, "names the column \"" + one.column().title + "\" twice");
        return List.of();
      }
    }
    for (Column needed : List.of(Column.LIP, Column.GAP, Column.SUCTION)) {
      if (!found.containsKey(needed)) {
        fault(line, "lacks the column \"" + needed.title + "\"; a head line is " + HEAD);
        return List.of();
      }
    }
    return head;
  }

  private @Nullable Headed headed(int line, String cell) {
    Matcher m = COLUMN.matcher(cell);
    for (Column column : Column.values()) {
      if (!m.matches() || !m.group(1).equalsIgnoreCase(column.title)) {
        continue;
      }
      String unit = m.group(2) == null ? "" : m.group(2);
      if (column.kind == null) {
        return new Headed(column, unit);
      }
      try {
        Quantities.read(column.kind, column.title, "1" + unit);
        return new Headed(column, unit);
      } catch (InputException e) {
        fault(line, e.problems().get(0).toString());
        return null;
      }
    }
    fault(line, "there is no column \"" + cell + "\"; a head line is " + HEAD);
    return null;
  }

  private @Nullable Row row(int line, String[] cells, List<Headed> head) {
    if (cells.length != head.size()) {
      fault(line, "has " + cells.length + " cells, but the head line names " + head.size());
      return null;
    }
    Path lip = folder;
    Map<Column, Double> values = new EnumMap<>(Column.class);
    for (int c = 0; c < cells.length; c++) {
      Column column = head.get(c).column();
      String cell = cells[c].strip();
      if (column.kind == null) {
        try {
          lip = folder.resolve(cell);
        } catch (InvalidPathException e) {
          cell = "";
        }
        if (cell.isEmpty()) {
          fault(line, "lacks the file of the lip, such as plain-flat-8.json");
          return null;
        }
        continue;
      }
      try {
        values.put(column, Quantities.read(column.kind, column.title, cell + head.get(c).unit()));
      } catch (InputException e) {
        fault(line, "\"" + cell + "\" is no number for the column \"" + column.title + "\"");
        return null;
      }
      String right = column.right.apply(values.getOrDefault(column, 0.0));
      if (!right.isEmpty()) {
        fault(line, right + "; \"" + cell + "\" is not");
        return null;
      }
    }
    return new Row(
        lip,
        values.getOrDefault(Column.GAP, 0.0),
        values.getOrDefault(Column.SUCTION, 0.0),
        new GroundMotion(
            values.getOrDefault(Column.SPEED, 0.0), values.getOrDefault(Column.SPANWISE, 0.0)));
  }

  private void fault(int line, String text) {
    problems.add(new Problem("sections.file", file + ", line " + line, text));
  }
}
