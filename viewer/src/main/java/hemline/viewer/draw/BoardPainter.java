package hemline.viewer.draw;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.section.GroundMotion;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.Parts;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Placement;
import hemline.viewer.picture.FreeSpot;
import hemline.viewer.picture.GroundArrow;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import hemline.viewer.picture.TextWidth;
import hemline.viewer.picture.Ticks;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Paints lip, skirt, ground, rulers and the names of the two sides. */
public final class BoardPainter {
  private static final double RULER = 11.5;

  /** Height of the strip with arrows, pixels. */
  private static final double MOTION = 26;

  private static final double DIMENSION = 12;

  /** Shortest line of an outline, pixels. */
  private static final double SHORTEST = 0.7;

  /** Depth of the ground's hatch, pixels; below it there is plain colour. */
  public static final double GROUND = 60;

  private static final double GAP = 12;

  private final FxSheet sheet;
  private final Palette ink;
  private final BoardView view;

  public BoardPainter(FxSheet sheet, Palette ink, BoardView view) {
    this.sheet = sheet;
    this.ink = ink;
    this.view = view;
  }

  /** What this paints on. */
  public FxSheet sheet() {
    return sheet;
  }

  /** Skirt wall above the mount edge, as wide as the mount. */
  public void skirt(LipDrawing drawing) {
    Vertex a = drawing.body().at(drawing.mountEdge());
    Vertex b = drawing.body().at(drawing.mountEdge() + 1);
    double left = view.px(Math.min(a.x(), b.x()));
    double right = view.px(Math.max(a.x(), b.x()));
    double base = view.py(Math.max(a.y(), b.y()));
    if (base > 0 && right > left) {
      solid(
          new Rectangle2D.Double(left, -10, right - left, base + 10),
          ink.wall().fill(),
          ink.wall().hatch(),
          ink.quiet());
    }
  }

  /** The lip with its roundings. */
  public void lip(LipDrawing drawing) {
    for (Outline outline : Placement.outlines(drawing)) {
      solid(path(outline), ink.lip().fill(), ink.lip().hatch(), ink.lip().edge());
    }
  }

  private void solid(Shape shape, int fill, int hatch, int edge) {
    sheet.hatch(shape, fill, hatch, view.px(0), view.py(0));
    sheet.stroke(shape, new Pen(edge, 1, 1.6));
  }

  /** Outline in pixels. */
  public Path2D path(Outline outline) {
    Path2D path = new Path2D.Double();
    if (outline.vertices().size() < 3) {
      return path;
    }
    var ring = outline.flatten();
    double lastX = view.px(ring.x()[0]);
    double lastY = view.py(ring.y()[0]);
    path.moveTo(lastX, lastY);
    for (int k = 1; k < ring.size(); k++) {
      double x = view.px(ring.x()[k]);
      double y = view.py(ring.y()[k]);
      // chords of arcs are far shorter than is seen
      if (Math.hypot(x - lastX, y - lastY) > SHORTEST) {
        path.lineTo(x, y);
        lastX = x;
        lastY = y;
      }
    }
    path.closePath();
    return path;
  }

  /**
   * Ground up to a height in the drawing's frame.
   *
   * @param travel how far the hatch has moved, pixels
   */
  public void ground(double y, double travel) {
    double top = view.py(y);
    if (top > view.height()) {
      return;
    }
    double seam = Math.min(Math.ceil(top) + GROUND, view.height());
    sheet.hatch(
        new Rectangle2D.Double(0, top, view.width(), seam - top),
        ink.wall().fill(),
        ink.wall().hatch(),
        view.px(0) + travel,
        top);
    sheet.fill(
        new Rectangle2D.Double(0, seam, view.width(), view.height() - seam), ink.wall().fill(), 1);
    sheet.stroke(new Line2D.Double(0, top, view.width(), top), new Pen(ink.text(), 1, 1.8));
  }

  /** Arrows in the ground for its motion; at the board's rim where the ground is out of view. */
  public void motion(double y, GroundMotion motion) {
    GroundArrow.paint(sheet, "ground", motion, motionStrip(view, y), ink.text(), ink.paper());
  }

  /** Where the arrows of a ground at a height stand. */
  public static Rectangle2D motionStrip(BoardView view, double y) {
    double top = Math.max(3, Math.min(view.py(y) + 3, view.height() - MOTION - 3));
    return new Rectangle2D.Double(0, top, view.width(), MOTION);
  }

  /** An outline that is being drawn, and where its next point would come. */
  public void sketch(List<Vertex> points, double @Nullable [] next) {
    Path2D path = new Path2D.Double();
    for (int k = 0; k < points.size(); k++) {
      double x = view.px(points.get(k).x());
      double y = view.py(points.get(k).y());
      if (k == 0) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, y);
      }
    }
    sheet.stroke(path, new Pen(ink.lip().edge(), 1, 2));
    if (next != null && !points.isEmpty()) {
      Vertex last = points.get(points.size() - 1);
      sheet.stroke(
          new Line2D.Double(
              view.px(last.x()), view.py(last.y()), view.px(next[0]), view.py(next[1])),
          new Pen(ink.marks().chosen(), 1, 1.4, 5, 4));
    }
    for (int k = 0; k < points.size(); k++) {
      mark(points.get(k), k == 0);
    }
    if (next != null) {
      mark(new Vertex(next[0], next[1]), true);
    }
  }

  private void mark(Vertex v, boolean on) {
    double half = on ? 4.5 : 3.5;
    Rectangle2D box =
        new Rectangle2D.Double(view.px(v.x()) - half, view.py(v.y()) - half, 2 * half, 2 * half);
    sheet.fill(box, on ? ink.marks().chosen() : ink.paper(), 1);
    sheet.stroke(box, new Pen(on ? ink.marks().chosen() : ink.marks().handle(), 1, 1.5));
  }

  /** Names of the two sides. */
  public void sides(Placement lip) {
    Lettering name = Lettering.of(13, ink.text()).lifted();
    double y = sidesY(view, lip);
    side("ambient", 0, view.px(lip.left()), y, name);
    side("plenum", view.px(lip.right()), view.width(), y, name);
  }

  /** Height of the names' feet, pixels. */
  private static double sidesY(BoardView view, Placement lip) {
    return Math.max(28, view.py(lip.high()) + 18);
  }

  /** The part of the board that {@link #sides} needs. */
  public static Rectangle2D sidesArea(BoardView view, Placement lip) {
    return new Rectangle2D.Double(0, sidesY(view, lip) - 16, view.width(), 22);
  }

  /** The gap, as a bar beside the lip with its length. */
  public void gap(Placement lip, double ground) {
    double gx = view.px(lip.left()) - 14;
    double low = view.py(ground);
    double high = view.py(lip.low());
    if (low - high > 3) {
      Path2D bar = new Path2D.Double();
      bar.append(new Line2D.Double(gx, low, gx, high), false);
      bar.append(new Line2D.Double(gx - 4, high, gx + 10, high), false);
      sheet.stroke(bar, new Pen(ink.text(), 1, 1.2));
      sheet.text(
          gx - 8,
          0.5 * (low + high) + 4,
          gapText(lip, ground),
          Lettering.of(GAP, ink.text()).lifted().at(Anchor.END));
    }
  }

  private static String gapText(Placement lip, double ground) {
    return LengthUnit.text(lip.low() - ground, 3);
  }

  /** Where {@link #gap} writes the length. */
  public static Rectangle2D gapWords(BoardView view, Placement lip, double ground) {
    double width = TextWidth.of(gapText(lip, ground), GAP);
    double middle = 0.5 * (view.py(ground) + view.py(lip.low()));
    return new Rectangle2D.Double(
        view.px(lip.left()) - 22 - width, middle - GAP + 4, width, GAP + 3);
  }

  /** A name in the middle of a stretch that has room for it. */
  private void side(String text, double from, double to, double y, Lettering name) {
    double low = Math.max(40, from);
    double high = Math.min(view.width(), to);
    if (high - low > 76) {
      sheet.text(0.5 * (low + high), y, text, name.at(Anchor.MIDDLE));
    }
  }

  /** The part of the board that {@link #gap} needs. */
  public static Rectangle2D gapArea(BoardView view, Placement lip, double ground) {
    double high = view.py(lip.low());
    return new Rectangle2D.Double(
        view.px(lip.left()) - 110, high - 14, 124, view.py(ground) - high + 28);
  }

  /** Ruler along the upper side, from the lip's edge. */
  public void rulerAlong(double originX) {
    Path2D marks = new Path2D.Double();
    Lettering digits = Lettering.of(RULER, ink.quiet()).lifted();
    double unit = LengthUnit.factor();
    Ticks along =
        Ticks.within(
            (view.x(0) - originX) * unit,
            (view.x(view.width()) - originX) * unit,
            (int) Math.max(2, view.width() / 80));
    for (double t : along.values()) {
      double x = view.px(originX + t / unit);
      marks.append(new Line2D.Double(x, 0, x, 6), false);
      if (x > 56 && x < view.width() - 30) {
        sheet.text(x, 18, Digits.fixed(t, along.decimals()), digits.at(Anchor.MIDDLE));
      }
    }
    sheet.stroke(marks, new Pen(ink.quiet(), 1, 1));
    sheet.text(10, 18, LengthUnit.unit(), digits);
  }

  /** The part of the board that {@link #rulerAlong} needs. */
  public static Rectangle2D rulerAlongArea(BoardView view) {
    return new Rectangle2D.Double(0, 0, view.width(), 24);
  }

  /** Ruler along the left side, in the frame of the drawing as fields and the mouse tell it. */
  public void rulerUp(double originY) {
    Path2D marks = new Path2D.Double();
    Lettering digits = Lettering.of(RULER, ink.quiet()).lifted();
    double unit = LengthUnit.factor();
    Ticks up =
        Ticks.within(
            (view.y(view.height()) - originY) * unit,
            (view.y(0) - originY) * unit,
            (int) Math.max(1, view.height() / 60));
    for (double t : up.values()) {
      double y = view.py(originY + t / unit);
      marks.append(new Line2D.Double(0, y, 6, y), false);
      if (y > 38 && y < view.height() - 2) {
        // over its mark: a line of the drawing at this height, such as the ground, leaves it
        // legible
        sheet.text(10, y - 4, Digits.fixed(t, up.decimals()), digits);
      }
    }
    sheet.stroke(marks, new Pen(ink.quiet(), 1, 1));
  }

  /** The part of the board that {@link #rulerUp} needs. */
  public static Rectangle2D rulerUpArea(BoardView view) {
    return new Rectangle2D.Double(0, 0, 64, view.height());
  }

  /** Small squares on the vertices, filled where chosen. */
  public void handles(LipDrawing drawing, Set<Corner> chosen) {
    for (Corner corner : Parts.corners(drawing)) {
      mark(Parts.vertex(drawing, corner), chosen.contains(corner));
    }
  }

  /** A line of text for each dimension, in pixels at the given places. */
  public void dimensions(List<Label> labels) {
    for (Label label : labels) {
      sheet.text(
          label.x(),
          label.y(),
          label.text(),
          Lettering.of(DIMENSION, ink.marks().chosen()).heavy().lifted().at(Anchor.MIDDLE));
    }
  }

  /**
   * Dimensions at places where they keep off each other and off other words.
   *
   * @param labels where they would best stand
   * @param taken rooms of other words, pixels
   */
  public static List<Label> apart(BoardView view, List<Label> labels, List<Rectangle2D> taken) {
    FreeSpot room = new FreeSpot(new Rectangle2D.Double(0, 24, view.width(), view.height() - 24));
    taken.forEach(room::block);
    List<Label> placed = new ArrayList<>();
    for (Label label : labels) {
      double width = TextWidth.of(label.text(), DIMENSION) + 6;
      Rectangle2D spot =
          room.near(
              new Rectangle2D.Double(
                  label.x() - 0.5 * width, label.y() - DIMENSION, width, DIMENSION + 3));
      placed.add(new Label(spot.getCenterX(), spot.getMaxY() - 3, label.text()));
    }
    return placed;
  }

  /** A text at a pixel. */
  public record Label(double x, double y, String text) {}
}
