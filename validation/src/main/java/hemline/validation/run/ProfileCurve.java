package hemline.validation.run;

import hemline.solver.flow.FlowField;
import hemline.validation.reference.ProfileReference;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;

/**
 * A computed profile beside a published one.
 *
 * @param reference the published one
 * @param alongY true when the places are heights, false when they are distances along x
 * @param component component of the flow: u, v, …
 * @param computed on the finest grid
 */
public record ProfileCurve(
    ProfileReference reference,
    boolean alongY,
    String component,
    List<ProfileReference.Point> computed) {
  private static final int SAMPLES = 160;
  private static final double EDGE = 1e-6;

  public ProfileCurve {
    computed = List.copyOf(computed);
  }

  /** Reads the profile off a flow. */
  static ProfileCurve of(FlowField field, ProfileReference reference) {
    Line line = Line.of(reference.line(), field);
    List<ProfileReference.Point> points = new ArrayList<>();
    for (int k = 0; k <= SAMPLES; k++) {
      double t = EDGE + (1 - 2 * EDGE) * k / SAMPLES;
      double place = line.low() + t * (line.high() - line.low());
      double value = line.at(place);
      if (!Double.isNaN(value)) {
        points.add(new ProfileReference.Point(place, value));
      }
    }
    return new ProfileCurve(reference, line.alongY(), line.component(), points);
  }

  /** Largest distance of a flow to the published points, those on the walls left out. */
  static double deviation(FlowField field, ProfileReference reference) {
    Line line = Line.of(reference.line(), field);
    double most = Double.NaN;
    for (ProfileReference.Point point : reference.points()) {
      double margin = EDGE * (line.high() - line.low());
      if (point.place() > line.low() + margin && point.place() < line.high() - margin) {
        double miss = Math.abs(line.at(point.place()) - point.value());
        most = Double.isNaN(most) || !(miss <= most) ? miss : most;
      }
    }
    return most;
  }

  private record Line(
      FieldSampler sampler,
      double[] values,
      boolean alongY,
      double fixed,
      String component,
      double low,
      double high) {

    static Line of(String text, FlowField field) {
      Matcher m = Probes.LINE.matcher(text);
      if (!m.matches()) {
        throw new IllegalArgumentException("a line reads \"u on x=0.5\", got \"" + text + "\"");
      }
      boolean alongY = m.group(2).equals("x");
      double[] lines = alongY ? field.mesh().lines.y() : field.mesh().lines.x();
      return new Line(
          new FieldSampler(field),
          Probes.component(field, m.group(1)),
          alongY,
          Double.parseDouble(m.group(3)),
          m.group(1),
          lines[0],
          lines[lines.length - 1]);
    }

    double at(double place) {
      return alongY ? sampler.at(values, fixed, place) : sampler.at(values, place, fixed);
    }
  }
}
