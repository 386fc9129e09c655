package hemline.viewer.picture;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.Figure;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** A flow under a lip with a pocket that is written down, not solved: figures are invented. */
final class InventedFlow {
  static final double GAP = 2e-3;
  static final double LEAK = 0.043;
  private static final double SUCTION = 600;

  private InventedFlow() {}

  /** An 8 mm lip with a pocket of 4 by 3 mm, 18 mm tall. */
  static LipProfile lip() {
    return new LipProfile(
        "one pocket 8",
        "pocket",
        "",
        new Outline(
            List.of(
                new Vertex(0, 0),
                new Vertex(2e-3, 0),
                new Vertex(2e-3, 3e-3),
                new Vertex(6e-3, 3e-3, 0),
                new Vertex(6e-3, 0),
                new Vertex(8e-3, 0),
                new Vertex(8e-3, 18e-3),
                new Vertex(0, 18e-3))),
        6,
        List.of());
  }

  static SealSection section(GroundMotion motion) {
    return new SealSection(lip(), GAP, SUCTION, motion, new FluidState(1.2, 1.5e-5), List.of());
  }

  static SectionResult result(SolveStatus status, GroundMotion motion) {
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    figures.put(Figure.LEAK_FLOW, new Estimate(LEAK, 0.0004, 0.0001, 0, 0, Trend.MONOTONE));
    figures.put(
        Figure.DISCHARGE_COEFFICIENT, new Estimate(0.681, 0.006, 0, 0.001, 0, Trend.MONOTONE));
    figures.put(Figure.EFFECTIVE_GAP, new Estimate(1.362e-3, 1.2e-5, 0, 0, 0, Trend.MONOTONE));
    return new SectionResult(
        "one pocket 8",
        new SectionConditions(GAP, SUCTION, motion.speed(), motion.spanwiseSpeed()),
        status,
        Regime.TRANSITIONAL,
        "sst",
        new SectionFigures(
            figures,
            List.of(),
            List.of(),
            List.of(
                new SectionFigures.TrappedVortex(
                    new Estimate(1.4, 0.1, 0, 0, 0, Trend.MONOTONE), 17e-3, 8e-3),
                new SectionFigures.TrappedVortex(
                    new Estimate(0.22, 0.01, 0, 0, 0, Trend.MONOTONE), 4e-3, 3.4e-3))),
        List.of(NoticeKind.REGIME_TRANSITION.of(1200, 500, 3000)),
        List.of());
  }

  static GridField field() {
    double[] x = lines(-30e-3, 60e-3, 0, 2e-3, 6e-3, 8e-3);
    double[] y = lines(0, 40e-3, 2e-3, 5e-3, 20e-3);
    double[] psi = new double[x.length * y.length];
    for (int j = 0; j < y.length; j++) {
      for (int i = 0; i < x.length; i++) {
        psi[j * x.length + i] = streamfunction(x[i], y[j]);
      }
    }
    double[] px = centres(x);
    double[] py = centres(y);
    double[] p = new double[px.length * py.length];
    boolean[] wet = new boolean[p.length];
    for (int j = 0; j < py.length; j++) {
      for (int i = 0; i < px.length; i++) {
        p[j * px.length + i] = pressure(px[i], py[j]);
        wet[j * px.length + i] = !solid(px[i], py[j]);
      }
    }
    return new GridField(px, py, p, wet, x, y, psi);
  }

  private static boolean solid(double x, double y) {
    boolean pocket = x > 2e-3 && x < 6e-3 && y < 5e-3;
    return x >= 0 && x <= 8e-3 && y >= GAP && !pocket;
  }

  private static double streamfunction(double x, double y) {
    if (solid(x, y)) {
      return LEAK;
    }
    double ceiling = 40e-3;
    if (x >= 0 && x <= 8e-3) {
      double channel = Math.min(1, y / GAP);
      double pocket =
          y > GAP
              ? 0.22 * Math.sin(Math.PI * (y - GAP) / 3e-3) * Math.sin(Math.PI * (x - 2e-3) / 4e-3)
              : 0;
      return LEAK * (channel + pocket);
    }
    if (x < 0) {
      // all round the edge of the lip towards the gap
      double far = Math.hypot(x, Math.max(0, y - GAP));
      double height = GAP + Math.min(ceiling - GAP, 0.9 * far + 0.4 * Math.abs(x));
      double turn = Math.atan2(Math.max(0, y), -x) / (Math.PI / 2);
      double sink = y < GAP ? y / height : Math.max(turn, y / height);
      return LEAK * Math.min(1, sink);
    }
    double jet = 1.4e-3 + 0.08 * (x - 8e-3);
    double through = Math.min(1, y / jet);
    double r2 = Math.pow((x - 17e-3) / 7e-3, 2) + Math.pow((y - 8e-3) / 5e-3, 2);
    return LEAK * (through + 1.4 * Math.exp(-r2) * Math.min(1, Math.max(0, (y - jet) / jet)));
  }

  private static double pressure(double x, double y) {
    double fall = 1 / (1 + Math.exp(-(x - 0.2e-3 + 0.4 * Math.max(0, y - GAP)) / 0.5e-3));
    double dip = 0.35 * Math.exp(-(Math.pow(x - 1e-3, 2) + Math.pow(y - GAP, 2)) / 1e-6);
    double core =
        x > 8e-3 ? 0.06 * Math.exp(-Math.pow(Math.hypot(x - 17e-3, y - 8e-3) / 4e-3, 2)) : 0;
    return -SUCTION * (fall + dip + core);
  }

  /** Lines through fixed places, closer near the lip. */
  private static double[] lines(double from, double to, double... through) {
    java.util.TreeSet<Double> set = new java.util.TreeSet<>();
    for (double t : through) {
      set.add(t);
    }
    double previous = through[0];
    for (double t : through) {
      for (int k = 1; k < 20; k++) {
        set.add(previous + (t - previous) * k / 20);
      }
      previous = t;
    }
    double step = 1.5e-4;
    for (double at = through[0]; at > from; step *= 1.12) {
      at = Math.max(from, at - step);
      set.add(at);
    }
    step = 1.5e-4;
    for (double at = previous; at < to; step *= 1.12) {
      at = Math.min(to, at + step);
      set.add(at);
    }
    if (from == 0) {
      for (int k = 0; k < 20; k++) {
        set.add(through[0] * k / 20);
      }
      set.removeIf(v -> v < 0);
    }
    return set.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double[] centres(double[] lines) {
    double[] nodes = new double[lines.length + 1];
    nodes[0] = lines[0];
    for (int k = 0; k + 1 < lines.length; k++) {
      nodes[k + 1] = 0.5 * (lines[k] + lines[k + 1]);
    }
    nodes[lines.length] = lines[lines.length - 1];
    return nodes;
  }
}
