package hemline.solver.flow;

import hemline.solver.field.FlowState;

/** Mean of a state over iterations; the mean of flows that conserve mass conserves mass. */
final class MeanState {
  private final FlowState sum;
  private int count;

  MeanState(FlowState like) {
    sum = new FlowState(like.u.length, like.flux.length, like.boundaryFlux.length);
  }

  void add(FlowState s) {
    add(sum.u, s.u);
    add(sum.v, s.v);
    add(sum.w, s.w);
    add(sum.p, s.p);
    add(sum.k, s.k);
    add(sum.omega, s.omega);
    add(sum.nuTilde, s.nuTilde);
    add(sum.eddyViscosity, s.eddyViscosity);
    add(sum.flux, s.flux);
    add(sum.boundaryFlux, s.boundaryFlux);
    sum.outletPressure += s.outletPressure;
    sum.inletFlow += s.inletFlow;
    count++;
  }

  /** Replaces a state by the mean; does nothing when nothing was added. */
  void putInto(FlowState s) {
    if (count == 0) {
      return;
    }
    put(sum.u, s.u);
    put(sum.v, s.v);
    put(sum.w, s.w);
    put(sum.p, s.p);
    put(sum.k, s.k);
    put(sum.omega, s.omega);
    put(sum.nuTilde, s.nuTilde);
    put(sum.eddyViscosity, s.eddyViscosity);
    put(sum.flux, s.flux);
    put(sum.boundaryFlux, s.boundaryFlux);
    s.outletPressure = sum.outletPressure / count;
    s.inletFlow = sum.inletFlow / count;
  }

  private static void add(double[] total, double[] a) {
    for (int i = 0; i < a.length; i++) {
      total[i] += a[i];
    }
  }

  private void put(double[] total, double[] a) {
    for (int i = 0; i < a.length; i++) {
      a[i] = total[i] / count;
    }
  }
}
