package hemline.validation.reference;

import java.util.List;

/**
 * A published profile along a line across the flow.
 *
 * @param line component and line, such as {@code u on x=0.5}
 * @param points places along the line, m, and values, SI, by place
 * @param source short name of the source for the legend of a plot
 */
public record ProfileReference(String line, List<Point> points, String source) {

  /** A place and the value there. */
  public record Point(double place, double value) {}

  public ProfileReference {
    points = List.copyOf(points);
  }
}
