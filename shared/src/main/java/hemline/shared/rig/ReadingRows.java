package hemline.shared.rig;

import hemline.shared.fluid.Air;
import hemline.shared.problem.Problem;
import hemline.shared.section.SectionLimits;
import hemline.shared.units.NumberText;
import hemline.shared.vehicle.FanCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Rows of a rig's table that are readings, each judged by itself. */
final class ReadingRows {
  /** Halls are about this warm, K; judged, no source. */
  static final double HALL = 293.15;

  private static final double LEAST_BAROMETER = 50e3;
  private static final double MOST_BAROMETER = 120e3;

  private final RigTable table;
  private final Map<Instrument, Double> all;
  private final @Nullable FanCurve fan;

  /**
   * Readings of a table.
   *
   * @param all what holds all along
   * @param fan its curve; null where none is known
   */
  ReadingRows(RigTable table, Map<Instrument, Double> all, @Nullable FanCurve fan) {
    this.table = table;
    this.all = all;
    this.fan = fan;
  }

  /**
   * The readings, in the order of their rows. They are judged only as long as nothing was wrong
   * before.
   *
   * @param problems what was wrong so far; faults are added to it by the table
   */
  List<RigReading> read(List<RigTable.Row> rows, List<Problem> problems) {
    List<RigReading> readings = new ArrayList<>();
    for (RigTable.Row row : rows) {
      RigReading.Kind kind = RigReading.Kind.valueOf(row.what().toUpperCase(Locale.ROOT));
      RigReading reading =
          new RigReading(
              kind,
              row.line(),
              table.value(row, Instrument.GAP),
              table.value(row, Instrument.SUCTION),
              table.value(row, Instrument.FLOW),
              here(row, Instrument.FAN_SPEED, Double.NaN),
              table.value(row, Instrument.TIME),
              new RigReading.AirState(
                  here(row, Instrument.TEMPERATURE, HALL),
                  here(row, Instrument.BAROMETER, Air.STANDARD_PRESSURE)));
      if (problems.isEmpty()) {
        check(reading);
      }
      readings.add(reading);
    }
    return readings;
  }

  /** The row's own value, else the rig's. */
  private double here(RigTable.Row row, Instrument instrument, double otherwise) {
    double value = table.value(row, instrument);
    return Double.isNaN(value) ? all.getOrDefault(instrument, otherwise) : value;
  }

  private void check(RigReading r) {
    boolean lip = r.kind() == RigReading.Kind.LIP;
    boolean decay = r.kind() == RigReading.Kind.DECAY;
    if (lip && Double.isNaN(r.gap())) {
      table.fault(r.line(), "a reading of the lip needs its gap; for the lip shut write taped");
    } else if (!Double.isNaN(r.gap()) && r.kind() == RigReading.Kind.TAPED) {
      table.fault(r.line(), "a reading with the lip taped shut has no gap; leave the cell empty");
    } else if (!Double.isNaN(r.gap()) && !SectionLimits.gap(r.gap()).isEmpty()) {
      table.fault(r.line(), SectionLimits.gap(r.gap()));
    }
    if (!(r.suction() > 0) || !SectionLimits.suction(r.suction()).isEmpty()) {
      table.fault(
          r.line(),
          "every reading needs its suction, above 0 and below 100 kPa; write it without a minus"
              + " sign");
    }
    if (r.flow() < 0 || (lip && r.flow() == 0)) {
      table.fault(r.line(), "a flow out of the box is above 0; check its sign");
    }
    if (decay && Double.isNaN(r.time())) {
      table.fault(r.line(), "a reading of a decay needs its time, column \"time\"");
    }
    if (!decay && Double.isNaN(r.flow()) && fan != null && !(r.fanSpeed() > 0)) {
      table.fault(r.line(), "without a flow the speed of the fan is needed, above 0");
    }
    if (r.air().temperature() < Air.COLDEST || r.air().temperature() > Air.HOTTEST) {
      table.fault(r.line(), "the temperature must lie between -73 and 227 degC; check its unit");
    }
    if (r.air().barometer() < LEAST_BAROMETER || r.air().barometer() > MOST_BAROMETER) {
      table.fault(
          r.line(),
          "the barometer must show 500 to 1200 hPa, the absolute pressure where the rig stands, not"
              + " "
              + NumberText.pressure(r.air().barometer()));
    }
  }
}
