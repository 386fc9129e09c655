package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.RandomLips;
import hemline.solver.grid.MeshLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Lips with features far smaller than the cells near them: each once left no usable flow. */
class SmallFeaturesTest {
  private static GridRun run(LipProfile lip) {
    return new FamilySolver()
        .solve(
            SolveRequest.cold(Lips.section(lip, 2, 600, 0, 0), MeshLevel.COARSE, 1, Closure.AUTO),
            new CancelToken(),
            ProgressListener.NONE)
        .runs()
        .get(0);
  }

  private static Arguments named(String name, double... outline) {
    return Arguments.of(Named.of(name, Lips.lip(name, outline)));
  }

  static Stream<Arguments> fine() {
    double s = 5e-6;
    double t = 5e-4;
    return Stream.of(
        named("5 nm off the ambient corner", 0, s, s, s, s, 0, 8, 0, 8, 10, 0, 10),
        named("5 nm off the plenum corner", 0, 0, 8 - s, 0, 8 - s, s, 8, s, 8, 10, 0, 10),
        named("5 nm step in the land", 0, 0, 4, 0, 4, s, 8, s, 8, 10, 0, 10),
        named("5 nm step in the side", s, 0, 8, 0, 8, 10, 0, 10, 0, 2, s, 2),
        named("0.5 µm step in the land", 0, t, 4, t, 4, 0, 8, 0, 8, 10, 0, 10));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("fine")
  void detailBelowAllCellsChangesNoFigure(LipProfile lip) {
    assertThat(run(lip).figures()).isEqualTo(run(Lips.flat(8)).figures());
  }

  static Stream<Arguments> small() {
    double s = 0.02;
    List<Arguments> all = new ArrayList<>();
    all.add(named("20 µm off the ambient corner", 0, s, s, s, s, 0, 8, 0, 8, 10, 0, 10));
    all.add(named("20 µm step in the land", 0, s, 4, s, 4, 0, 8, 0, 8, 10, 0, 10));
    all.add(named("0.1 mm step in the land", 0, 0.1, 4, 0.1, 4, 0, 8, 0, 8, 10, 0, 10));
    double t = Math.tan(Math.toRadians(50)) * 3;
    all.add(
        named(
            "teeth at 50 degrees with pockets of 0.2 mm",
            new double[] {
              0, 0, 0.5, 0, 0.5 + t, 3, 0.7 + t, 3, 0.7, 0, 1.2, 0, 1.2 + t, 3, 1.4 + t, 3, 1.4, 0,
              1.9, 0, 1.9 + t, 3, 1.9 + t, 10, 0, 10
            }));
    long[] seeds = {4, 43, 55, 73, 111, 136, 157, 211};
    String[] what = {
      "rounding of 0.16 µm",
      "slit of 24 µm up a slanted land",
      "slit of 0.2 mm all but upright",
      "wedge of a pocket between teeth",
      "slit of 27 µm",
      "slits of 30 µm and 0.28 mm at 45 degrees",
      "slit between teeth at a slant",
      "slit of 62 µm beside a long wall"
    };
    for (int k = 0; k < seeds.length; k++) {
      all.add(Arguments.of(Named.of(what[k], RandomLips.profile(seeds[k]))));
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("small")
  void smallFeatureLeavesAUsableFlow(LipProfile lip) {
    GridRun run = run(lip);
    assertThat(run.status()).isIn(SolveStatus.CONVERGED, SolveStatus.UNSTEADY);
    assertThat(run.figures().scalars().get(Figure.DISCHARGE_COEFFICIENT)).isBetween(0.5, 1.1);
  }
}
