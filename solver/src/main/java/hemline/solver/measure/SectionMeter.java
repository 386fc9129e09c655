package hemline.solver.measure;

import hemline.shared.profile.MountEdge;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.solver.flow.DuctSetup;
import hemline.solver.flow.FlowSetup;
import hemline.solver.flow.FlowSolution;
import hemline.solver.flow.SectionSetup;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Measures every figure of a finished flow. */
public final class SectionMeter {
  private static final RawFigures NONE = new RawFigures(Map.of(), List.of(), List.of(), List.of());

  private SectionMeter() {}

  /** Figures of a section. */
  public static GridRun measure(FlowSetup setup, FlowSolution flow) {
    if (flow.outcome().status() == SolveStatus.FAILED) {
      return run(flow, NONE, 0, 0);
    }
    if (setup instanceof SectionSetup lip) {
      return measure(lip, flow);
    }
    return measure((DuctSetup) setup, flow);
  }

  private static GridRun measure(SectionSetup setup, FlowSolution flow) {
    SealSection section = setup.drawn();
    double rho = section.fluid().density();
    double h = section.gap();
    double leak = flowOut(flow, Patch.RIGHT);
    double drive = section.suction() / rho;
    Map<Figure, Double> f = new EnumMap<>(Figure.class);
    f.put(Figure.LEAK_FLOW, leak);
    f.put(Figure.PRESSURE_DROP, section.suction());
    coefficients(f, leak, drive, h);
    GapColumns columns = new GapColumns(flow, 0, setup.width());
    recovery(f, columns, leak < 0 ? 0 : -drive, leak / h);
    MountEdge mount = MountEdge.of(section.profile());
    boolean[] lip = new boolean[patches(flow)];
    for (int k = 0; k < setup.lipSolids(); k++) {
      lip[Patch.FIRST_SOLID + k] = true;
    }
    forces(f, flow, rho, lip, 0, mount.middle(), mount.y() + h);
    ground(
        f, flow, rho, 0, setup.width(), section.ground().speed(), section.ground().spanwiseSpeed());
    Stages stages = new Stages(columns, h, 0, -drive);
    double unit = Math.max(Math.abs(leak), 1e-300);
    List<RawFigures.Vortex> eddies =
        Eddies.find(
            mesh(flow).lines,
            flow.streamfunction(),
            leak,
            unit,
            new double[] {0, setup.width(), 0, mount.y() + h});
    return run(
        flow,
        new RawFigures(f, stages.shares, stages.carryOver, eddies),
        leak,
        flow.outcome().halfSpread());
  }

  private static GridRun measure(DuctSetup setup, FlowSolution flow) {
    DuctSection duct = setup.drawn();
    double rho = duct.fluid().density();
    double h = duct.gap();
    Map<Figure, Double> f = new EnumMap<>(Figure.class);
    Mesh mesh = mesh(flow);
    double upstream = 0;
    double downstream = 0;
    double leak = 0;
    double unit;
    if (duct.walls().cavity() == null) {
      double[] p = flow.state().p;
      upstream = setup.upstreamTap(mesh).read(p);
      downstream = setup.downstreamTap(mesh).read(p);
      double drop = upstream - downstream;
      leak = flowOut(flow, Patch.RIGHT);
      f.put(Figure.LEAK_FLOW, leak);
      f.put(Figure.PRESSURE_DROP, rho * drop);
      coefficients(f, leak, drop, h);
      unit = Math.max(Math.abs(leak), 1e-300);
    } else {
      unit = flow.problem().scales().velocity() * h;
    }
    double[] span = span(setup);
    double from = span[0];
    double to = span[1];
    boolean bodies = from < to;
    if (bodies) {
      boolean[] solids = new boolean[patches(flow)];
      java.util.Arrays.fill(solids, Patch.FIRST_SOLID, solids.length, true);
      forces(f, flow, rho, solids, downstream, 0.5 * (from + to), duct.channel().height());
    }
    ground(
        f,
        flow,
        rho,
        bodies ? from : duct.channel().from(),
        bodies ? to : duct.channel().to(),
        duct.ground().speed(),
        duct.ground().spanwiseSpeed());
    List<Double> shares = List.of();
    List<Double> carryOver = List.of();
    if (bodies && duct.walls().cavity() == null) {
      GapColumns columns = new GapColumns(flow, from, to);
      recovery(f, columns, leak < 0 ? upstream : downstream, leak / h);
      Stages stages = stages(duct, columns, upstream, downstream);
      shares = stages.shares;
      carryOver = stages.carryOver;
    }
    double[] window =
        bodies
            ? new double[] {from, to, 0, duct.channel().height()}
            : new double[] {duct.channel().from(), duct.channel().to(), 0, duct.channel().height()};
    List<RawFigures.Vortex> eddies =
        Eddies.find(mesh.lines, flow.streamfunction(), leak, unit, window);
    double spread =
        f.getOrDefault(Figure.PRESSURE_DROP, 0.0) == 0 || leak == 0
            ? 0
            : flow.outcome().halfSpread()
                / Math.max(1e-300, Math.abs(flow.outcome().figure()))
                * Math.abs(leak);
    return run(flow, new RawFigures(f, shares, carryOver, eddies), leak, spread);
  }

  /** Least and largest x of the bodies; the first the larger where there are none. */
  private static double[] span(DuctSetup setup) {
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    for (var solid : setup.domain().solids()) {
      for (double x : solid.x()) {
        from = Math.min(from, x);
        to = Math.max(to, x);
      }
    }
    return new double[] {from, to};
  }

  /** Shares of the stages, of total pressure between the stations, from static pressures there. */
  private static Stages stages(
      DuctSection duct, GapColumns columns, double upstream, double downstream) {
    return new Stages(
        columns,
        duct.gap(),
        upstream + columns.kineticHead(columns.at(duct.upstream())),
        downstream + columns.kineticHead(columns.at(duct.downstream())));
  }

  /**
   * Pressure won back from the throat on, in heads of the mean speed in the gap.
   *
   * @param far pressure over density where the leak goes
   */
  private static void recovery(
      Map<Figure, Double> f, GapColumns columns, double far, double speed) {
    double throat = Double.POSITIVE_INFINITY;
    for (int i = columns.first; i <= columns.last; i++) {
      throat = Math.min(throat, columns.meanPressure(i));
    }
    double head = 0.5 * speed * speed;
    if (head > 0) {
      f.put(Figure.PRESSURE_RECOVERY, (far - throat) / head);
    }
  }

  private static void coefficients(Map<Figure, Double> f, double leak, double drive, double h) {
    if (drive != 0) {
      double jet = Math.signum(drive) * Math.sqrt(2 * Math.abs(drive));
      f.put(Figure.DISCHARGE_COEFFICIENT, leak / (h * jet));
      f.put(Figure.EFFECTIVE_GAP, leak / jet);
    }
  }

  private static Mesh mesh(FlowSolution flow) {
    return flow.problem().geometry().mesh;
  }

  private static int patches(FlowSolution flow) {
    int most = Patch.FIRST_SOLID;
    for (int p : mesh(flow).bPatch) {
      most = Math.max(most, p + 1);
    }
    return most;
  }

  private static double flowOut(FlowSolution flow, int patch) {
    Mesh mesh = mesh(flow);
    double out = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == patch) {
        out += flow.state().boundaryFlux[b];
      }
    }
    return out;
  }

  /** Pressure and shear on solids below a height, and the moment about a point. */
  private static void forces(
      Map<Figure, Double> f,
      FlowSolution flow,
      double rho,
      boolean[] patch,
      double referencePressure,
      double xm,
      double ym) {
    Mesh mesh = mesh(flow);
    double px = 0;
    double py = 0;
    double sx = 0;
    double sy = 0;
    double moment = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      int k = mesh.bPatch[b];
      if (k >= patch.length || !patch[k]) {
        continue;
      }
      // a face that reaches across the height counts with its part below
      double half = 0.5 * Math.abs(mesh.bnx[b]);
      double bottom = mesh.by[b] - half;
      double share = mesh.by[b] + half <= ym ? 1 : bottom < ym ? 0.5 * (ym - bottom) / half : 0;
      if (share == 0) {
        continue;
      }
      double y = share < 1 ? 0.5 * (bottom + ym) : mesh.by[b];
      double p = flow.boundaryPressure()[b] - referencePressure;
      double fpx = share * rho * p * mesh.bnx[b];
      double fpy = share * rho * p * mesh.bny[b];
      double fsx = share * rho * flow.shearX()[b];
      double fsy = share * rho * flow.shearY()[b];
      px += fpx;
      py += fpy;
      sx += fsx;
      sy += fsy;
      moment += (mesh.bx[b] - xm) * (fpy + fsy) - (y - ym) * (fpx + fsx);
    }
    f.put(Figure.LIP_PRESSURE_FORCE_X, px);
    f.put(Figure.LIP_PRESSURE_FORCE_Y, py);
    f.put(Figure.LIP_SHEAR_FORCE_X, sx);
    f.put(Figure.LIP_SHEAR_FORCE_Y, sy);
    f.put(Figure.LIP_FORCE_X, px + sx);
    f.put(Figure.LIP_FORCE_Y, py + sy);
    f.put(Figure.LIP_MOMENT, moment);
  }

  private static void ground(
      Map<Figure, Double> f,
      FlowSolution flow,
      double rho,
      double from,
      double to,
      double speed,
      double spanwiseSpeed) {
    Mesh mesh = mesh(flow);
    double drag = 0;
    double across = 0;
    for (int b = 0; b < mesh.boundaryFaces; b++) {
      if (mesh.bPatch[b] == Patch.BOTTOM && mesh.bx[b] > from && mesh.bx[b] < to) {
        drag += rho * flow.shearX()[b];
        across += rho * flow.shearW()[b];
      }
    }
    f.put(Figure.GROUND_DRAG, drag);
    f.put(Figure.GROUND_DRAG_SPANWISE, across);
    f.put(Figure.GROUND_POWER, -(drag * speed + across * spanwiseSpeed));
  }

  private static GridRun run(FlowSolution flow, RawFigures figures, double leak, double spread) {
    var scales = flow.problem().scales();
    double mass = flow.outcome().massResidual();
    if (leak != 0 && mass < Double.MAX_VALUE) {
      mass =
          Math.min(Double.MAX_VALUE, mass * scales.length() * scales.velocity() / Math.abs(leak));
    }
    return new GridRun(
        mesh(flow).cells,
        flow.outcome().iterations(),
        flow.outcome().status(),
        mass,
        flow.outcome().momentumResidual(),
        figures,
        spread,
        flow.outcome().termination());
  }
}
