package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Path commands of SVG against their spelled-out forms and against areas by hand. */
class SvgPathTest {
  private static Outline shape(String body) throws InputException {
    ImportedOutlines found =
        SvgFile.parse(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"20mm\" height=\"20mm\""
                + " viewBox=\"0 0 20 20\">"
                + body
                + "</svg>",
            "d.svg");
    assertThat(found.outlines()).hasSize(1);
    return found.outlines().get(0);
  }

  private static Outline path(String data) throws InputException {
    return shape("<path d='" + data + "'/>");
  }

  private static double area(Outline outline) {
    return 1e6 * Math.abs(Polygons.signedArea(outline.vertices()));
  }

  /** Left, right, lower and upper end of the vertices, mm from the page's left lower corner. */
  private static double[] box(Outline outline) {
    double[] box = {1e9, -1e9, 1e9, -1e9};
    for (Vertex v : outline.vertices()) {
      box[0] = Math.min(box[0], 1e3 * v.x());
      box[1] = Math.max(box[1], 1e3 * v.x());
      box[2] = Math.min(box[2], 1e3 * v.y());
      box[3] = Math.max(box[3], 1e3 * v.y());
    }
    return box;
  }

  /** The same path in relative and shorthand, and in absolute and plain commands. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "m 2 3 l 4 1 v 5 h -4 z | M 2 3 L 6 4 L 6 9 L 2 9 Z",
        "m 2 3 l 4 1 v 5 h -4 z | M 2 3 L 6 4 V 9 H 2 Z",
        "m 2 3 4 1 0 5 z | M 2 3 L 6 4 L 6 9 Z",
        "M 2 3 h 4 v 5 z | M 2 3 H 6 V 8 L 2 3",
        "M 1 2 c 1 -2 4 -2 5 1 L 1 8 Z | M 1 2 C 2 0 5 0 6 3 L 1 8 Z",
        "M 1 2 C 2 0 5 0 6 3 s 3 4 1 6 L 1 8 Z | M 1 2 C 2 0 5 0 6 3 C 7 6 9 7 7 9 L 1 8 Z",
        "M 1 2 C 2 0 5 0 6 3 S 9 7 7 9 L 1 8 Z | M 1 2 C 2 0 5 0 6 3 C 7 6 9 7 7 9 L 1 8 Z",
        "M 1 2 L 6 3 S 9 7 7 9 L 1 8 Z | M 1 2 L 6 3 C 6 3 9 7 7 9 L 1 8 Z",
        "M 1 3 q 3 -3 6 1 L 1 9 Z | M 1 3 Q 4 0 7 4 L 1 9 Z",
        "M 1 3 Q 4 0 7 4 t 3 5 L 1 9 Z | M 1 3 Q 4 0 7 4 Q 10 8 10 9 L 1 9 Z",
        "M 1 3 Q 4 0 7 4 T 10 9 L 1 9 Z | M 1 3 Q 4 0 7 4 Q 10 8 10 9 L 1 9 Z",
        "M 1 3 L 7 4 T 10 9 L 1 9 Z | M 1 3 L 7 4 L 10 9 L 1 9 Z",
        // a quadratic is the cubic with two thirds of the way to its control
        "M 1 6 Q 4 3 10 9 L 1 9 Z | M 1 6 C 3 4 6 5 10 9 L 1 9 Z",
        "M 4 4 a 3 5 0 0 1 4 6 L 4 10 Z | M 4 4 A 3 5 0 0 1 8 10 L 4 10 Z",
        "M 4 4 A -3 -5 0 0 1 8 10 L 4 10 Z | M 4 4 A 3 5 0 0 1 8 10 L 4 10 Z",
        "M 4 4 A 0 5 0 0 1 8 10 L 4 10 Z | M 4 4 L 8 10 L 4 10 Z",
        "M 4 4 A 5 0 0 0 1 8 10 L 4 10 Z | M 4 4 L 8 10 L 4 10 Z",
        "M 4 4 A 3 5 0 0 1 4 4 L 8 10 L 4 10 Z | M 4 4 L 8 10 L 4 10 Z",
        // a radius that is too small grows until it reaches
        "M 4 4 A 1 1 0 0 1 10 12 Z | M 4 4 A 5 5 0 0 1 10 12 Z",
      })
  void isTheSameAs(String one, String other) throws InputException {
    Outline a = path(one);
    Outline b = path(other);
    assertThat(area(a)).isCloseTo(area(b), within(2e-3));
    double[] boxA = box(a);
    double[] boxB = box(b);
    for (int i = 0; i < 4; i++) {
      assertThat(boxA[i]).isCloseTo(boxB[i], within(0.05));
    }
  }

  /**
   * A circle of radius 5 over a chord of 6: the segment r² (θ − sin θ) / 2 with θ = 2 asin 0.6, or
   * the rest; on the left of the way down for one sense, on the right for the other.
   */
  @ParameterizedTest
  @CsvSource({"0, 0", "0, 1", "1, 0", "1, 1"})
  void arcsByTheirFlags(int large, int sweep) throws InputException {
    Outline arc = path("M 10 7 A 5 5 0 " + large + " " + sweep + " 10 13 Z");
    double theta = 2 * Math.asin(0.6);
    double segment = 12.5 * (theta - Math.sin(theta));
    assertThat(area(arc)).isCloseTo(large == 1 ? 25 * Math.PI - segment : segment, within(1e-6));
    // down the page and clockwise as seen there: to the right
    Outline mirrored = path("M 10 7 A 5 5 0 " + large + " " + (1 - sweep) + " 10 13 Z");
    assertThat(1e3 * (middle(arc) - 10e-3))
        .isCloseTo(-1e3 * (middle(mirrored) - 10e-3), within(1e-6));
    assertThat(middle(arc) > 10e-3).isEqualTo(sweep == 1);
  }

  /** x of the area's centre, from the chords and their segments' sides. */
  private static double middle(Outline outline) {
    double least = 1;
    double most = -1;
    List<Vertex> v = outline.vertices();
    for (int i = 0; i < v.size(); i++) {
      Vertex a = v.get(i);
      Vertex b = v.get((i + 1) % v.size());
      // middle of an arc: half a chord times the bulge beside the chord
      double x = 0.5 * (a.x() + b.x()) + 0.5 * a.bulge() * (b.y() - a.y());
      least = Math.min(least, x);
      most = Math.max(most, x);
    }
    return 0.5 * (least + most);
  }

  /** Half axes 6 and 3, tilted by 30°: π · 18, and the box of a tilted ellipse. */
  @Test
  void tiltedEllipses() throws InputException {
    double c = Math.cos(Math.toRadians(30));
    double s = Math.sin(Math.toRadians(30));
    String ends = (10 - 6 * c) + " " + (10 - 6 * s) + " Z";
    Outline whole =
        path(
            "M "
                + (10 - 6 * c)
                + " "
                + (10 - 6 * s)
                + " A 6 3 30 0 1 "
                + (10 + 6 * c)
                + " "
                + (10 + 6 * s)
                + " A 6 3 30 1 1 "
                + ends);
    assertThat(area(whole)).isCloseTo(18 * Math.PI, within(0.03));
    double[] box = box(whole);
    double wide = Math.sqrt(36 * c * c + 9 * s * s);
    double tall = Math.sqrt(36 * s * s + 9 * c * c);
    assertThat(box[1] - box[0]).isCloseTo(2 * wide, within(0.05));
    assertThat(box[3] - box[2]).isCloseTo(2 * tall, within(0.05));
    // the upper end of the long axis, down the page to the right, is low in the drawing
    assertThat(whole.vertices())
        .anyMatch(v -> Math.hypot(v.x() - 1e-3 * (10 + 6 * c), v.y() - 1e-3 * (10 - 6 * s)) < 1e-6);
  }

  /** 0.6 of the box that a cubic's controls span: ∫ 3 h t (1 − t) d(w (3 t² − 2 t³)). */
  @Test
  void cubicsHaveTheirArea() throws InputException {
    assertThat(area(path("M 2 8 C 2 4 8 4 8 8 Z"))).isCloseTo(0.6 * 6 * 4, within(0.02));
    // two thirds of a parabola's box: its height is half of its control's
    assertThat(area(path("M 2 8 Q 5 2 8 8 Z"))).isCloseTo(2.0 / 3 * 6 * 3, within(0.02));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "x='1' y='2' width='8' height='5' | 0 | 0",
        "x='1' y='2' width='8' height='5' rx='2' | 2 | 2",
        "x='1' y='2' width='8' height='5' ry='1.5' | 1.5 | 1.5",
        "x='1' y='2' width='8' height='5' rx='3' ry='1' | 3 | 1",
        "x='1' y='2' width='8' height='5' rx='9' ry='1' | 4 | 1",
        "x='1' y='2' width='8' height='5' rx='1' ry='9' | 1 | 2.5",
      })
  void rectangles(String attributes, double rx, double ry) throws InputException {
    Outline found = shape("<rect " + attributes + "/>");
    assertThat(area(found)).isCloseTo(40 - (4 - Math.PI) * rx * ry, within(0.02));
    double[] box = box(found);
    assertThat(box[0]).isCloseTo(1, within(0.03));
    assertThat(box[1]).isCloseTo(9, within(0.03));
    assertThat(box[2]).isCloseTo(13, within(0.03));
    assertThat(box[3]).isCloseTo(18, within(0.03));
  }

  @ParameterizedTest
  @CsvSource({
    "<rect x='1' y='1' width='0' height='5'/>",
    "<rect x='1' y='1' width='5' height='-1'/>",
    "<rect x='1' y='1' width='5' height='5' rx='-1'/>",
    "<rect x='1' y='1' width='5' height='5' rx='1' ry='-1'/>",
    "<circle cx='5' cy='5' r='0'/>",
    "<ellipse cx='5' cy='5' rx='0' ry='2'/>",
    "<ellipse cx='5' cy='5' rx='2' ry='0'/>"
  })
  void emptyShapesAreRefused(String body) {
    InputException told = catchThrowableOfType(InputException.class, () -> shape(body));
    assertThat(told).isNotNull();
    assertThat(told.problems().get(0).toString()).contains("must be positive");
  }

  /** Only what is closed is an outline: a path may start anew without an end. */
  @Test
  void openPathsAreTold() {
    InputException told =
        catchThrowableOfType(InputException.class, () -> path("M 1 1 L 5 1 L 5 5 M 9 9 L 12 9"));
    assertThat(told).isNotNull();
    assertThat(told.problems()).isNotEmpty();
  }
}
