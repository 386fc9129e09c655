package hemline.validation.run;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.MountEdge;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.Estimates;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.validation.reference.ExpectedFigure;
import hemline.validation.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What practice says about seals, tried on one small machine: an invented cart with 3.0 m of seal
 * and a fan that gives 1000 Pa at no flow, 0.23 m³/s at no pressure, and p = p₀ (1 − (Q/Q₀)²)
 * between.
 *
 * <p>The leak of an edge is C_d h √(2 Δp/ρ) per metre with C_d from a section solve at the suction
 * the fan then reaches. Downforce is suction times floor area; the small force on the lips is left
 * out.
 */
final class SealPractice implements ComputedCase {
  private static final double SEAL_LENGTH = 3.0;
  private static final double SHUT_OFF = 1000;
  private static final double FREE_FLOW = 0.23;
  private static final FluidState AIR = new FluidState(1.225, 1.4607e-5);

  /** Suction and discharge coefficient are found together in this many rounds. */
  private static final int ROUNDS = 2;

  private static final double FIRST_COEFFICIENT = 0.7;

  private static final double[] FLAT = {0, 0, 8, 0, 8, 10, 0, 10};
  private static final double[] TRAP = {0, 0, 2, 0, 2, 3, 6, 3, 6, 0, 8, 0, 8, 10, 0, 10};

  /** The lower edge of a floor 20 mm thick. */
  private static final double[] FLOOR = {0, 0, 20, 0, 20, 30, 0, 30};

  /** An edge: its outline and its clearance, both in mm. */
  private record Edge(double[] outline, double clearance) {}

  /** Quantities by name: the edge whose suction is over that of the second. */
  private final Map<String, Edge[]> ratios;

  private SealPractice(Map<String, Edge[]> ratios) {
    this.ratios = new TreeMap<>(ratios);
  }

  /** A skirt 2 mm over the ground against no skirt and a floor 40 mm over it. */
  static SealPractice skirt() {
    return new SealPractice(
        Map.of(
            "downforce with skirt over that without",
            new Edge[] {new Edge(FLAT, 2), new Edge(FLOOR, 40)}));
  }

  /** A lip with a pocket against a rectangular one of the same width, at 2 and 4 mm. */
  static SealPractice trap() {
    return new SealPractice(
        Map.of(
            "downforce of trap lip over flat lip at 2 mm",
            new Edge[] {new Edge(TRAP, 2), new Edge(FLAT, 2)},
            "downforce of trap lip over flat lip at 4 mm",
            new Edge[] {new Edge(TRAP, 4), new Edge(FLAT, 4)}));
  }

  @Override
  public Outcome solve(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    List<@Nullable Measured> quantities = new ArrayList<>();
    boolean all = true;
    int done = 0;
    for (ExpectedFigure expected : one.expected()) {
      Edge[] pair = ratios.get(expected.quantity());
      if (pair == null) {
        throw new IllegalArgumentException(
            one.name() + " expects \"" + expected.quantity() + "\", which nothing measures");
      }
      Estimate upper = suction(pair[0], cancel);
      Estimate lower = suction(pair[1], cancel);
      progress.progress((double) ++done / one.expected().size(), one.name());
      if (upper == null || lower == null) {
        all = false;
        quantities.add(null);
      } else {
        quantities.add(
            new Measured(expected.quantity(), "1", ratio(upper, lower), List.of(), false));
      }
    }
    return new Outcome(
        cancel.isCancelled()
            ? SolveStatus.CANCELLED
            : all ? SolveStatus.CONVERGED : SolveStatus.FAILED,
        Closure.SST.key(),
        OptionalDouble.empty(),
        OptionalDouble.of(0),
        quantities,
        List.of());
  }

  private static Estimate ratio(Estimate upper, Estimate lower) {
    double value = upper.value() / lower.value();
    double half =
        value
            * Math.hypot(
                0.5 * (upper.high() - upper.low()) / upper.value(),
                0.5 * (lower.high() - lower.low()) / lower.value());
    return new Estimate(value, half, 0, 0, 0, Estimate.Trend.UNKNOWN);
  }

  /** Suction that the fan reaches over an edge all around the floor; null when nothing settled. */
  private static @Nullable Estimate suction(Edge edge, CancelToken cancel) {
    double clearance = 1e-3 * edge.clearance();
    Estimate coefficient = Estimate.exact(FIRST_COEFFICIENT);
    for (int round = 0; round < ROUNDS; round++) {
      double suction = reached(coefficient.value() * clearance * SEAL_LENGTH);
      coefficient = coefficient(edge, clearance, suction, cancel);
      if (coefficient == null) {
        return null;
      }
    }
    double area = clearance * SEAL_LENGTH;
    double value = reached(coefficient.value() * area);
    double least = reached(coefficient.high() * area);
    double most = reached(Math.max(0, coefficient.low()) * area);
    return new Estimate(value, 0.5 * (most - least), 0, 0, 0, coefficient.trend());
  }

  /** Δp = p₀ (1 − (Q/Q₀)²) with Q = A √(2 Δp/ρ). */
  private static double reached(double area) {
    return SHUT_OFF / (1 + 2 * SHUT_OFF * area * area / (AIR.density() * FREE_FLOW * FREE_FLOW));
  }

  private static @Nullable Estimate coefficient(
      Edge edge, double clearance, double suction, CancelToken cancel) {
    SealSection section =
        new SealSection(
            lip(edge.outline()), clearance, suction, new GroundMotion(0, 0), AIR, List.of());
    GridFamily solved =
        new FamilySolver()
            .solve(
                SolveRequest.cold(section, MeshLevel.COARSE, SectionFamily.GRIDS, Closure.SST),
                cancel,
                ProgressListener.NONE);
    SectionResult result =
        Estimates.result(section, MeshLevel.COARSE, solved, List.of(), List.of(), false);
    return result.figures().get(Figure.DISCHARGE_COEFFICIENT);
  }

  /** A lip from corners x, y, x, y, … in mm. */
  private static LipProfile lip(double[] corners) {
    List<Vertex> vertices = new ArrayList<>();
    for (int k = 0; k < corners.length; k += 2) {
      vertices.add(new Vertex(1e-3 * corners[k], 1e-3 * corners[k + 1]));
    }
    try {
      return LipResolver.resolve(
          new LipDrawing(
              "edge",
              "",
              "",
              true,
              "",
              new DrawnOutline(vertices),
              MountEdge.findAtTop(vertices).orElseThrow(),
              List.of()));
    } catch (InputException e) {
      throw new IllegalStateException("an edge of the invented machine is faulty", e);
    }
  }
}
