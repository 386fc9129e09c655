package hemline.validation.run;

import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowProblem;
import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import hemline.solver.grid.Patch;
import hemline.solver.scheme.Boundary;
import hemline.solver.turbulence.SpalartAllmaras;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntFunction;

/**
 * Turbulent shear layers in a box: they enter with a given profile and spread along x. Density 1.
 *
 * <p>Boundary layers at the splitter end follow the power law u ~ y^1/7, whose momentum thickness
 * is 7/72 of theirs.
 */
final class ShearFlows {
  private static final double LAYERS = 72.0 / 7;
  private static final int[] SIZES = {2, 3, 4};

  /** Of the two streams, whose layer is so thin that coarser grids still grow it 3 % too fast. */
  private static final int[] FINER_SIZES = {3, 4, 6};

  /** Speeds of Delville's streams, m/s, and air. */
  private static final double FAST = 41.54;

  private static final double SLOW = 22.4;
  private static final double AIR = 1.5e-5;

  private ShearFlows() {}

  /**
   * Two streams that meet behind a splitter, as in Delville, Bellin, Garem and Bonnet 1989: 41.54
   * and 22.4 m/s, momentum thicknesses 1.0 and 0.73 mm.
   */
  static FlowCase twoStreams(Closure closure) {
    double above = LAYERS * 1e-3;
    double below = LAYERS * 0.73e-3;
    Box box =
        new Box(
            closure,
            AIR,
            n -> new GridLines(grown(1.2, 20 * n, 2), both(0.3, 16 * n, 3.5)),
            new Entry(
                y -> y > 0 ? FAST * layer(y / above) : SLOW * layer(-y / below),
                Double.NEGATIVE_INFINITY,
                0.003 * FAST),
            Boundary.SLIP,
            Boundary.SLIP,
            new FlowProblem.Scales(0.03, FAST - SLOW, 0.5 * FAST * FAST));
    return flowCase(
        FINER_SIZES,
        box,
        Map.of(
            "growth of vorticity thickness",
            own(f -> Widths.growth(f, 0.6, 1.05, u -> Widths.vorticity(u, FAST - SLOW)))),
        (FAST - SLOW) * 0.03 / AIR);
  }

  /**
   * One stream beside still air, behind a boundary layer of Re_theta 1050; lengths in its momentum
   * thickness, speeds in that of the stream.
   */
  static FlowCase oneStream(Closure closure) {
    Box box =
        new Box(
            closure,
            1 / 1050.0,
            n ->
                new GridLines(
                    grown(1100, 20 * n, 3.5),
                    joined(reversed(grown(400, 16 * n, 4)), grown(250, 16 * n, 4))),
            new Entry(y -> y > 0 ? layer(y / LAYERS) : 0, 0, 0.003),
            Boundary.OPEN,
            Boundary.SLIP,
            new FlowProblem.Scales(30, 1, 0.5));
    return flowCase(
        SIZES,
        box,
        Map.of(
            "growth of width",
            own(f -> Widths.growth(f, 300, 1000, u -> Widths.between(u, 0.1, 0.9)))),
        30 * 1050);
  }

  /** A jet of height 1 and speed 1 along a wall in still air, Re 1e4. */
  static FlowCase wallJet(Closure closure) {
    Box box =
        new Box(
            closure,
            1e-4,
            n -> new GridLines(grown(120, 12 * n, 3), grown(40, 20 * n, 5.5)),
            new Entry(y -> y < 1 ? 1 : 0, 0, 0.01),
            Boundary.WALL,
            Boundary.OPEN,
            new FlowProblem.Scales(1, 1, 0.5));
    return flowCase(
        SIZES,
        box,
        Map.of(
            "growth of half width",
            own(f -> Widths.growth(f, 40, 100, Widths::half)),
            "growth of the distance of the maximum",
            own(f -> Widths.growth(f, 40, 100, Widths::peak)),
            "friction over the measured law at 70",
            own(f -> Widths.friction(f, 70))),
        1e4);
  }

  /**
   * What enters a box.
   *
   * @param profile speed along x by height
   * @param from below it is a wall without shear; the profile's zeros are as well
   * @param turbulence speed of the entering fluctuations, m/s
   */
  private record Entry(DoubleUnaryOperator profile, double from, double turbulence) {}

  /**
   * What a box holds.
   *
   * @param entry what enters at the left end
   * @param bottom kind of the lower side
   * @param top kind of the upper side
   */
  private record Box(
      Closure closure,
      double viscosity,
      IntFunction<GridLines> lines,
      Entry entry,
      byte bottom,
      byte top,
      FlowProblem.Scales scales) {

    FlowProblem problem(int n, Closure closure) {
      Mesh mesh =
          MeshBuilder.build(
              lines.apply(n), List.of(), Set.of(Patch.LEFT, Patch.RIGHT, Patch.BOTTOM, Patch.TOP));
      Boundary boundary = new Boundary(mesh);
      for (int b = 0; b < mesh.boundaryFaces; b++) {
        switch (mesh.bPatch[b]) {
          case Patch.LEFT -> {
            double half = 0.5 * Math.abs(mesh.bnx[b]);
            double u = mean(mesh.by[b] - half, mesh.by[b] + half);
            boundary.kind[b] = u > 0 ? Boundary.VELOCITY : Boundary.SLIP;
            boundary.u[b] = u;
          }
          case Patch.RIGHT -> boundary.kind[b] = Boundary.OPEN;
          case Patch.BOTTOM -> boundary.kind[b] = bottom;
          default -> boundary.kind[b] = top;
        }
      }
      return Problems.turbulent(
          mesh,
          boundary,
          viscosity,
          closure,
          new FlowProblem.InflowTurbulence(
              1.5 * entry.turbulence() * entry.turbulence(),
              viscosity,
              SpalartAllmaras.INFLOW_RATIO * viscosity),
          scales);
    }

    /** Mean of the profile over a face. */
    private double mean(double low, double high) {
      int parts = 64;
      double sum = 0;
      for (int k = 0; k < parts; k++) {
        sum += entry.profile().applyAsDouble(low + (high - low) * (k + 0.5) / parts);
      }
      return sum / parts;
    }
  }

  private static FlowCase flowCase(
      int[] sizes, Box box, Map<String, FlowCase.Own> own, double reynolds) {
    return new FlowCase(
        sizes,
        n -> box.problem(n, box.closure),
        0,
        own,
        OptionalDouble.of(reynolds),
        OptionalDouble.of(0),
        FlowCase.GROWING,
        n -> box.problem(n, box.closure.second()));
  }

  private static FlowCase.Own own(java.util.function.ToDoubleFunction<FlowSolution> value) {
    return new FlowCase.Own("1", false, value);
  }

  /** Speed in a boundary layer over that outside. */
  private static double layer(double share) {
    return Math.pow(Math.min(1, share), 1.0 / 7);
  }

  /** Lines from 0 on, the first intervals the shortest. */
  private static double[] grown(double length, int cells, double stretch) {
    double[] x = new double[cells + 1];
    for (int i = 0; i <= cells; i++) {
      x[i] = length * Math.sinh(stretch * i / cells) / Math.sinh(stretch);
    }
    x[cells] = length;
    return x;
  }

  private static double[] both(double half, int cells, double stretch) {
    double[] up = grown(half, cells, stretch);
    return joined(reversed(up), up);
  }

  private static double[] reversed(double[] lines) {
    double[] y = new double[lines.length];
    for (int j = 0; j < y.length; j++) {
      y[j] = -lines[lines.length - 1 - j];
    }
    return y;
  }

  /** Two runs of lines that share one. */
  private static double[] joined(double[] first, double[] then) {
    double[] all = java.util.Arrays.copyOf(first, first.length + then.length - 1);
    System.arraycopy(then, 1, all, first.length, then.length - 1);
    return all;
  }
}
