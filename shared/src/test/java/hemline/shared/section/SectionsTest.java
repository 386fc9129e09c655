package hemline.shared.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import hemline.shared.fluid.Air;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.DuctSection.Cavity;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Wall;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Questions check themselves: what cannot be solved cannot be asked. */
class SectionsTest {
  private static final Outline BOX =
      new Outline(
          List.of(
              new Vertex(0, 0), new Vertex(8e-3, 0), new Vertex(8e-3, 1e-2), new Vertex(0, 1e-2)));

  private static LipProfile lip(String name) {
    return new LipProfile(name, "flat", "", BOX, 2, List.of());
  }

  private static SealSection lipAt(double gap, double suction) {
    return new SealSection(
        lip("a"), gap, suction, new GroundMotion(3, -1), Air.STANDARD, List.of(BOX));
  }

  private static DuctSection duct(
      double to, double height, double gap, @Nullable Drive drive, @Nullable Cavity cavity) {
    return new DuctSection(
        "d",
        new DuctSection.Channel(-1, to, height),
        List.of(BOX),
        Air.STANDARD,
        new DuctSection.Inflow(drive, Inlet.UNIFORM),
        new DuctSection.Walls(new Wall(1, 2, false), new Wall(0, 0, true), cavity),
        new DuctSection.Measures(null, gap),
        "auto");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1e-3, Double.NaN, Double.POSITIVE_INFINITY})
  void impossibleGapsOfALip(double gap) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> lipAt(gap, 600))
        .withMessageContaining("gap must be positive, got " + gap + " m");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY})
  void impossibleSuctionsAndSpeeds(double value) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> lipAt(1e-3, value))
        .withMessageContaining("suction");
    assertThatIllegalArgumentException().isThrownBy(() -> new GroundMotion(value, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> new GroundMotion(0, value));
  }

  /** Zero and negative suctions are legal; one thing changes at a time. */
  @Test
  void oneThingChangesAtATime() {
    SealSection s = lipAt(2e-3, -600);
    assertThat(s.withGap(3e-3))
        .isEqualTo(
            new SealSection(s.profile(), 3e-3, -600, s.ground(), Air.STANDARD, List.of(BOX)));
    assertThat(s.withSuction(0))
        .isEqualTo(new SealSection(s.profile(), 2e-3, 0, s.ground(), Air.STANDARD, List.of(BOX)));
    assertThat(s.withProfile(lip("b")))
        .isEqualTo(new SealSection(lip("b"), 2e-3, -600, s.ground(), Air.STANDARD, List.of(BOX)));
    assertThat(s.withGap(3e-3).withGap(2e-3)).isEqualTo(s);
  }

  @Test
  void impossibleDucts() {
    Drive flow = new Drive.LeakFlow(1);
    assertThat(duct(10, 1, 0.5, flow, null).drive()).isEqualTo(flow);
    for (double bad : new double[] {-1, -2, Double.NaN}) {
      assertThatIllegalArgumentException().isThrownBy(() -> duct(bad, 1, 0.5, flow, null));
    }
    for (double bad : new double[] {0, -1, Double.NaN}) {
      assertThatIllegalArgumentException().isThrownBy(() -> duct(10, bad, 0.5, flow, null));
      assertThatIllegalArgumentException().isThrownBy(() -> duct(10, 1, bad, flow, null));
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> duct(10, 1, 0.5, null, null))
        .withMessageContaining("either driven or a closed cavity");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> duct(10, 1, 0.5, flow, new Cavity(0, 0)))
        .withMessageContaining("either driven or a closed cavity");
  }

  @Test
  void ductsWithOtherObstacles() {
    DuctSection d = duct(10, 1, 0.5, new Drive.PressureDrop(5), null);
    DuctSection empty = d.withObstacles(List.of());
    assertThat(empty.obstacles()).isEmpty();
    assertThat(empty.withObstacles(List.of(BOX))).isEqualTo(d);
  }

  /** What may be asked, each bound from both sides. */
  @ParameterizedTest
  @CsvSource({
    "gap, 0, false",
    "gap, 1e-9, true",
    "gap, 1, true",
    "gap, 1.001, false",
    "gap, NaN, false",
    "suction, 0, true",
    "suction, -100000, true",
    "suction, 100000, true",
    "suction, 100001, false",
    "suction, NaN, false",
    "speed, -340, true",
    "speed, 340.1, false",
    "speed, NaN, false"
  })
  void limits(String what, double value, boolean fine) {
    String told =
        switch (what) {
          case "gap" -> SectionLimits.gap(value);
          case "suction" -> SectionLimits.suction(value);
          default -> SectionLimits.speed(value);
        };
    assertThat(told.isEmpty()).as("%s", told).isEqualTo(fine);
    if (!fine) {
      assertThat(told).contains(what).hasSizeGreaterThan(30);
    }
  }
}
