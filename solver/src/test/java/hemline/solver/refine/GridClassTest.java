package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.profile.LipProfile;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.grid.MeshLevel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GridClassTest {
  private static SealSection at(LipProfile lip, double gap) {
    return Lips.section(lip, gap, 600, 0, 0);
  }

  @ParameterizedTest
  @CsvSource({
    "plain-flat-8, UPRIGHT",
    "labyrinth-five-teeth, UPRIGHT",
    "undercut-hook, UPRIGHT",
    "chamfered-flat, SLANTED",
    "teeth-into-leak, SLANTED",
    "round-nose, ROUND"
  })
  void goesByTheWorstWall(String file, GridClass kind) {
    assertThat(GridClass.of(at(Lips.shipped(file), 2))).isEqualTo(kind);
  }

  @Test
  void aSlantedPartBesideAnUprightLipCounts() {
    double[] body = {0, 0, 2, 0, 2, 10, 0, 10};
    double[] vane = {5, 1, 7, 0.5, 7, 3, 5, 3};
    assertThat(GridClass.of(at(Lips.lip("two bodies", body, vane), 2)))
        .isEqualTo(GridClass.SLANTED);
  }

  /**
   * 0.7 % at a gap of up to 0.2 widths, 1.9 % from 0.35 on, evenly between; twice on coarse grids.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.007", "1.6, 0.007", "2.2, 0.013", "2.8, 0.019", "6, 0.019"})
  void theLeastBandGrowsWithTheGap(double gap, double width) {
    SealSection section = at(Lips.flat(8), gap);
    assertThat(GridClass.leastWidth(section, MeshLevel.MEDIUM, Closure.SST))
        .isCloseTo(width, within(1e-12));
    assertThat(GridClass.leastWidth(section, MeshLevel.FINE, Closure.SST))
        .isCloseTo(width, within(1e-12));
    assertThat(GridClass.leastWidth(section, MeshLevel.COARSE, Closure.SA))
        .isCloseTo(2 * width, within(1e-12));
    assertThat(GridClass.leastWidth(section, MeshLevel.COARSE, Closure.LAMINAR)).isZero();
  }
}
