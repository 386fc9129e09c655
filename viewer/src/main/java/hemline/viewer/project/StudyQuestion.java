package hemline.viewer.project;

import hemline.shared.fluid.FluidState;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import hemline.solver.study.Swept;
import hemline.viewer.format.Wording;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A study to solve: one lip over a range, or lips in order of their leak. SI units.
 *
 * @param swept what changes from point to point; null for a ranking
 * @param lips the lip, or the candidates
 * @param baseline what leaks are measured against; null for none, which a ranking cannot do without
 * @param values points of the range; for a ranking the gaps
 * @param held conditions that stay still
 * @param solving how sections are solved
 */
public record StudyQuestion(
    @Nullable Swept swept,
    List<LipProfile> lips,
    @Nullable LipProfile baseline,
    List<Double> values,
    Held held,
    Solving solving) {

  /**
   * Conditions of all points.
   *
   * @param gap m; not used where gaps are in the values
   * @param suction Pa; not used where it is swept
   * @param ground its speed is not used where it is swept
   * @param air the fluid
   */
  public record Held(double gap, double suction, GroundMotion ground, FluidState air) {}

  /**
   * How sections are solved.
   *
   * @param level finest grid
   * @param closure flow model
   * @param modelSpread true to widen the bands by a second flow model
   */
  public record Solving(MeshLevel level, Closure closure, boolean modelSpread) {}

  public StudyQuestion {
    lips = List.copyOf(lips);
    values = List.copyOf(values);
    if (lips.isEmpty() || values.isEmpty() || (swept == null && baseline == null)) {
      throw new IllegalArgumentException("a study needs lips, values and, for a ranking, a base");
    }
  }

  /** True for a ranking of lips. */
  public boolean ranks() {
    return swept == null;
  }

  /** The lip of a name among all that are solved, the baseline too. */
  public Optional<LipProfile> lip(String name) {
    return Stream.concat(lips.stream(), Stream.ofNullable(baseline))
        .filter(lip -> lip.name().equals(name))
        .findFirst();
  }

  /** The first lip under the conditions of the study. */
  public SealSection base() {
    double first = swept == null || swept == Swept.GAP ? values.get(0) : held.gap();
    return new SealSection(
        lips.get(0), first, held.suction(), held.ground(), held.air(), List.of());
  }

  public RunOptions options(int threads) {
    return new RunOptions(solving.level(), solving.closure(), solving.modelSpread(), threads);
  }

  /** One line that names the study. */
  public String title() {
    String range = Wording.value(rangeOf(), values.get(0));
    if (values.size() > 1) {
      range += " to " + Wording.value(rangeOf(), values.get(values.size() - 1));
    }
    return swept == null
        ? "Ranking of " + lips.size() + (lips.size() == 1 ? " lip, gap " : " lips, gap ") + range
        : lips.get(0).name() + ", " + Wording.name(swept) + " " + range;
  }

  /** One line with what the study holds still. */
  public String conditions() {
    StringBuilder text = new StringBuilder();
    if (swept != null && swept != Swept.GAP) {
      text.append("gap ").append(Wording.length(held.gap())).append(" \u00b7 ");
    }
    if (swept != Swept.SUCTION) {
      text.append("suction ").append(Wording.pressure(held.suction())).append(" \u00b7 ");
    }
    text.append(
        swept == Swept.GROUND_SPEED
            ? held.ground().spanwiseSpeed() == 0
                ? ""
                : Wording.ground(0, held.ground().spanwiseSpeed())
            : Wording.ground(held.ground().speed(), held.ground().spanwiseSpeed()));
    if (!Wording.air(held.air()).isEmpty()) {
      text.append(" \u00b7 ").append(Wording.air(held.air()));
    }
    text.append(" \u00b7 ").append(solving.level().key()).append(" mesh");
    if (solving.modelSpread()) {
      text.append(" \u00b7 with a second turbulence model");
    }
    return text.toString().replace(" \u00b7  \u00b7 ", " \u00b7 ");
  }

  private Swept rangeOf() {
    return swept == null ? Swept.GAP : swept;
  }
}
