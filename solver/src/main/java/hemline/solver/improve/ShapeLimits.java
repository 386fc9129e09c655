package hemline.solver.improve;

import hemline.shared.geometry.Box;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.ThinParts;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.units.NumberText;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * What can be built: the widest and highest outline, and the least wall and slot of the printer.
 *
 * @param width along the leak, m
 * @param height from the ground side to the mount, m
 * @param wall least wall, m
 * @param slot least slot, m
 */
public record ShapeLimits(double width, double height, double wall, double slot) {
  /** Least wall and slot where nothing is said, m; common practice, no source. */
  public static final double USUAL_WALL = 0.8e-3;

  private static final double SLENDER = 1.25;

  /** Parts are looked for down to this share of the least wall and slot. */
  private static final double LEAST_SHARE = 0.1;

  private static final double SLACK = 1e-9;

  public ShapeLimits {
    if (!(width > 0 && height > 0 && wall > 0 && slot > 0)
        || !Double.isFinite(width + height + wall + slot)) {
      throw new IllegalArgumentException("limits of a shape are positive");
    }
  }

  /**
   * A lip judged.
   *
   * @param profile the lip; null where it cannot be built
   * @param why not, in a few words; empty for a lip
   */
  public record Judged(@Nullable LipProfile profile, String why) {}

  /** Judges a drawing. */
  public Judged judge(LipDrawing drawing) {
    LipFindings shape = LipResolver.checkShape(drawing);
    LipProfile profile = shape.profile();
    if (profile == null) {
      return new Judged(null, shape.problems().get(0).text());
    }
    List<Outline> bodies = profile.bodies();
    Box box = Box.around(bodies);
    if (box.width() > width + SLACK) {
      return new Judged(null, "it is wider than " + NumberText.millimetres(width));
    }
    if (box.top() > height + SLACK) {
      return new Judged(null, "it is higher than " + NumberText.millimetres(height));
    }
    if (thin(wall, w -> ThinParts.thinWalls(bodies, w, SLENDER))) {
      return new Judged(null, "a wall is thinner than " + NumberText.millimetres(wall));
    }
    if (thin(slot, w -> ThinParts.narrowSlots(bodies, w, SLENDER))) {
      return new Judged(null, "a slot is narrower than " + NumberText.millimetres(slot));
    }
    return new Judged(profile, "");
  }

  /** True where a part is thinner than a width, or a short one much thinner. */
  private static boolean thin(double width, DoubleFunction<List<ThinParts.Part>> finder) {
    for (double w = width; w > LEAST_SHARE * width; w /= 2) {
      if (!finder.apply(w).isEmpty()) {
        return true;
      }
    }
    return false;
  }
}
