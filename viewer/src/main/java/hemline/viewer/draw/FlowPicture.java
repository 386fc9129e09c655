package hemline.viewer.draw;

import hemline.shared.result.SectionFigures;
import hemline.solver.flow.FlowField;
import hemline.viewer.draw.BoardLook.ColourMap;
import hemline.viewer.model.Shown;
import hemline.viewer.picture.GridField;
import hemline.viewer.picture.Projection;
import hemline.viewer.picture.RasterSheet;
import hemline.viewer.picture.SectionScene;
import hemline.viewer.picture.SectionWindow;
import hemline.viewer.picture.Sheet;
import hemline.viewer.picture.Sheet.Pen;
import hemline.viewer.picture.Streamlines;
import hemline.viewer.picture.VortexLabels;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A flow made ready to paint at any place and scale: lines are traced once. */
public final class FlowPicture {
  private final Shown shown;
  private final GridField field;
  private final double through;
  private final Map<ColourMap, FieldMap> maps = new EnumMap<>(ColourMap.class);
  private final Streamlines lines;

  /** Traces what a look needs; takes some ten milliseconds, so not on the screen's thread. */
  public FlowPicture(Shown shown, BoardLook look) {
    this.shown = shown;
    field = GridField.of(shown.field());
    through = SectionScene.of(shown.section(), shown.result(), field).through();
    double[] range = field.pressureRange(0);
    if (look.map() == ColourMap.SPEED) {
      GridField speeds = GridField.of(shown.field(), speed(shown.field()));
      maps.put(ColourMap.SPEED, new FieldMap(speeds, 0, speeds.pressureRange(0)[1]));
    } else if (look.map() == ColourMap.PRESSURE) {
      maps.put(ColourMap.PRESSURE, new FieldMap(field, range[0], range[1]));
    }
    lines = new Streamlines(field, through, look.tubes());
  }

  private static double[] speed(FlowField f) {
    double[] speed = new double[f.u().length];
    for (int c = 0; c < speed.length; c++) {
      speed[c] = Math.sqrt(f.u()[c] * f.u()[c] + f.v()[c] * f.v()[c] + f.w()[c] * f.w()[c]);
    }
    return speed;
  }

  public Shown shown() {
    return shown;
  }

  /** Streamfunction of the lip, which is the leak, m²/s. */
  public double through() {
    return through;
  }

  /** The map on show; null for none. */
  public @Nullable FieldMap map(BoardLook look) {
    return maps.get(look.map());
  }

  public Streamlines streamlines() {
    return lines;
  }

  /** From the flow's frame to the board. */
  public Projection projection(BoardView view) {
    return view.projection(originX(), originY());
  }

  /** x of the flow's origin in the drawing, m. */
  public double originX() {
    return shown.placement().left();
  }

  /** y of the flow's origin, the ground, in the drawing, m. */
  public double originY() {
    return shown.placement().low() - shown.section().gap();
  }

  /**
   * Paints colours, mesh and streamlines on an empty image. On any thread.
   *
   * @param image as large as the view times the density, with one array of pixels. Modified.
   * @param density pixels of the image for one of the board
   * @param beside flows beside this one, which share its scale
   */
  public void paint(
      BufferedImage image,
      double density,
      BoardView view,
      BoardLook look,
      Palette ink,
      List<FlowPicture> beside) {
    Projection to = projection(view);
    Rectangle2D exact = frame(to);
    int left = (int) Math.ceil(exact.getMinX() * density);
    int top = (int) Math.ceil(exact.getMinY() * density);
    int right = Math.min(image.getWidth(), (int) Math.floor(exact.getMaxX() * density));
    int bottom = Math.min(image.getHeight(), (int) Math.floor(exact.getMaxY() * density));
    if (right <= left || bottom <= top) {
      return;
    }
    Rectangle2D frame =
        new Rectangle2D.Double(
            left / density, top / density, (right - left) / density, (bottom - top) / density);
    FieldMap map = map(look);
    if (map != null) {
      map.fill(
          to,
          frame,
          map.scale(maps(beside, look)),
          look.map() == ColourMap.SPEED ? ink.map().speed() : ink.map().pressure(),
          right - left,
          bottom - top,
          ((DataBufferInt) image.getRaster().getDataBuffer()).getData(),
          top * image.getWidth() + left,
          image.getWidth());
    }
    RasterSheet sheet = new RasterSheet(image, density);
    sheet.clip(frame);
    if (look.mesh()) {
      paintMesh(sheet, to, frame, ink);
    }
    if (look.streamlines()) {
      lines.paint(sheet, to, ink.lines().leak(), ink.lines().vortex(), ink.paper());
    }
  }

  private static List<FieldMap> maps(List<FlowPicture> flows, BoardLook look) {
    return flows.stream().map(flow -> flow.map(look)).filter(Objects::nonNull).toList();
  }

  private void paintMesh(Sheet sheet, Projection to, Rectangle2D frame, Palette ink) {
    Path2D grid = new Path2D.Double();
    for (double x : field.sx()) {
      double px = to.x(x);
      if (px >= frame.getMinX() && px <= frame.getMaxX()) {
        grid.append(new Line2D.Double(px, frame.getMinY(), px, frame.getMaxY()), false);
      }
    }
    for (double y : field.sy()) {
      double py = to.y(y);
      if (py >= frame.getMinY() && py <= frame.getMaxY()) {
        grid.append(new Line2D.Double(frame.getMinX(), py, frame.getMaxX(), py), false);
      }
    }
    sheet.stroke(grid, new Pen(ink.quiet(), 0.55, 0.6));
  }

  /**
   * Writes the strengths of the trapped vortices; after the solids are painted.
   *
   * @param words rooms of other words, which stay free
   */
  public void paintLabels(Sheet sheet, BoardView view, Palette ink, List<Rectangle2D> words) {
    VortexLabels.paint(
        sheet, projection(view), shown.result(), ink.text(), ink.lines().vortex(), words);
  }

  /** The part of the board that {@link #paintLabels} needs; empty without vortices. */
  public Rectangle2D labelsArea(BoardView view) {
    Projection to = projection(view);
    Rectangle2D area = new Rectangle2D.Double();
    for (SectionFigures.TrappedVortex vortex : shown.result().figures().trappedVortices()) {
      Rectangle2D one =
          new Rectangle2D.Double(to.x(vortex.x()) - 60, to.y(vortex.y()) - 24, 120, 46);
      if (area.isEmpty()) {
        area.setRect(one);
      } else {
        area.add(one);
      }
    }
    return area;
  }

  /**
   * The meaning of the colours, in the upper right corner of the board.
   *
   * @param beside flows beside this one, which share its scale
   */
  public void paintKey(
      Sheet sheet, BoardView view, BoardLook look, Palette ink, List<FlowPicture> beside) {
    FieldMap map = map(look);
    if (map != null) {
      boolean speed = look.map() == ColourMap.SPEED;
      ScaleKey.paint(
          sheet,
          view,
          map.scale(maps(beside, look)),
          speed ? ink.map().speed() : ink.map().pressure(),
          speed ? "speed of the air, m/s" : "pressure over ambient, Pa",
          ink);
    }
  }

  /** The part of the board that {@link #paintKey} needs. */
  public static Rectangle2D keyArea(BoardView view) {
    return ScaleKey.area(view);
  }

  /** The part of the board that the flow covers. */
  Rectangle2D frame(Projection to) {
    SectionWindow w = to.window();
    double left = Math.max(to.x(field.sx()[0]), to.x(w.left()));
    double right = Math.min(to.x(field.sx()[field.sx().length - 1]), to.x(w.right()));
    double top = Math.max(to.y(field.sy()[field.sy().length - 1]), to.y(w.top()));
    double bottom = Math.min(to.y(0), to.y(w.bottom()));
    return new Rectangle2D.Double(left, top, Math.max(0, right - left), Math.max(0, bottom - top));
  }
}
