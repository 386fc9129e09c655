package hemline.solver.flow;

import hemline.solver.field.FlowState;

/**
 * A flow state as one vector and back.
 *
 * <p>Order: u, v, p (the part that acceleration judges), then the rest.
 */
final class StateVector {
  private final FlowState state;
  private final double[][] parts;
  private final int size;
  private final int bounded;

  StateVector(FlowState s, boolean spanwise, Closure closure) {
    state = s;
    java.util.List<double[]> list = new java.util.ArrayList<>();
    list.add(s.u);
    list.add(s.v);
    list.add(s.p);
    list.add(s.flux);
    list.add(s.boundaryFlux);
    if (spanwise) {
      list.add(s.w);
    }
    bounded = list.size();
    if (closure == Closure.SST) {
      list.add(s.k);
      list.add(s.omega);
    } else if (closure == Closure.SA) {
      list.add(s.nuTilde);
    }
    if (closure != Closure.LAMINAR) {
      list.add(s.eddyViscosity);
    }
    parts = list.toArray(new double[0][]);
    int n = 2;
    for (double[] p : parts) {
      n += p.length;
    }
    size = n;
  }

  /** Length of the vector. */
  int size() {
    return size;
  }

  /** Length of the judged part. */
  int judged() {
    return 3 * state.u.length;
  }

  /** Reads the judged part alone. */
  void readJudged(double[] out) {
    int n = state.u.length;
    System.arraycopy(state.u, 0, out, 0, n);
    System.arraycopy(state.v, 0, out, n, n);
    System.arraycopy(state.p, 0, out, 2 * n, n);
  }

  void read(double[] out) {
    int at = 0;
    for (double[] p : parts) {
      System.arraycopy(p, 0, out, at, p.length);
      at += p.length;
    }
    out[at] = state.outletPressure;
    out[at + 1] = state.inletFlow;
  }

  /**
   * Takes over a vector; closure fields stay between half and twice their present values.
   *
   * @param from not modified
   */
  void write(double[] from) {
    int at = 0;
    for (int k = 0; k < parts.length; k++) {
      double[] p = parts[k];
      if (k >= bounded) {
        for (int c = 0; c < p.length; c++) {
          p[c] = Math.max(0.5 * p[c], Math.min(2 * p[c], from[at + c]));
        }
      } else {
        System.arraycopy(from, at, p, 0, p.length);
      }
      at += p.length;
    }
    state.outletPressure = from[at];
    state.inletFlow = from[at + 1];
  }
}
