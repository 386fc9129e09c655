package hemline.solver.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.SectionSetup;
import hemline.solver.grid.GridLines;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Figures of lips whose flow is written down, against what follows from it by hand. */
class SealFiguresTest {
  private static final double GAP = 2e-3;
  private static final double SUCTION = 600;

  /** Width 8 mm, mount 10 mm above the lowest point. */
  private static final SealSection FLAT = Lips.section(Lips.flat(8), 2, SUCTION, 3, 0.5);

  private static final double RHO = FLAT.fluid().density();
  private static final double WIDTH = 8e-3;
  private static final double MOUNT = 12e-3;

  /** Lines that meet lip and gap; the height of the mount lies between two of them. */
  private static MadeFlow flow(SealSection section) {
    SectionSetup setup = new SectionSetup(section);
    double top = setup.domain().yMax();
    double[] y = new double[41];
    for (int j = 0; j <= 40; j++) {
      y[j] = j <= 8 ? j * GAP / 8 : GAP + (top - GAP) * (j - 8) / 32;
    }
    return new MadeFlow(
        setup.problem(
            new GridLines(MadeFlow.even(setup.domain().xMin(), setup.domain().xMax(), 124), y),
            Closure.LAMINAR));
  }

  private static GridRun run(SealSection section, MadeFlow flow) {
    return SectionMeter.measure(new SectionSetup(section), flow.settled());
  }

  private static Map<Figure, Double> figures(MadeFlow flow) {
    return run(FLAT, flow).figures().scalars();
  }

  /** Air that leaves over the whole height of the plenum side, q = 0.6 h U_j. */
  @Test
  void leakAndItsCoefficients() {
    double drive = SUCTION / RHO;
    double jet = Math.sqrt(2 * drive);
    double q = 0.6 * GAP * jet;
    MadeFlow flow = flow(FLAT);
    double height = flow.mesh.lines.y()[flow.mesh.lines.ny()];
    // ½ U_j² below the plenum under the lip, in one column only
    flow.velocity((x, y) -> q / height, (x, y) -> 0)
        .pressure((x, y) -> x > 5e-3 && x < 5.5e-3 ? -1.3 * drive : -0.9 * drive);
    GridRun run = run(FLAT, flow);
    Map<Figure, Double> f = run.figures().scalars();
    assertThat(f.get(Figure.LEAK_FLOW)).isCloseTo(q, within(1e-15));
    assertThat(f.get(Figure.DISCHARGE_COEFFICIENT)).isCloseTo(0.6, within(1e-12));
    assertThat(f.get(Figure.EFFECTIVE_GAP)).isCloseTo(0.6 * GAP, within(1e-15));
    assertThat(f.get(Figure.PRESSURE_DROP)).isEqualTo(SUCTION);
    // 0.3 Δp won back over ½ρ(q/h)² = 0.36 Δp
    assertThat(f.get(Figure.PRESSURE_RECOVERY)).isCloseTo(0.3 / 0.36, within(1e-12));
    assertThat(run.figures().stageShares()).containsExactly(1.0);
    assertThat(run.figures().carryOver()).isEmpty();
    assertThat(run.massResidual()).isCloseTo(MadeFlow.MASS_RESIDUAL * GAP * jet / q, within(1e-18));
  }

  /** p = a + b x + c y on a rectangle: trapezia of pressure, moments of trapezia. */
  @Test
  void forceAndMomentOfALinearPressureField() {
    double a = -300 / RHO;
    double b = -20e3 / RHO;
    double c = 7e3 / RHO;
    Map<Figure, Double> f = figures(flow(FLAT).pressure((x, y) -> a + b * x + c * y));
    double tall = MOUNT - GAP;
    double fx = -RHO * b * WIDTH * tall;
    double fy = RHO * WIDTH * (a + b * WIDTH / 2 + c * GAP);
    assertThat(f.get(Figure.LIP_PRESSURE_FORCE_X)).isCloseTo(fx, within(1e-9));
    assertThat(f.get(Figure.LIP_PRESSURE_FORCE_Y)).isCloseTo(fy, within(1e-9));
    // below: the slope b about the middle of the bottom, RHO b w³/12; sides: both differ by b w
    double moment = RHO * b * Math.pow(WIDTH, 3) / 12 + fx * tall / 2;
    assertThat(f.get(Figure.LIP_MOMENT)).isCloseTo(moment, within(1e-3 * Math.abs(moment)));
  }

  /** The skirt above the mount is no part of the lip. */
  @Test
  void shearCountsUpToTheMount() {
    Map<Figure, Double> f = figures(flow(FLAT).shear((x, y) -> 0.4, (x, y) -> 0.2, (x, y) -> -0.6));
    double wetted = WIDTH + 2 * (MOUNT - GAP);
    assertThat(f.get(Figure.LIP_SHEAR_FORCE_X)).isCloseTo(RHO * 0.4 * wetted, within(1e-12));
    assertThat(f.get(Figure.LIP_SHEAR_FORCE_Y)).isCloseTo(RHO * 0.2 * wetted, within(1e-12));
    double tall = MOUNT - GAP;
    assertThat(f.get(Figure.LIP_MOMENT))
        .isCloseTo(RHO * 0.4 * (WIDTH * tall + tall * tall), within(1e-12));
    assertThat(f.get(Figure.GROUND_DRAG)).isCloseTo(RHO * 0.4 * WIDTH, within(1e-12));
    assertThat(f.get(Figure.GROUND_DRAG_SPANWISE)).isCloseTo(-RHO * 0.6 * WIDTH, within(1e-12));
    assertThat(f.get(Figure.GROUND_POWER))
        .isCloseTo(-RHO * WIDTH * (0.4 * 3 - 0.6 * 0.5), within(1e-12));
  }

  /** A part that hangs free of the body belongs to the lip, a bump on the ground does not. */
  @Test
  void detachedPartsCountAndBumpsDoNot() {
    double[] body = {0, 0, 8, 0, 8, 10, 0, 10};
    double[] free = {-3, 1, -1, 1, -1, 2, -3, 2};
    SealSection one = Lips.section(Lips.lip("one", body), 2, SUCTION, 0, 0);
    SealSection two = Lips.section(Lips.lip("two", body, free), 2, SUCTION, 0, 0);
    SealSection bump = Lips.withBumps(one, new double[] {2, 0, 4, 0, 4, 0.5, 2, 0.5});
    MadeFlow.Field stress = (x, y) -> 0.4;
    double[] force = new double[3];
    int k = 0;
    for (SealSection section : new SealSection[] {one, two, bump}) {
      Map<Figure, Double> f =
          run(section, flow(section).shear(stress, (x, y) -> 0, (x, y) -> 0)).figures().scalars();
      force[k++] = f.get(Figure.LIP_SHEAR_FORCE_X);
    }
    assertThat(force[1] - force[0]).isCloseTo(RHO * 0.4 * 6e-3, within(1e-9));
    assertThat(force[2]).isCloseTo(force[0], within(1e-12));
  }

  /** Eddies count below the mount and within the width of the lip. */
  @Test
  void trappedVortexUnderTheLip() {
    SealSection pocket =
        Lips.section(
            Lips.lip("pocket", new double[] {0, 0, 2, 0, 2, 4, 6, 4, 6, 0, 8, 0, 8, 10, 0, 10}),
            2,
            SUCTION,
            0,
            0);
    double q = 0.03;
    for (double[] at :
        new double[][] {{4.1e-3, 3.9e-3, 1}, {9.1e-3, 3.9e-3, 0}, {-1e-3, 4e-3, 0}}) {
      MadeFlow flow = flow(pocket);
      double height = flow.mesh.lines.y()[flow.mesh.lines.ny()];
      flow.velocity((x, y) -> q / height, (x, y) -> 0)
          .streamfunction(
              (x, y) -> 1.25 * q - 900 * ((x - at[0]) * (x - at[0]) + (y - at[1]) * (y - at[1])));
      var vortices = run(pocket, flow).figures().vortices();
      assertThat(vortices).hasSize((int) at[2]);
      if (at[2] > 0) {
        assertThat(vortices.get(0).strength()).isCloseTo(0.25, within(1e-9));
        assertThat(vortices.get(0).x()).isCloseTo(at[0], within(1e-12));
        assertThat(vortices.get(0).y()).isCloseTo(at[1], within(1e-12));
      }
    }
  }

  /** Without suction there is no reference speed; the leak is the ground's. */
  @Test
  void withoutSuctionThereIsNoCoefficient() {
    SealSection still = Lips.section(Lips.flat(8), 2, 0, 3, 0);
    MadeFlow flow = flow(still).velocity((x, y) -> 0.2, (x, y) -> 0);
    Map<Figure, Double> f = run(still, flow).figures().scalars();
    assertThat(f).doesNotContainKeys(Figure.DISCHARGE_COEFFICIENT, Figure.EFFECTIVE_GAP);
    assertThat(f.get(Figure.LEAK_FLOW))
        .isCloseTo(0.2 * flow.mesh.lines.y()[flow.mesh.lines.ny()], within(1e-15));
    // blown instead of sucked, the leak runs out and its coefficient stays positive
    SealSection blown = Lips.section(Lips.flat(8), 2, -SUCTION, 0, 0);
    MadeFlow out = flow(blown).velocity((x, y) -> -0.2, (x, y) -> 0);
    assertThat(run(blown, out).figures().scalars().get(Figure.EFFECTIVE_GAP))
        .isCloseTo(
            0.2 * out.mesh.lines.y()[out.mesh.lines.ny()] / Math.sqrt(2 * SUCTION / RHO),
            within(1e-15));
    // what is won back from the throat on is won back towards ambient
    double speed = 0.2 * out.mesh.lines.y()[out.mesh.lines.ny()] / GAP;
    double drive = SUCTION / RHO;
    out.pressure((x, y) -> x > 5e-3 && x < 5.5e-3 ? -0.3 * drive : 0.5 * drive);
    assertThat(run(blown, out).figures().scalars().get(Figure.PRESSURE_RECOVERY))
        .isCloseTo(0.3 * drive / (0.5 * speed * speed), within(1e-12));
  }

  @Test
  void aFailedSolveHasNoFigures() {
    GridRun run =
        SectionMeter.measure(new SectionSetup(FLAT), flow(FLAT).ended(SolveStatus.FAILED, 1, 1));
    assertThat(run.figures().scalars()).isEmpty();
    GridRun unsteady =
        SectionMeter.measure(
            new SectionSetup(FLAT), flow(FLAT).ended(SolveStatus.UNSTEADY, 1, 0.004));
    assertThat(unsteady.leakSpread()).isEqualTo(0.004);
    assertThat(unsteady.figures().scalars()).doesNotContainKey(Figure.PRESSURE_RECOVERY);
  }
}
