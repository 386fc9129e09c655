package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * One change of the machine and what it buys.
 *
 * @param kind what is changed
 * @param name of the change, such as the lip's
 * @param factor of the changed size; 1 for another lip
 * @param downforce N; null when the machine does not settle
 * @param shaftPower of the fan, W; null as above
 * @param perWatt downforce over electrical power, N/W; null as above
 * @param leastGap under load, m; null as above
 * @param beyond true when it leans on leaks beyond the solved gaps and suctions
 */
public record Trade(
    Kind kind,
    String name,
    double factor,
    @Nullable Estimate downforce,
    @Nullable Estimate shaftPower,
    @Nullable Estimate perWatt,
    @Nullable Estimate leastGap,
    boolean beyond) {

  /** What is changed. */
  public enum Kind {
    AS_IT_IS("as it is"),
    FLOOR_SIZE("floor, length and width"),
    FLOOR_LENGTH("floor aspect ratio"),
    FAN_SPEED("fan speed"),
    GAP("static gap"),
    LIP("lip");

    private final String key;

    Kind(String key) {
      this.key = key;
    }

    /** Name for people and in files. */
    public String key() {
      return key;
    }
  }
}
