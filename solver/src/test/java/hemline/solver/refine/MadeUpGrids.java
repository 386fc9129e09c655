package hemline.solver.refine;

import hemline.shared.fluid.FluidState;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.RawFigures;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.Lips;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Grid runs with chosen figures, for tests. */
public final class MadeUpGrids {
  /** Cell counts 4 : 9 : 16. */
  public static final int[] CELLS = {400, 900, 1600};

  private MadeUpGrids() {}

  /** A lip 8 mm wide. */
  public static SealSection lip(double gap, double suction, GroundMotion ground, FluidState air) {
    return new SealSection(Lips.flat(8), gap, suction, ground, air, List.of());
  }

  /** A flow at rest in one cell. */
  public static FlowField still() {
    Mesh mesh =
        MeshBuilder.build(new GridLines(new double[] {0, 1}, new double[] {0, 1}), List.of());
    return new FlowField(
        mesh,
        new double[1],
        new double[1],
        new double[1],
        new double[1],
        new double[1],
        new FlowField.Flux(new double[0], new double[4]),
        new double[4]);
  }

  /** A run with only a leak flow. */
  public static GridRun leak(int place, double leakFlow) {
    return run(place, SolveStatus.CONVERGED, figures(leakFlow), 0);
  }

  public static RawFigures figures(double leakFlow) {
    return new RawFigures(Map.of(Figure.LEAK_FLOW, leakFlow), List.of(), List.of(), List.of());
  }

  public static GridRun run(int place, SolveStatus status, RawFigures figures, double spread) {
    return new GridRun(CELLS[place], 100, status, 1e-9, 1e-5, figures, spread);
  }

  public static GridRun failed(int place) {
    return run(
        place, SolveStatus.FAILED, new RawFigures(Map.of(), List.of(), List.of(), List.of()), 0);
  }

  public static GridFamily family(Closure closure, GridRun... runs) {
    FlowField field = still();
    return new GridFamily(closure, Stream.of(runs).map(r -> new GridSolution(r, field)).toList());
  }
}
