package hemline.solver.rig;

import java.util.List;

/**
 * How large each fault is.
 *
 * @param values in the order of {@link Fault}, see there
 */
record FaultSizes(double[] values) {
  /** No fault at all. */
  static final FaultSizes NONE = new FaultSizes(new double[Fault.values().length]);

  /** Some faults, each of a size, the others 0. */
  static FaultSizes of(List<Fault> faults, double[] sizes) {
    double[] values = new double[Fault.values().length];
    for (int i = 0; i < sizes.length; i++) {
      values[faults.get(i).ordinal()] = sizes[i];
    }
    return new FaultSizes(values);
  }

  double of(Fault fault) {
    return values[fault.ordinal()];
  }
}
