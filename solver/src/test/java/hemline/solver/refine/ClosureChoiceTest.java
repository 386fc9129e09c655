package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Wall;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Laminar below a gap Reynolds number of 1000; from there on the one-equation closure where edges
 * part the flow, SST in plain channels. Nothing is solved here.
 */
class ClosureChoiceTest {
  private static final double GAP = 2e-3;

  private static CancelToken cancelled() {
    CancelToken token = new CancelToken();
    token.cancel();
    return token;
  }

  private static Closure chosen(SealSection section, Closure asked) {
    return new FamilySolver()
        .solve(
            SolveRequest.cold(section, MeshLevel.COARSE, 3, asked),
            cancelled(),
            ProgressListener.NONE)
        .closure();
  }

  private static Closure chosen(DuctSection section, Closure asked) {
    return new FamilySolver()
        .solve(
            SolveRequest.cold(section, MeshLevel.COARSE, 3, asked),
            cancelled(),
            ProgressListener.NONE)
        .closure();
  }

  private static SealSection section(double suction, double ground, double span) {
    return Lips.section(Lips.flat(8), 1e3 * GAP, suction, ground, span);
  }

  /** A jet of coefficient 0.7, whichever way it blows. */
  @ParameterizedTest
  @ValueSource(doubles = {1, -1})
  void bySuction(double sign) {
    FluidState air = section(1, 0, 0).fluid();
    double speed = 1000 * air.kinematicViscosity() / GAP / 0.7;
    double suction = 0.5 * air.density() * speed * speed;
    assertThat(chosen(section(sign * 0.99 * suction, 0, 0), Closure.AUTO))
        .isEqualTo(Closure.LAMINAR);
    assertThat(chosen(section(sign * 1.01 * suction, 0, 0), Closure.AUTO)).isEqualTo(Closure.SA);
    assertThat(chosen(section(0.5 * suction, 0, 0), Closure.SST)).isEqualTo(Closure.SST);
    assertThat(chosen(section(2 * suction, 0, 0), Closure.LAMINAR)).isEqualTo(Closure.LAMINAR);
  }

  /** Half the speed of the ground, that along the seal included. */
  @Test
  void byTheGround() {
    double speed = 2 * 1000 * section(1, 0, 0).fluid().kinematicViscosity() / GAP;
    assertThat(chosen(section(1, 0.99 * speed, 0), Closure.AUTO)).isEqualTo(Closure.LAMINAR);
    assertThat(chosen(section(1, -1.01 * speed, 0), Closure.AUTO)).isEqualTo(Closure.SA);
    assertThat(chosen(section(1, 0, 1.01 * speed), Closure.AUTO)).isEqualTo(Closure.SA);
    assertThat(chosen(section(1, 0.72 * speed, 0.72 * speed), Closure.AUTO)).isEqualTo(Closure.SA);
    assertThat(chosen(section(1, 0.7 * speed, 0.7 * speed), Closure.AUTO))
        .isEqualTo(Closure.LAMINAR);
  }

  private static DuctSection duct(double leak, double ground, double ceiling) {
    return new DuctSection(
        "duct",
        new DuctSection.Channel(0, 10, 1),
        List.of(),
        new FluidState(1, 1e-3),
        new DuctSection.Inflow(new Drive.LeakFlow(leak), Inlet.DEVELOPED),
        new DuctSection.Walls(new Wall(ground, 0, false), new Wall(0, ceiling, false), null),
        new DuctSection.Measures(null, 1),
        "auto");
  }

  private static DuctSection withTooth(DuctSection d) {
    Outline tooth =
        new Outline(
            List.of(new Vertex(4, 0.5), new Vertex(5, 0.5), new Vertex(5, 1), new Vertex(4, 1)));
    return new DuctSection(
        d.name(),
        d.channel(),
        List.of(tooth),
        d.fluid(),
        new DuctSection.Inflow(d.drive(), d.inflow().inlet()),
        new DuctSection.Walls(d.walls().lower(), d.walls().upper(), null),
        new DuctSection.Measures(null, d.gap()),
        d.closure());
  }

  /** The flow over the viscosity, or half of a wall's speed times the gap. */
  @Test
  void ofDucts() {
    assertThat(chosen(duct(0.99, 0, 0), Closure.AUTO)).isEqualTo(Closure.LAMINAR);
    assertThat(chosen(duct(-1, 0, 0), Closure.AUTO)).isEqualTo(Closure.SST);
    assertThat(chosen(duct(0.1, 1.99, -1.99), Closure.AUTO)).isEqualTo(Closure.LAMINAR);
    assertThat(chosen(duct(0.1, -2.01, 0), Closure.AUTO)).isEqualTo(Closure.SST);
    assertThat(chosen(duct(0.1, 0, 2.01), Closure.AUTO)).isEqualTo(Closure.SST);
    assertThat(chosen(duct(0.1, 0, 0), Closure.SA)).isEqualTo(Closure.SA);
    assertThat(chosen(withTooth(duct(1, 0, 0)), Closure.AUTO)).isEqualTo(Closure.SA);
    assertThat(chosen(withTooth(duct(0.99, 0, 0)), Closure.AUTO)).isEqualTo(Closure.LAMINAR);
  }
}
