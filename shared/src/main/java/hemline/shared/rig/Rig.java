package hemline.shared.rig;

import hemline.shared.problem.Notice;
import hemline.shared.vehicle.FanCurve;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A rig with its readings.
 *
 * @param name of its file
 * @param invented true where nobody measured the readings
 * @param lipLength m
 * @param boxVolume m³; not a number where it is not known
 * @param fan blower that serves as the meter where none was read
 * @param accuracy by instrument; those left out are {@link Accuracy#NONE}
 * @param readings in the order of the file
 * @param notices what had to be taken for granted
 */
public record Rig(
    String name,
    boolean invented,
    double lipLength,
    double boxVolume,
    FanMeter fan,
    Map<Instrument, Accuracy> accuracy,
    List<RigReading> readings,
    List<Notice> notices) {
  /**
   * A blower that serves as the meter.
   *
   * @param curve that gives the flow; null for none
   * @param accuracy half-width of the curve's flow as a share
   */
  public record FanMeter(@Nullable FanCurve curve, double accuracy) {
    /** A rig without a curve. */
    public static final FanMeter NONE = new FanMeter(null, 0);
  }

  public Rig {
    accuracy = Map.copyOf(accuracy);
    readings = List.copyOf(readings);
    notices = List.copyOf(notices);
    if (!(lipLength > 0)) {
      throw new IllegalArgumentException("the lip needs a length, got " + lipLength + " m");
    }
  }

  /** What an instrument may be off by. */
  public Accuracy of(Instrument instrument) {
    return accuracy.getOrDefault(instrument, Accuracy.NONE);
  }

  /** Readings of one kind. */
  public List<RigReading> of(RigReading.Kind kind) {
    return readings.stream().filter(r -> r.kind() == kind).toList();
  }
}
