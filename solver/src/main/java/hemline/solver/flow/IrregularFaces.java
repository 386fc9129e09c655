package hemline.solver.flow;

import hemline.solver.field.FlowState;
import hemline.solver.grid.Mesh;
import hemline.solver.scheme.FaceGeometry;
import hemline.solver.scheme.VelocityGradients;

/**
 * What the line between cell centres leaves out of the momentum equations where it misses a face's
 * centre or is not normal to it: cross diffusion, and convection of the centre's offset.
 */
final class IrregularFaces {
  /**
   * Most that a turbulent face value may change between the line of cell centres and the face's own
   * centre, over the smaller velocity beside it. In slivers at a wall the gradient times the offset
   * can exceed the velocity itself; taken from the last pass such a term grows without end, however
   * strong the relaxation.
   */
  private static final double OFFSET = 0.5;

  /**
   * The same once an attempt has run away; narrower from the start, it keeps others from settling.
   */
  private static final double NARROW_OFFSET = 0.25;

  private final FlowProblem problem;
  private final FaceGeometry geometry;
  private final Mesh mesh;
  private final double[] faceViscosity;
  private final double[] bu;
  private final double[] bv;
  private final double[] bw;
  private double offset = OFFSET;

  /**
   * Shares the arrays of the momentum equations.
   *
   * @param faceViscosity effective, kinematic, m²/s
   * @param bu right-hand side of u, likewise v and w
   */
  IrregularFaces(
      FlowProblem problem, double[] faceViscosity, double[] bu, double[] bv, double[] bw) {
    this.problem = problem;
    geometry = problem.geometry();
    mesh = geometry.mesh;
    this.faceViscosity = faceViscosity;
    this.bu = bu;
    this.bv = bv;
    this.bw = bw;
  }

  /** Bounds what convection adds more narrowly from now on. */
  void narrow() {
    offset = NARROW_OFFSET;
  }

  /**
   * Adds ν T ∂φ/∂t and -F s ∂φ/∂t to the right-hand sides.
   *
   * @param s not modified
   * @param g velocity gradients of the state
   */
  void add(FlowState s, VelocityGradients g) {
    double bound = problem.closure() == Closure.LAMINAR ? Double.MAX_VALUE : offset;
    for (int i = 0; i < geometry.irregular.length; i++) {
      int f = geometry.irregular[i];
      int o = mesh.owner[f];
      int n = mesh.neighbour[f];
      double wo = geometry.ownerWeight[f];
      double wn = 1 - wo;
      boolean vertical = mesh.vertical[f];
      double[] gu = vertical ? g.uy : g.ux;
      double[] gv = vertical ? g.vy : g.vx;
      double[] gw = vertical ? g.wy : g.wx;
      double across = faceViscosity[f] * geometry.crossLength[i];
      double convected = problem.momentum().secondOrderShare()[f] * s.flux[f];
      double skew = geometry.skew[i];
      double size = bound * Math.min(size(s, o), size(s, n));
      double du = wo * gu[o] + wn * gu[n];
      double dv = wo * gv[o] + wn * gv[n];
      double dw = wo * gw[o] + wn * gw[n];
      double cu = across * du - convected * within(skew * du, size);
      double cv = across * dv - convected * within(skew * dv, size);
      double cw = across * dw - convected * within(skew * dw, size);
      bu[o] += cu;
      bu[n] -= cu;
      bv[o] += cv;
      bv[n] -= cv;
      bw[o] += cw;
      bw[n] -= cw;
    }
  }

  private static double size(FlowState s, int c) {
    return Math.abs(s.u[c]) + Math.abs(s.v[c]) + Math.abs(s.w[c]);
  }

  private static double within(double x, double most) {
    return Math.max(-most, Math.min(most, x));
  }
}
