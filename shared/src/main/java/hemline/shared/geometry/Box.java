package hemline.shared.geometry;

import java.util.Collection;

/** Smallest upright rectangle around something, m. */
public record Box(double left, double bottom, double right, double top) {
  /** Around the solids, at least one of them. */
  public static Box of(Collection<Ring> rings) {
    double left = Double.POSITIVE_INFINITY;
    double bottom = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double top = Double.NEGATIVE_INFINITY;
    for (Ring ring : rings) {
      for (int k = 0; k < ring.size(); k++) {
        left = Math.min(left, ring.x()[k]);
        bottom = Math.min(bottom, ring.y()[k]);
        right = Math.max(right, ring.x()[k]);
        top = Math.max(top, ring.y()[k]);
      }
    }
    return new Box(left, bottom, right, top);
  }

  /** Around outlines with their arcs. */
  public static Box around(Collection<Outline> outlines) {
    return of(outlines.stream().map(Outline::flatten).toList());
  }

  public double width() {
    return right - left;
  }

  public double height() {
    return top - bottom;
  }
}
