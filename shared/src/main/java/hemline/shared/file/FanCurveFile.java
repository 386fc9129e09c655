package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.shared.vehicle.FanCurve;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Measured fan curves as comma-separated text: a head line such as {@code flow (L/s), static
 * pressure (Pa), shaft power (W)}, then one point a line by rising flow from zero on.
 *
 * <p>The unit of each column stands in brackets in the head line. The shaft power may be left out.
 * Lines that begin with # are remarks.
 */
public final class FanCurveFile {
  private static final Pattern COLUMN =
      Pattern.compile("\\s*([^(]*?)\\s*\\(\\s*([^)]*?)\\s*\\)\\s*");
  private static final String HEAD = "flow (L/s), static pressure (Pa), shaft power (W)";

  private final String file;
  private final List<Problem> problems = new ArrayList<>();

  private FanCurveFile(String file) {
    this.file = file;
  }

  /** The columns, by their name in the head line and the kind of their values. */
  private enum Column {
    FLOW("flow", QuantityKind.VOLUME_FLOW),
    PRESSURE("static pressure", QuantityKind.PRESSURE),
    POWER("shaft power", QuantityKind.POWER);

    private final String title;
    private final QuantityKind kind;

    Column(String title, QuantityKind kind) {
      this.title = title;
      this.kind = kind;
    }
  }

  /**
   * Reads the points of a curve.
   *
   * @throws InputException with every problem found
   */
  public static List<FanCurve.Point> read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString());
  }

  /** Reads the text of a curve; the file name serves the messages. */
  public static List<FanCurve.Point> parse(String text, String file) throws InputException {
    FanCurveFile reader = new FanCurveFile(file);
    List<FanCurve.Point> points = reader.points(text);
    if (reader.problems.isEmpty()) {
      reader.problems.addAll(FanCurve.check(points, file));
    }
    if (!reader.problems.isEmpty()) {
      throw new InputException(reader.problems);
    }
    return points;
  }

  private List<FanCurve.Point> points(String text) {
    List<FanCurve.Point> points = new ArrayList<>();
    String @Nullable [] units = null;
    String[] lines = text.split("\r\n|\n|\r", -1);
    for (int i = 0; i < lines.length; i++) {
      if (lines[i].isBlank() || lines[i].startsWith("#")) {
        continue;
      }
      String[] cells = lines[i].split(",", -1);
      if (units == null) {
        units = head(i + 1, cells);
        if (units == null) {
          return points;
        }
        continue;
      }
      FanCurve.Point point = point(i + 1, cells, units);
      if (point != null) {
        points.add(point);
      }
      if (problems.size() > 8) {
        break;
      }
    }
    if (units == null) {
      fault(1, "the head line is missing; begin with: " + HEAD);
    }
    return points;
  }

  private String @Nullable [] head(int line, String[] cells) {
    if (cells.length < 2 || cells.length > 3) {
      fault(line, "the head line must name two or three columns, such as: " + HEAD);
      return null;
    }
    String[] units = new String[cells.length];
    for (int c = 0; c < cells.length; c++) {
      Column column = Column.values()[c];
      Matcher m = COLUMN.matcher(cells[c]);
      if (!m.matches() || !m.group(1).equalsIgnoreCase(column.title)) {
        fault(
            line,
            "column "
                + (c + 1)
                + " must be \""
                + column.title
                + "\" with its unit in brackets; the whole head line is: "
                + HEAD);
        return null;
      }
      units[c] = m.group(2);
      try {
        Quantities.read(column.kind, column.title, "1" + units[c]);
      } catch (InputException e) {
        fault(line, "column " + (c + 1) + ": " + e.problems().get(0).text());
        return null;
      }
    }
    return units;
  }

  private FanCurve.@Nullable Point point(int line, String[] cells, String[] units) {
    if (cells.length != units.length) {
      fault(
          line,
          "has " + cells.length + " values, but the head line names " + units.length + " columns");
      return null;
    }
    double[] values = new double[3];
    Arrays.fill(values, Double.NaN);
    for (int c = 0; c < cells.length; c++) {
      Column column = Column.values()[c];
      try {
        values[c] = Quantities.read(column.kind, column.title, cells[c].strip() + units[c]);
      } catch (InputException e) {
        fault(
            line,
            "\""
                + cells[c].strip()
                + "\" is no number for the column \""
                + column.title
                + "\"; write it as 12.5");
        return null;
      }
    }
    return new FanCurve.Point(values[0], values[1], values[2]);
  }

  private void fault(int line, String text) {
    problems.add(new Problem("fan.file", file + ", line " + line, text));
  }
}
