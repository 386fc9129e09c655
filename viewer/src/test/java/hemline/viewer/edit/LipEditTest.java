package hemline.viewer.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Arc;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.MountEdge;
import hemline.shared.profile.Starter;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class LipEditTest {
  private static final double EXACT = 1e-12;
  private final LipDrawing flat = new Starter.Flat(8e-3, 10e-3).drawing();

  @Test
  void aVertexAddedToAnArcKeepsTheCircle() {
    LipDrawing bent = LipEdit.bend(flat, new Corner(0, 0), 0.4);
    Arc whole = Arc.of(bent.body().at(0), bent.body().at(1));
    LipDrawing split = LipEdit.insert(bent, new Corner(0, 0), 5e-3, -1e-3);
    assertThat(split.body().vertices()).hasSize(5);
    for (int k = 0; k < 2; k++) {
      Arc part = Arc.of(split.body().at(k), split.body().at(k + 1));
      assertThat(part.radius()).isCloseTo(whole.radius(), within(EXACT));
      assertThat(part.xc()).isCloseTo(whole.xc(), within(EXACT));
      assertThat(part.yc()).isCloseTo(whole.yc(), within(EXACT));
    }
  }

  @Test
  void theMountEdgeStaysItselfWhenVerticesComeAndGo() throws Exception {
    LipDrawing more = LipEdit.insert(flat, new Corner(0, 0), 4e-3, 0);
    assertThat(MountEdge.of(LipResolver.resolve(more)).y()).isCloseTo(10e-3, within(EXACT));
    LipDrawing less = LipEdit.delete(more, new Corner(0, 1));
    assertThat(less).isEqualTo(flat);
    LipDrawing split = LipEdit.insert(flat, new Corner(0, 2), 4e-3, 10e-3);
    assertThat(MountEdge.of(LipResolver.resolve(split)).width()).isCloseTo(4e-3, within(EXACT));
    LipDrawing joined = LipEdit.delete(split, new Corner(0, 3));
    assertThat(MountEdge.of(LipResolver.resolve(joined)).width()).isCloseTo(8e-3, within(EXACT));
  }

  @Test
  void roundingsFollowTheirCorners() {
    LipDrawing round = LipEdit.dress(flat, new Corner(0, 1), Rounding.Kind.ROUND, 1e-3);
    LipDrawing moved = LipEdit.insert(round, new Corner(0, 0), 4e-3, 0);
    assertThat(moved.body().roundings()).containsExactly(Rounding.round(2, 1e-3));
    assertThat(LipEdit.delete(moved, new Corner(0, 2)).body().roundings()).isEmpty();
    assertThat(LipEdit.bend(round, new Corner(0, 1), 0.2).body().roundings())
        .as("an arc's ends cannot be rounded")
        .isEmpty();
    assertThat(LipEdit.dress(round, new Corner(0, 1), Rounding.Kind.ROUND, 0)).isEqualTo(flat);
  }

  @Test
  void anEdgeBendsThroughThePointUnderTheHand() {
    LipDrawing bent = LipEdit.bendThrough(flat, new Corner(0, 0), 4e-3, -1e-3);
    Arc arc = Arc.of(bent.body().at(0), bent.body().at(1));
    assertThat(arc.yc() - arc.radius()).isCloseTo(-1e-3, within(EXACT));
    assertThat(LipEdit.bendThrough(bent, new Corner(0, 0), 4e-3, 1e-6).body().at(0).bulge())
        .as("nearly straight is straight")
        .isZero();
  }

  @Test
  void anEdgeGetsTheLengthTyped() {
    LipDrawing longer = LipEdit.length(flat, new Corner(0, 0), 9.5e-3);
    assertThat(longer.body().at(1)).isEqualTo(new Vertex(9.5e-3, 0));
  }

  @Test
  void theLastThreeVerticesStay() {
    LipDrawing three = LipEdit.delete(flat, new Corner(0, 0));
    assertThat(three.body().vertices()).hasSize(3);
    assertThat(LipEdit.delete(three, new Corner(0, 0))).isEqualTo(three);
  }

  @Test
  void mirroringTwiceChangesNothingAndKeepsTheLeakSides() {
    LipDrawing teeth = new Starter.Teeth(2, 5e-3, 4e-3, 1e-3, 1.5e-3, 10e-3).drawing();
    LipDrawing mirrored = LipShape.mirror(teeth);
    assertThat(mirrored).isNotEqualTo(teeth);
    assertThat(LipShape.box(mirrored)).containsExactly(LipShape.box(teeth), within(EXACT));
    LipDrawing back = LipShape.mirror(mirrored);
    for (int k = 0; k < teeth.body().vertices().size(); k++) {
      assertThat(back.body().at(k).x()).isCloseTo(teeth.body().at(k).x(), within(EXACT));
      assertThat(back.body().at(k).y()).isEqualTo(teeth.body().at(k).y());
    }
  }

  @Test
  void scalingScalesRoundingsToo() {
    LipDrawing round = LipEdit.dress(flat, new Corner(0, 1), Rounding.Kind.ROUND, 1e-3);
    assertThat(LipShape.scale(round, 2).body().roundings())
        .containsExactly(Rounding.round(1, 2e-3));
    assertThat(LipShape.box(LipShape.scale(round, 2))[1]).isCloseTo(16e-3, within(EXACT));
  }

  @Test
  void variantsCountUp() {
    LipDrawing second = LipShape.variant(flat, List.of());
    assertThat(second.name()).isEqualTo("flat 8 variant 2");
    assertThat(LipShape.variant(second, List.of()).name()).isEqualTo("flat 8 variant 3");
    assertThat(LipShape.variant(flat, List.of("flat 8 variant 2")).name())
        .isEqualTo("flat 8 variant 3");
  }

  @Test
  void everyStarterIsALip() throws Exception {
    for (Starter starter :
        List.of(
            new Starter.Flat(8e-3, 10e-3),
            new Starter.Teeth(1, 5e-3, 5e-3, 1e-3, 0, 10e-3),
            new Starter.Teeth(5, 3e-3, 6e-3, 0.8e-3, 2e-3, 12e-3),
            new Starter.Teeth(3, 4e-3, 6e-3, 0.8e-3, -2e-3, 12e-3),
            new Starter.Pockets(1, 4e-3, 3e-3, 2e-3, 10e-3),
            new Starter.Pockets(4, 2e-3, 4e-3, 1e-3, 12e-3))) {
      LipProfile profile = LipResolver.resolve(starter.drawing());
      assertThat(MountEdge.of(profile).y()).isGreaterThanOrEqualTo(10e-3 - EXACT);
    }
  }

  @Test
  void severalCornersMoveTogether() {
    LipDrawing moved = LipEdit.move(flat, Set.of(new Corner(0, 0), new Corner(0, 1)), 1e-3, -2e-3);
    assertThat(moved.body().at(0)).isEqualTo(new Vertex(1e-3, -2e-3));
    assertThat(moved.body().at(1)).isEqualTo(new Vertex(9e-3, -2e-3));
    assertThat(moved.body().at(2)).isEqualTo(flat.body().at(2));
  }
}
