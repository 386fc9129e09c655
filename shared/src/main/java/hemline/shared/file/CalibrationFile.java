package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.result.Calibration;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Calibrations kept beside lip files, schema {@code hemline.calibration/1}, SI, sealed: {@code
 * my-lip.json} has {@code my-lip.calibration.json}.
 */
public final class CalibrationFile {
  private static final String KIND = "calibration";
  private static final int VERSION = 1;

  /** Keys of the numbers, in the order of the calibration's components. */
  private static final List<String> NUMBERS =
      List.of(
          "factor",
          "factorUncertainty",
          "offset",
          "offsetUncertainty",
          "correlation",
          "rest",
          "gapLow",
          "gapHigh",
          "suctionLow",
          "suctionHigh");

  private static final String ENDING = "." + KIND + ".json";

  private CalibrationFile() {}

  /** Where the calibration of a lip file or drawing stands. */
  public static Path beside(Path lip) {
    String name = lip.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return lip.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ENDING);
  }

  /** True for a file name that a calibration has. */
  public static boolean isNamed(Path file) {
    return file.getFileName().toString().endsWith(ENDING);
  }

  /**
   * Reads a calibration.
   *
   * @throws InputException if it is none, or was changed after it was sealed
   */
  public static Calibration read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString());
  }

  /** Writes a calibration in one step. */
  public static void write(Path file, Calibration calibration) throws InputException {
    TextFiles.write(file, text(calibration));
  }

  /** Text of a calibration. */
  public static String text(Calibration c) {
    Map<String, Object> top = new LinkedHashMap<>();
    top.put("schema", "hemline." + KIND + "/" + VERSION);
    top.put("seal", Seal.BLANK);
    top.put("lip", c.lip());
    top.put("outline", c.outline());
    top.put("rig", c.rig());
    top.put("invented", c.invented());
    top.put("points", FileUnit.decimal(c.points()));
    double[] numbers = {
      c.line().factor(),
      c.line().factorUncertainty(),
      c.line().offset(),
      c.line().offsetUncertainty(),
      c.line().correlation(),
      c.line().rest(),
      c.range().gapLow(),
      c.range().gapHigh(),
      c.range().suctionLow(),
      c.range().suctionHigh()
    };
    for (int i = 0; i < numbers.length; i++) {
      top.put(NUMBERS.get(i), FileUnit.decimal(numbers[i]));
    }
    return Seal.close(JsonLayout.text(top));
  }

  /** Reads the text of a calibration; the file name serves the messages. */
  public static Calibration parse(String text, String file) throws InputException {
    JsonItem.Members top = JsonTree.read(text, file);
    Seal.check(text, file);
    List<Problem> problems = new ArrayList<>();
    JsonKeys keys = new JsonKeys(file, "", top, problems);
    if (!SchemaKey.check(keys, KIND, VERSION)) {
      throw new InputException(problems);
    }
    List<String> allowed =
        new ArrayList<>(List.of("schema", "seal", "lip", "outline", "rig", "invented", "points"));
    allowed.addAll(NUMBERS);
    keys.allow(allowed.toArray(String[]::new));
    String lip = keys.text("lip", "plain flat 8");
    String outline = keys.text("outline", "a digest");
    String rig = keys.text("rig", "rig.csv");
    boolean invented = keys.truth("invented", false);
    int points = keys.index("points", "a number of points");
    double[] n =
        NUMBERS.stream().mapToDouble(key -> keys.number(key, "a number in SI units")).toArray();
    if (problems.isEmpty()) {
      try {
        return new Calibration(
            lip,
            outline,
            rig,
            invented,
            points,
            new Calibration.Line(n[0], n[1], n[2], n[3], n[4], n[5]),
            new Calibration.Range(n[6], n[7], n[8], n[9]));
      } catch (IllegalArgumentException e) {
        problems.add(
            new Problem(
                "calibration.figures",
                file,
                "its figures cannot be; remove the file and compare again with"
                    + " --keep-calibration"));
      }
    }
    throw new InputException(problems);
  }
}
