package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import java.util.List;

/**
 * Grid lines of a section, drawn from its solids: lines on walls, corners and extremes, fine in the
 * gap and at its corners, coarse far away, as a family of geometrically similar grids.
 *
 * <p>Sizes refer to the finest grid of a family, {@link #FINEST} cells for each base cell. Symbols:
 * h reference gap, c free distance from a feature to the opposite side, m.
 *
 * <ul>
 *   <li>along y, at horizontal walls: h/32 for c up to h, plus (c - h)/16 beyond;
 *   <li>along x, at corners and vertical walls: c/16, but not below h/16 beside a wall;
 *   <li>beside convex round walls with c up to 1.06 h: h/160 along the wall's normal;
 *   <li>in ducts, along both at corners and lip lands with c up to 1.25 h: c/64, growth 0.25 along
 *       x and 0.2 along y, because the error of laminar flow at a sharp edge falls with the size
 *       there;
 *   <li>in ducts, over free bodies without corners: a twentieth of their extent, growth 0.1;
 *   <li>growth 0.15 per distance, less around the gap, up to a twelfth of the domain's height.
 * </ul>
 */
public final class GridDesign {
  /** Cells for each base cell on the finest grid of a family; 2 and 3 are the coarser ones. */
  public static final int FINEST = 4;

  /**
   * A rectangle with solids, m.
   *
   * @param xMin left side
   * @param xMax right side
   * @param yMin lower side
   * @param yMax upper side
   * @param solids simple polygons, counter-clockwise; may touch, overlap and stick out
   */
  public record Domain(double xMin, double xMax, double yMin, double yMax, List<Ring> solids) {
    public Domain {
      solids = List.copyOf(solids);
      if (!(xMax > xMin) || !(yMax > yMin)) {
        throw new IllegalArgumentException("a domain needs a positive length and height");
      }
    }
  }

  private final LineFamily x;
  private final LineFamily y;

  GridDesign(LineFamily x, LineFamily y) {
    this.x = x;
    this.y = y;
  }

  /**
   * Designs the lines of an open section or a duct in slow flow: left and right sides are open.
   *
   * @param domain rectangle and solids
   * @param gap reference gap, m, positive
   * @param level how fine
   */
  public static GridDesign of(Domain domain, double gap, MeshLevel level) {
    return of(domain, gap, 0, level);
  }

  /**
   * The same for a flow of about a gap Reynolds number, on which the layers beside round walls
   * depend.
   *
   * @param gapReynolds leak flow over kinematic viscosity, not negative
   */
  public static GridDesign of(Domain domain, double gap, double gapReynolds, MeshLevel level) {
    return of(domain, gap, gapReynolds, level, false, false);
  }

  /** Designs the lines of a closed cavity: left and right sides are walls too. */
  public static GridDesign ofCavity(Domain domain, double gap, MeshLevel level) {
    return of(domain, gap, 0, level, true, false);
  }

  /** Designs the lines of a duct section, finest at the sharp edges over its gap. */
  public static GridDesign ofDuct(Domain domain, double gap, MeshLevel level) {
    return of(domain, gap, 0, level, false, true);
  }

  private static GridDesign of(
      Domain domain,
      double gap,
      double gapReynolds,
      MeshLevel level,
      boolean closed,
      boolean edges) {
    if (!(gap > 0) || !Double.isFinite(gap)) {
      throw new IllegalArgumentException("the reference gap must be positive, got " + gap + " m");
    }
    return new SectionSizes(domain, gap, gapReynolds, closed, edges).design(level);
  }

  /**
   * Lines of one grid of the family.
   *
   * @param multiplier cells for each base cell, 1 or more; equal ratios give similar grids
   */
  public GridLines lines(int multiplier) {
    if (multiplier < 1) {
      throw new IllegalArgumentException("a multiplier is 1 or more, got " + multiplier);
    }
    return new GridLines(x.lines(multiplier), y.lines(multiplier));
  }

  /** Grid rectangles of the grid with this multiplier, solids included. */
  public int rectangles(int multiplier) {
    return x.cells() * multiplier * y.cells() * multiplier;
  }
}
