package hemline.shared.rig;

import hemline.shared.file.FanCurveFile;
import hemline.shared.file.TextFiles;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.problem.Problem;
import hemline.shared.vehicle.FanCurve;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Rig files: a table with a head line, one column an instrument with its unit in brackets, one line
 * a reading. The first column says what a line is: a kind of reading ({@code lip}, {@code taped},
 * {@code decay}), {@code rig} for what holds all along, {@code accuracy}, {@code accuracy %} (of
 * the reading) and {@code resolution} for what the instruments may be off by, or {@code invented}
 * where nobody measured.
 */
public final class RigFile {
  /** Weather moves the barometer by about this much about the standard; judged, no source. */
  private static final double WEATHER = 3000;

  /** Halls are within this of {@link ReadingRows#HALL}; judged, no source. */
  private static final double HALL_SPREAD = 5;

  /** Air of fan curves, ISO 5801 (from memory), kg/m³. */
  private static final double CURVE_DENSITY = 1.2;

  /** Above this an instrument tells nothing. */
  private static final double MOST_SHARE = 0.5;

  /** Readings of a rig: their correlations take the square of it in memory, the cube in time. */
  private static final int MOST_READINGS = 300;

  private final String file;
  private final @Nullable Path folder;
  private final List<Problem> problems = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();
  private final RigTable table;

  private RigFile(String text, String file, @Nullable Path folder) {
    this.file = file;
    this.folder = folder;
    this.table = RigTable.of(text, file, problems);
  }

  /**
   * Reads a rig with at least one reading.
   *
   * @throws InputException with the problems of the first faulty lines
   */
  public static Rig read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString(), file.toAbsolutePath().getParent(), false);
  }

  /**
   * Reads a rig whose instruments alone count; it may have no readings.
   *
   * @throws InputException with the problems of the first faulty lines
   */
  public static Rig readInstruments(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString(), file.toAbsolutePath().getParent(), true);
  }

  /**
   * Reads the text of a rig.
   *
   * @param file name for messages
   * @param folder where the file of a fan's curve is looked for; null where there is none
   * @param instrumentsOnly true where readings may be missing
   */
  public static Rig parse(String text, String file, @Nullable Path folder, boolean instrumentsOnly)
      throws InputException {
    RigFile reader = new RigFile(text, file, folder);
    Rig rig = reader.problems.isEmpty() ? reader.rig(instrumentsOnly) : null;
    if (rig == null || !reader.problems.isEmpty()) {
      throw new InputException(reader.problems);
    }
    return rig;
  }

  private @Nullable Rig rig(boolean instrumentsOnly) {
    Map<Instrument, double[]> accuracies = new EnumMap<>(Instrument.class);
    Map<Instrument, Double> all = new EnumMap<>(Instrument.class);
    List<RigTable.Row> readingRows = new ArrayList<>();
    boolean invented = false;
    String curve = "";
    int curveLine = 1;
    double fanAccuracy = Double.NaN;
    for (RigTable.Row row : table.rows()) {
      switch (row.what().toLowerCase(Locale.ROOT)) {
        case "accuracy" -> accuracy(row, 0, accuracies);
        case "accuracy %" -> {
          accuracy(row, 1, accuracies);
          double share = table.number(row, RigTable.CURVE, table.curve(row));
          fanAccuracy = Double.isNaN(share) ? fanAccuracy : share / 100;
        }
        case "resolution" -> accuracy(row, 2, accuracies);
        case "rig" -> {
          values(row, all);
          if (!table.curve(row).isEmpty()) {
            curve = table.curve(row);
            curveLine = row.line();
          }
        }
        case "invented" -> invented = true;
        case "lip", "taped", "decay" -> readingRows.add(row);
        default -> unknown(row);
      }
    }
    if (readingRows.size() > MOST_READINGS) {
      table.fault(
          readingRows.get(MOST_READINGS).line(),
          "a rig holds at most " + MOST_READINGS + " readings; put repeats together");
      return null;
    }
    FanCurve fan = curve.isEmpty() ? null : fan(curve, curveLine, all);
    List<RigReading> readings = new ReadingRows(table, all, fan).read(readingRows, problems);
    if (!instrumentsOnly && problems.isEmpty()) {
      count(readings);
    }
    double lipLength = all.getOrDefault(Instrument.LIP_LENGTH, Double.NaN);
    if (!(lipLength >= 1e-3 && lipLength <= 100)) {
      problem("the length of the lip must be given in a line \"rig\", 1 mm to 100 m");
    }
    double volume = all.getOrDefault(Instrument.BOX_VOLUME, Double.NaN);
    if (!Double.isNaN(volume) && !(volume > 0)) {
      problem("the volume of the box must be above 0");
    }
    Map<Instrument, Accuracy> known = accuracies(accuracies, all);
    for (Instrument instrument : Instrument.values()) {
      near(instrument, least(instrument, readings, lipLength), known);
    }
    RigNeeds.check(readings, known, fan != null, fanAccuracy, volume, this::problem);
    if (!problems.isEmpty()) {
      return null;
    }
    return new Rig(
        file,
        invented,
        lipLength,
        volume,
        new Rig.FanMeter(fan, Double.isNaN(fanAccuracy) ? 0 : fanAccuracy),
        known,
        readings,
        notices);
  }

  /** What holds for all readings. */
  private void values(RigTable.Row row, Map<Instrument, Double> all) {
    for (Instrument instrument : Instrument.values()) {
      double value = table.value(row, instrument);
      if (!Double.isNaN(value)) {
        all.put(instrument, value);
      }
    }
  }

  private void unknown(RigTable.Row row) {
    table.fault(
        row.line(),
        "the first cell must be rig, accuracy, accuracy %, resolution, lip, taped, decay or"
            + " invented, but is \""
            + row.what()
            + "\"");
  }

  private void accuracy(RigTable.Row row, int part, Map<Instrument, double[]> accuracies) {
    for (Instrument instrument : Instrument.values()) {
      double value =
          part == 1 ? table.number(row, instrument) / 100 : table.difference(row, instrument);
      if (Double.isNaN(value)) {
        continue;
      }
      if (value < 0) {
        table.fault(row.line(), "column \"" + instrument.title() + "\": must not be negative");
        continue;
      }
      if (part == 1 && value > MOST_SHARE) {
        table.fault(
            row.line(), "column \"" + instrument.title() + "\": more than 50 % is no accuracy");
        continue;
      }
      accuracies.computeIfAbsent(instrument, i -> new double[3])[part] = value;
    }
  }

  private Map<Instrument, Accuracy> accuracies(
      Map<Instrument, double[]> written, Map<Instrument, Double> all) {
    Map<Instrument, Accuracy> known = new EnumMap<>(Instrument.class);
    written.forEach((i, parts) -> known.put(i, new Accuracy(parts[0], parts[1], parts[2])));
    usual(Instrument.TEMPERATURE, HALL_SPREAD, known, all);
    usual(Instrument.BAROMETER, WEATHER, known, all);
    return known;
  }

  /** Where the air was not read, its usual spread stands for the accuracy. */
  private void usual(
      Instrument instrument,
      double spread,
      Map<Instrument, Accuracy> known,
      Map<Instrument, Double> all) {
    boolean read = all.containsKey(instrument) || table.has(instrument);
    if (read && known.getOrDefault(instrument, Accuracy.NONE).stated()) {
      return;
    }
    known.put(instrument, new Accuracy(spread, 0, 0));
    boolean warmth = instrument == Instrument.TEMPERATURE;
    notices.add(
        read
            ? (warmth ? NoticeKind.RIG_TEMPERATURE_UNSURE : NoticeKind.RIG_BAROMETER_UNSURE)
                .of(spread)
            : warmth
                ? NoticeKind.RIG_TEMPERATURE_UNREAD.of(spread, ReadingRows.HALL)
                : NoticeKind.RIG_BAROMETER_UNREAD.of(spread, Air.STANDARD_PRESSURE));
  }

  private @Nullable FanCurve fan(String name, int line, Map<Instrument, Double> all) {
    double speed = all.getOrDefault(Instrument.CURVE_SPEED, Double.NaN);
    if (!(speed > 0)) {
      table.fault(line, "a fan curve needs the speed it was measured at, column \"curve speed\"");
      return null;
    }
    double density = all.getOrDefault(Instrument.CURVE_DENSITY, CURVE_DENSITY);
    if (folder == null) {
      table.fault(line, "a fan curve is looked for in the folder of the rig file; there is none");
      return null;
    }
    try {
      return new FanCurve(FanCurveFile.read(folder.resolve(name)), speed, density);
    } catch (InvalidPathException e) {
      table.fault(line, "\"" + name + "\" is no file name here");
    } catch (InputException e) {
      problems.addAll(e.problems());
    } catch (IllegalArgumentException e) {
      table.fault(line, "the density of a fan curve must be above 0");
    }
    return null;
  }

  /** Least that is read of an instrument; infinite where its error cannot do harm. */
  private static double least(Instrument instrument, List<RigReading> readings, double lipLength) {
    ToDoubleFunction<RigReading> value =
        switch (instrument) {
          case GAP -> RigReading::gap;
          case SUCTION -> RigReading::suction;
          case TEMPERATURE -> r -> r.air().temperature();
          case BAROMETER -> r -> r.air().barometer();
          case LIP_LENGTH -> r -> lipLength;
          default -> r -> Double.POSITIVE_INFINITY;
        };
    return readings.stream()
        .filter(r -> r.kind() == RigReading.Kind.LIP)
        .mapToDouble(value)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** An error that may be half as large as a reading leaves nothing of it. */
  private void near(Instrument instrument, double least, Map<Instrument, Accuracy> known) {
    Accuracy accuracy = known.getOrDefault(instrument, Accuracy.NONE);
    if (accuracy.absolute() + accuracy.resolution() >= MOST_SHARE * least) {
      problem(
          "accuracy and resolution of the "
              + instrument.title()
              + " reach half of its smallest reading; check their units, or leave that reading"
              + " out");
    }
  }

  private void count(List<RigReading> readings) {
    if (readings.stream().noneMatch(r -> r.kind() == RigReading.Kind.LIP)) {
      problem("there is no reading of a lip; add lines \"lip\" with gap, suction and flow");
    }
    if (readings.stream().noneMatch(r -> r.kind() != RigReading.Kind.LIP)) {
      notices.add(NoticeKind.RIG_BOX.of());
    }
  }

  private void problem(String text) {
    problems.add(new Problem("rig.file", file, text));
  }
}
