package hemline.viewer.edit;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.geometry.Rounding;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.Starter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Long chains of edits, undone to the last bit. */
final class RandomEditsTest {
  private static final int EDITS = 200;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void undoLeadsBackToTheIdenticalOutlineAndRedoForward(long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    LipDrawing first = new Starter.Pockets(2, 4e-3, 3e-3, 2e-3, 10e-3).drawing();
    History<LipDrawing> history = new History<>(first);
    List<LipDrawing> states = new ArrayList<>(List.of(first));
    int kinds = 0;
    for (int k = 0; k < EDITS; k++) {
      int kind = chance.nextInt(11);
      kinds |= 1 << kind;
      LipDrawing next = edit(history.now(), kind, chance);
      history.put(next);
      if (!next.equals(states.get(states.size() - 1))) {
        states.add(next);
      }
      // whatever was drawn, the checks answer with a lip or with problems
      var findings = LipResolver.check(next);
      assertThat(findings.problems().isEmpty())
          .as("seed %d, edit %d", seed, k)
          .isEqualTo(findings.profile() != null);
    }
    assertThat(kinds).as("every kind of edit was made").isEqualTo((1 << 11) - 1);
    assertThat(states.size()).isGreaterThan(EDITS / 2);
    for (int k = states.size() - 2; k >= 0; k--) {
      assertThat(history.undo()).as("seed %d, undo to %d", seed, k).isEqualTo(states.get(k));
    }
    assertThat(history.canUndo()).isFalse();
    assertThat(history.now()).isEqualTo(first);
    for (int k = 1; k < states.size(); k++) {
      assertThat(history.redo()).as("seed %d, redo to %d", seed, k).isEqualTo(states.get(k));
    }
    assertThat(history.canRedo()).isFalse();
  }

  private static LipDrawing edit(LipDrawing d, int kind, SplittableRandom chance) {
    List<Corner> corners = Parts.corners(d);
    Corner corner = corners.get(chance.nextInt(corners.size()));
    double dx = chance.nextDouble(-2e-3, 2e-3);
    double dy = chance.nextDouble(-2e-3, 2e-3);
    return switch (kind) {
      case 0 -> LipEdit.move(d, Set.of(corner), dx, dy);
      case 1 -> LipEdit.place(d, corner, dx, dy);
      case 2 -> LipEdit.insert(d, corner, dx, dy);
      case 3 -> LipEdit.delete(d, corner);
      case 4 -> LipEdit.bend(d, corner, chance.nextDouble(-1, 1));
      case 5 -> LipEdit.bendThrough(d, corner, dx, dy);
      case 6 -> LipEdit.dress(d, corner, Rounding.Kind.ROUND, 0.3e-3);
      case 7 -> LipEdit.dress(d, corner, Rounding.Kind.CHAMFER, 0.2e-3);
      case 8 -> LipEdit.length(d, corner, chance.nextDouble(1e-3, 5e-3));
      case 9 -> LipShape.mirror(d);
      default -> LipShape.shift(LipShape.scale(d, chance.nextDouble(0.9, 1.1)), dx, dy);
    };
  }
}
