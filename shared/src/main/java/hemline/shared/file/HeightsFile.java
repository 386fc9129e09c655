package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Clearances measured along rough ground as text: the head line {@code height (mm)} with any unit
 * of length in brackets, then one height a line. Lines that begin with # are remarks.
 */
public final class HeightsFile {
  private static final Pattern HEAD = Pattern.compile("\\s*height\\s*\\(\\s*([^)]*?)\\s*\\)\\s*");

  private static final int MOST_PROBLEMS = 8;

  private HeightsFile() {}

  /**
   * Reads the heights, m, in the order of the file, at least one, all positive.
   *
   * @throws InputException with the problems of the first faulty lines
   */
  public static List<Double> read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString());
  }

  /** Reads the text of a file of heights; the file name serves the messages. */
  public static List<Double> parse(String text, String file) throws InputException {
    List<Problem> problems = new ArrayList<>();
    List<Double> heights = new ArrayList<>();
    double metre = 0;
    String[] lines = text.split("\r\n|\n|\r", -1);
    for (int i = 0; i < lines.length && problems.size() < MOST_PROBLEMS; i++) {
      String line = lines[i].strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      String place = file + ", line " + (i + 1);
      if (metre == 0) {
        metre = unit(line, place);
        continue;
      }
      double height = number(line) * metre;
      if (height > 0 && Double.isFinite(height)) {
        heights.add(height);
      } else {
        problems.add(
            new Problem("heights.value", place, "one height above 0 belongs here, such as 2.4"));
      }
    }
    if (problems.isEmpty() && heights.isEmpty()) {
      problems.add(
          new Problem(
              "heights.none", file, "it holds no heights; one a line below \"height (mm)\""));
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    return heights;
  }

  /** Length of one unit, m, from the head line. */
  private static double unit(String line, String place) throws InputException {
    Matcher head = HEAD.matcher(line);
    if (!head.matches()) {
      throw new InputException(
          List.of(
              new Problem(
                  "heights.head",
                  place,
                  "the head line must be \"height (mm)\", with the unit of the heights")));
    }
    return Quantities.read(QuantityKind.LENGTH, place, "1" + head.group(1));
  }

  private static double number(String text) {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }
}
