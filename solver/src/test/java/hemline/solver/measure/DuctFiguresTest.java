package hemline.solver.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Cavity;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Stations;
import hemline.shared.section.DuctSection.Wall;
import hemline.solver.flow.Closure;
import hemline.solver.flow.DuctSetup;
import hemline.solver.grid.GridLines;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.special.Erf;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures of ducts whose flow is written down, against what follows from it by hand. */
class DuctFiguresTest {
  private static final double RHO = 2;
  private static final double HEIGHT = 3;
  private static final double GAP = 1;
  private static final double SPEED = 1.5;
  private static final double SPAN = 0.5;
  private static final Outline TOOTH = box(0, 1, 1, HEIGHT);
  private static final Outline NEXT = box(4, 1, 5, HEIGHT);

  private static Outline box(double x0, double y0, double x1, double y1) {
    return outline(x0, y0, x1, y0, x1, y1, x0, y1);
  }

  private static Outline outline(double... xy) {
    List<Vertex> v = new ArrayList<>();
    for (int k = 0; k < xy.length; k += 2) {
      v.add(new Vertex(xy[k], xy[k + 1]));
    }
    return new Outline(v);
  }

  private static DuctSection duct(
      @Nullable Cavity cavity, @Nullable Stations stations, Outline... obstacles) {
    return new DuctSection(
        "made",
        new DuctSection.Channel(-4, 12, HEIGHT),
        List.of(obstacles),
        new FluidState(RHO, 0.1),
        new DuctSection.Inflow(
            cavity == null ? new Drive.LeakFlow(2) : null, cavity == null ? Inlet.UNIFORM : null),
        new DuctSection.Walls(new Wall(SPEED, SPAN, false), new Wall(0, 0, false), cavity),
        new DuctSection.Measures(stations, GAP),
        "laminar");
  }

  private static MadeFlow flow(DuctSection duct, int perUnit) {
    return new MadeFlow(
        new DuctSetup(duct)
            .problem(
                new GridLines(
                    MadeFlow.even(-4, 12, 16 * perUnit), MadeFlow.even(0, HEIGHT, 3 * perUnit)),
                Closure.LAMINAR));
  }

  private static GridRun run(DuctSection duct, MadeFlow flow) {
    return SectionMeter.measure(new DuctSetup(duct), flow.settled());
  }

  private static Map<Figure, Double> figures(DuctSection duct, MadeFlow flow) {
    return run(duct, flow).figures().scalars();
  }

  private static double width(double x) {
    return (x > 0 && x < 1) || (x > 4 && x < 5) ? GAP : HEIGHT;
  }

  /**
   * A flow without carry-over between two equal teeth: no loss into a tooth, a Borda–Carnot loss
   * ½ρ(u₁ − u₂)² behind it (Borda 1766, Carnot 1803; as in any handbook of hydraulics). Static
   * pressure behind a tooth rises by ρ u₂ (u₁ − u₂), so that the recovery is 2 h/H (1 − h/H).
   */
  @Test
  void bordaCarnotSequence() {
    double q = 2;
    double loss = 0.5 * (q / GAP - q / HEIGHT) * (q / GAP - q / HEIGHT);
    MadeFlow.Field u = (x, y) -> q / width(x);
    DuctSection duct = duct(null, null, TOOTH, NEXT);
    MadeFlow flow = flow(duct, 8);
    flow.velocity(u, (x, y) -> 0)
        .pressure(
            (x, y) -> 11 - (x > 1 ? loss : 0) - (x > 5 ? loss : 0) - 0.5 * u.at(x, y) * u.at(x, y));
    GridRun run = run(duct, flow);
    Map<Figure, Double> f = run.figures().scalars();

    assertThat(f.get(Figure.LEAK_FLOW)).isCloseTo(q, within(1e-12));
    assertThat(f.get(Figure.PRESSURE_DROP)).isCloseTo(RHO * 2 * loss, within(1e-12));
    double jet = Math.sqrt(2 * 2 * loss);
    assertThat(f.get(Figure.DISCHARGE_COEFFICIENT)).isCloseTo(q / (GAP * jet), within(1e-12));
    assertThat(f.get(Figure.EFFECTIVE_GAP)).isCloseTo(q / jet, within(1e-12));
    double ratio = GAP / HEIGHT;
    assertThat(f.get(Figure.PRESSURE_RECOVERY)).isCloseTo(2 * ratio * (1 - ratio), within(1e-12));
    assertThat(run.figures().stageShares()).hasSize(2);
    assertThat(run.figures().stageShares().get(0)).isCloseTo(0.5, within(1e-12));
    assertThat(run.figures().stageShares().get(1)).isCloseTo(0.5, within(1e-12));
    // the gap is filled evenly at both teeth
    assertThat(run.figures().carryOver()).hasSize(1);
    assertThat(run.figures().carryOver().get(0)).isCloseTo(1, within(1e-12));
  }

  /** Unequal stages: what each of two teeth takes is known, and the leak may run backwards. */
  @ParameterizedTest(name = "leak {0} m²/s")
  @ValueSource(doubles = {2, -2})
  void unequalStages(double q) {
    MadeFlow.Field u = (x, y) -> q / width(x);
    DuctSection duct = duct(null, new Stations(-3, 10), TOOTH, NEXT);
    MadeFlow flow = flow(duct, 8);
    double sign = Math.signum(q);
    flow.velocity(u, (x, y) -> 0)
        .pressure(
            (x, y) ->
                7
                    - sign * (x > 0.5 ? 3 : 0)
                    - sign * (x > 4.5 ? 1 : 0)
                    - 0.5 * u.at(x, y) * u.at(x, y));
    GridRun run = run(duct, flow);
    assertThat(run.figures().stageShares().get(0)).isCloseTo(0.75, within(1e-12));
    assertThat(run.figures().stageShares().get(1)).isCloseTo(0.25, within(1e-12));
    Map<Figure, Double> f = run.figures().scalars();
    assertThat(f.get(Figure.PRESSURE_DROP)).isCloseTo(sign * RHO * 4, within(1e-12));
    assertThat(f.get(Figure.DISCHARGE_COEFFICIENT))
        .isCloseTo(Math.abs(q) / Math.sqrt(8), within(1e-12));
  }

  /**
   * The edge of a jet as wide as the gap that mixes with air at rest above it: u = ½ U (1 − erf(σ
   * (y − h) / x)), the free mixing layer with constant eddy viscosity, σ = 13.5 (Görtler 1942, Z.
   * angew. Math. Mech. 22, 244; Schlichting, Boundary-Layer Theory, chapter on free shear flows;
   * values from memory). What arrives is ∫ ½ u³ dy over the gap's height, here by Simpson's rule.
   */
  @Test
  void carryOverOfASpreadingJet() {
    double speed = 2;
    MadeFlow.Field u =
        (x, y) ->
            x < 1 ? y < GAP ? speed : 0 : 0.5 * speed * (1 - Erf.erf(13.5 * (y - GAP) / (x - 1)));
    DuctSection duct = duct(null, null, TOOTH, NEXT);
    GridRun run = run(duct, flow(duct, 32).velocity(u, (x, y) -> 0).pressure((x, y) -> -x));
    // the first column of the second tooth has its middle half a cell behind the tooth's face
    double at = 4 + 0.5 / 32;
    double sum = 0;
    int n = 2000;
    for (int k = 0; k <= n; k++) {
      double weight = k == 0 || k == n ? 1 : k % 2 == 1 ? 4 : 2;
      double here = u.at(at, (double) k / n * GAP);
      sum += weight * here * here * here / (3 * n);
    }
    double expected = sum / (speed * speed * speed);
    assertThat(expected).isBetween(0.8, 0.95);
    assertThat(run.figures().carryOver()).hasSize(1);
    assertThat(run.figures().carryOver().get(0)).isCloseTo(expected, within(1e-3));
  }

  /**
   * In a linear pressure field the force on a body is minus the gradient times its area, and it
   * acts at the centroid of the area (Archimedes); the moment is about the middle of the obstacles
   * on the ceiling.
   */
  @Test
  void forceAndMomentOfALinearPressureField() {
    double ax = 0.7;
    double ay = -1.9;
    // right angle at (2, 0.5), legs 3 and 1.5: area 2.25, centroid a third along each leg
    Outline triangle = outline(2, 0.5, 5, 0.5, 2, 2);
    DuctSection duct = duct(null, new Stations(-1.9, 8.3), triangle);
    MadeFlow flow = flow(duct, 16).pressure((x, y) -> 4 + ax * x + ay * y);
    Map<Figure, Double> f = figures(duct, flow);
    double area = 2.25;
    double fx = -RHO * ax * area;
    double fy = -RHO * ay * area;
    assertThat(f.get(Figure.LIP_PRESSURE_FORCE_X)).isCloseTo(fx, within(1e-9));
    assertThat(f.get(Figure.LIP_PRESSURE_FORCE_Y)).isCloseTo(fy, within(1e-9));
    assertThat(f.get(Figure.LIP_FORCE_X)).isCloseTo(fx, within(1e-9));
    assertThat(f.get(Figure.LIP_FORCE_Y)).isCloseTo(fy, within(1e-9));
    double moment = (3 - 3.5) * fy - (1 - HEIGHT) * fx;
    assertThat(f.get(Figure.LIP_MOMENT)).isCloseTo(moment, within(2e-3));
    // stations: the mean over the height, along x linear
    assertThat(f.get(Figure.PRESSURE_DROP)).isCloseTo(-RHO * ax * 10.2, within(1e-9));
  }

  /** Pressure counts from that of the downstream station: a constant one leaves no force. */
  @Test
  void constantPressureExertsNoForce() {
    DuctSection duct = duct(null, null, TOOTH);
    Map<Figure, Double> f = figures(duct, flow(duct, 8).pressure((x, y) -> 5));
    assertThat(f.get(Figure.LIP_FORCE_X)).isCloseTo(0, within(1e-12));
    assertThat(f.get(Figure.LIP_FORCE_Y)).isCloseTo(0, within(1e-12));
    assertThat(f.get(Figure.LIP_MOMENT)).isCloseTo(0, within(1e-12));
  }

  /** Stress times length: on the obstacle's three wetted sides, on the ground beneath it. */
  @Test
  void shearForces() {
    DuctSection duct = duct(null, null, TOOTH);
    MadeFlow flow = flow(duct, 8).shear((x, y) -> 0.3, (x, y) -> -0.2, (x, y) -> 0.7);
    Map<Figure, Double> f = figures(duct, flow);
    double wetted = 1 + 2 + 2;
    assertThat(f.get(Figure.LIP_SHEAR_FORCE_X)).isCloseTo(RHO * 0.3 * wetted, within(1e-12));
    assertThat(f.get(Figure.LIP_SHEAR_FORCE_Y)).isCloseTo(-RHO * 0.2 * wetted, within(1e-12));
    assertThat(f.get(Figure.LIP_PRESSURE_FORCE_X)).isZero();
    assertThat(f.get(Figure.LIP_FORCE_X)).isCloseTo(RHO * 0.3 * wetted, within(1e-12));
    assertThat(f.get(Figure.LIP_FORCE_Y)).isCloseTo(-RHO * 0.2 * wetted, within(1e-12));
    // about (0.5, 3): along x at y = 1 on one metre, at y = 2 on average on four
    double moment = RHO * 0.3 * (2 * 1 + 1 * 4);
    assertThat(f.get(Figure.LIP_MOMENT)).isCloseTo(moment, within(1e-12));
    assertThat(f.get(Figure.GROUND_DRAG)).isCloseTo(RHO * 0.3, within(1e-12));
    assertThat(f.get(Figure.GROUND_DRAG_SPANWISE)).isCloseTo(RHO * 0.7, within(1e-12));
    assertThat(f.get(Figure.GROUND_POWER))
        .isCloseTo(-RHO * (0.3 * SPEED + 0.7 * SPAN), within(1e-12));
    assertThat(f).doesNotContainKey(Figure.PRESSURE_RECOVERY);
  }

  /** Without obstacles the ground counts from end to end, and there is no lip. */
  @Test
  void aPlainChannelHasNoLip() {
    DuctSection duct = duct(null, null);
    GridRun run = run(duct, flow(duct, 4).shear((x, y) -> 0.3, (x, y) -> 0, (x, y) -> 0.7));
    assertThat(run.figures().scalars())
        .doesNotContainKeys(Figure.LIP_FORCE_X, Figure.LIP_MOMENT, Figure.PRESSURE_RECOVERY);
    assertThat(run.figures().scalars().get(Figure.GROUND_DRAG))
        .isCloseTo(RHO * 0.3 * 16, within(1e-11));
    assertThat(run.figures().stageShares()).isEmpty();
  }

  /**
   * A paraboloid of the streamfunction: its top is found wherever it lies between the corners. In a
   * channel the strength counts beyond the leak and in units of it.
   */
  @Test
  void trappedVortexOfAKnownStreamfunction() {
    double q = 2;
    DuctSection duct = duct(null, null, TOOTH, NEXT);
    MadeFlow flow =
        flow(duct, 8)
            .velocity((x, y) -> q / HEIGHT, (x, y) -> 0)
            .streamfunction((x, y) -> 2.6 - 0.5 * sq(x - 2.53) - 0.7 * sq(y - 2.11));
    var vortices = run(duct, flow).figures().vortices();
    assertThat(vortices).hasSize(1);
    assertThat(vortices.get(0).strength()).isCloseTo(0.3, within(1e-12));
    assertThat(vortices.get(0).x()).isCloseTo(2.53, within(1e-12));
    assertThat(vortices.get(0).y()).isCloseTo(2.11, within(1e-12));
    // outside of the stretch of the obstacles none counts
    MadeFlow beside =
        flow(duct, 8)
            .velocity((x, y) -> q / HEIGHT, (x, y) -> 0)
            .streamfunction((x, y) -> 2.6 - 0.5 * sq(x - 7.53) - 0.7 * sq(y - 2.11));
    assertThat(run(duct, beside).figures().vortices()).isEmpty();
  }

  private static double sq(double x) {
    return x * x;
  }

  /** In a cavity the unit is the fastest wall's speed times the reference gap. */
  @Test
  void vortexOfACavity() {
    DuctSection cavity = duct(new Cavity(-3, 2.5), null);
    MadeFlow flow =
        flow(cavity, 8).streamfunction((x, y) -> -0.6 + 0.05 * sq(x - 2.53) + sq(y - 1.4));
    GridRun run = run(cavity, flow);
    assertThat(run.figures().vortices()).hasSize(1);
    assertThat(run.figures().vortices().get(0).strength()).isCloseTo(0.6 / 3, within(1e-12));
    assertThat(run.figures().scalars())
        .doesNotContainKeys(Figure.LEAK_FLOW, Figure.PRESSURE_DROP, Figure.DISCHARGE_COEFFICIENT);
  }

  /** Half the spread of the pressure drop, relative, is that of the leak. */
  @Test
  void tellsHowTheSolveEnded() {
    DuctSection duct = duct(null, null);
    MadeFlow made =
        flow(duct, 4).velocity((x, y) -> -1, (x, y) -> 0).pressure((x, y) -> 3 - 0.1 * x);
    DuctSetup setup = new DuctSetup(duct);
    GridRun run = SectionMeter.measure(setup, made.ended(SolveStatus.UNSTEADY, -0.8, 0.02));
    assertThat(run.status()).isEqualTo(SolveStatus.UNSTEADY);
    assertThat(run.cells()).isEqualTo(64 * 12);
    assertThat(run.iterations()).isEqualTo(70);
    assertThat(run.leakSpread()).isCloseTo(0.025 * 3, within(1e-12));
    assertThat(run.momentumResidual()).isEqualTo(MadeFlow.MOMENTUM_RESIDUAL);
    // the largest defect of a cell over the leak of 3 m²/s: given over gap times velocity, 1 m · 2
    // m/s
    assertThat(run.massResidual()).isCloseTo(MadeFlow.MASS_RESIDUAL * 2 / 3, within(1e-20));

    GridRun failed = SectionMeter.measure(setup, made.ended(SolveStatus.FAILED, 1, 1));
    assertThat(failed.status()).isEqualTo(SolveStatus.FAILED);
    assertThat(failed.figures().scalars()).isEmpty();
    assertThat(failed.leakSpread()).isZero();
  }
}
