package hemline.solver.plenum;

import java.util.Arrays;

/**
 * Pressure against flow, ready to draw.
 *
 * @param factor of the static gaps
 * @param gap smallest of them, m; 0 for the fan
 * @param flow m³/s
 * @param pressure Pa
 */
public record FlowCurve(double factor, double gap, double[] flow, double[] pressure) {
  public FlowCurve {
    flow = flow.clone();
    pressure = pressure.clone();
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof FlowCurve c
        && factor == c.factor
        && gap == c.gap
        && Arrays.equals(flow, c.flow)
        && Arrays.equals(pressure, c.pressure);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(flow) + 31 * Arrays.hashCode(pressure);
  }
}
