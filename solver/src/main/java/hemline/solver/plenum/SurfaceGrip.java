package hemline.solver.plenum;

import java.util.List;

/**
 * Friction of a usual surface over the least with which a machine holds.
 *
 * @param surface dry, dusty or wet
 * @param low least friction there
 * @param high largest friction there
 * @param least low end over the least that holds; below 1 it may let go there
 * @param most high end over the least that holds; below 1 it lets go there
 */
public record SurfaceGrip(String surface, double low, double high, double least, double most) {
  /**
   * Usual surfaces over a least friction. Rubber on concrete, before slip: common practice, no
   * source. Tyres, dust and wet films differ so much that only a test on the surface itself tells.
   */
  public static List<SurfaceGrip> over(double friction) {
    return List.of(
        of("dry", 0.6, 0.9, friction),
        of("dusty", 0.3, 0.6, friction),
        of("wet", 0.4, 0.7, friction));
  }

  private static SurfaceGrip of(String surface, double low, double high, double friction) {
    return new SurfaceGrip(surface, low, high, low / friction, high / friction);
  }
}
