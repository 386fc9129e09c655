package hemline.viewer.picture;

import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.SealEdge;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** A machine in plan: floor with its edges, axles, fan and centre of gravity; forwards is right. */
public final class MachinePlan extends Picture {
  private static final double WIDTH = 960;
  private static final double HEIGHT = 400;
  private static final double TOP = 76;
  private static final double BOTTOM = 44;
  private static final double SIDE = 60;

  /** Room for the numbers of edges and the names of axles, sheet units. */
  private static final double NAMES = 40;

  private static final double WHEEL = 0.16;

  private final Machine machine;
  private final List<FloorOutline.Piece> pieces;
  private final double scale;
  private final double left;
  private final double front;

  private MachinePlan(Machine machine) {
    super(WIDTH, HEIGHT);
    this.machine = machine;
    pieces = machine.floor().pieces();
    double x0 = Double.POSITIVE_INFINITY;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = 0;
    List<double[]> points = new ArrayList<>();
    pieces.forEach(p -> points.add(new double[] {p.x0(), p.y0()}));
    for (Axle axle : machine.running().axles()) {
      points.add(new double[] {axle.x(), 0.5 * axle.track()});
    }
    for (double[] p : points) {
      x0 = Math.min(x0, p[0]);
      x1 = Math.max(x1, p[0]);
      y1 = Math.max(y1, Math.abs(p[1]));
    }
    scale =
        Math.min(
            (WIDTH - 2 * SIDE - 2 * NAMES) / (x1 - x0),
            (HEIGHT - TOP - BOTTOM - 2 * NAMES) / (2 * y1));
    front = 0.5 * (x0 + x1);
    left = 0.5 * WIDTH;
  }

  /** Plan of a machine. */
  public static MachinePlan of(Machine machine) {
    return new MachinePlan(machine);
  }

  private double px(double x) {
    return left + scale * (x - front);
  }

  private double py(double y) {
    return TOP + 0.5 * (HEIGHT - TOP - BOTTOM) - scale * y;
  }

  @Override
  public void paint(Sheet sheet) {
    heading(
        sheet, machine.description().name(), "plan, seen from above; the front is on the right");
    Path2D floor = new Path2D.Double();
    for (FloorOutline.Piece piece : pieces) {
      if (floor.getCurrentPoint() == null) {
        floor.moveTo(px(piece.x0()), py(piece.y0()));
      }
      floor.lineTo(px(piece.x1()), py(piece.y1()));
    }
    floor.closePath();
    sheet.fill(floor, Ink.WALL, 1);
    machine.running().axles().forEach(axle -> axle(sheet, axle));
    sheet.stroke(floor, new Pen(Ink.LIP_EDGE, 1, 2.4));
    edges(sheet);
    fan(sheet);
    gravity(sheet);
    double length = Math.pow(10, Math.floor(Math.log10(200 / scale)));
    double y = HEIGHT - 22;
    sheet.stroke(new Line2D.Double(SIDE, y, SIDE + scale * length, y), Ink.AXIS);
    sheet.text(
        SIDE + scale * length + 8,
        y + 4,
        LengthUnit.text(length, 4),
        Lettering.of(11.5, Ink.QUIET));
    signs(
        sheet,
        SIDE + 200,
        y + 4,
        "brown: skirt edges by number; ring: fan; cross: centre of gravity");
  }

  /** The number of each edge outside its middle, with lip and gap for those who point at it. */
  private void edges(Sheet sheet) {
    int edge = -1;
    for (int k = 0; k < pieces.size(); k++) {
      int number = pieces.get(k).edge();
      if (number == edge) {
        continue;
      }
      edge = number;
      List<FloorOutline.Piece> own = pieces.stream().filter(p -> p.edge() == number).toList();
      FloorOutline.Piece middle = own.get(own.size() / 2);
      double x = 0.5 * (middle.x0() + middle.x1());
      double y = 0.5 * (middle.y0() + middle.y1());
      double at = px(x) + 13 * middle.outwardX();
      double up = py(y) - 13 * middle.outwardY();
      sheet.text(
          at,
          up + 4,
          String.valueOf(number),
          Lettering.of(12, Ink.LIP_EDGE).heavy().lifted().at(Anchor.MIDDLE));
      SealEdge seal = machine.floor().edges().get(number);
      sheet.mark(
          new Rectangle2D.Double(at - 10, up - 10, 20, 20),
          "edge %d: %s\nstatic gap %s"
              .formatted(number, seal.lip().name(), LengthUnit.text(seal.gap(), 4)));
    }
  }

  private void axle(Sheet sheet, Axle axle) {
    double half = 0.5 * axle.track();
    Line2D line = new Line2D.Double(px(axle.x()), py(half), px(axle.x()), py(-half));
    sheet.stroke(line, new Pen(Ink.QUIET, 1, 1.6));
    double radius = 0.5 * WHEEL * scale * Math.max(axle.track(), machine.floor().perimeter() / 8);
    for (double side : new double[] {half, -half}) {
      Rectangle2D wheel =
          new Rectangle2D.Double(px(axle.x()) - radius, py(side) - 5, 2 * radius, 10);
      sheet.fill(wheel, axle.driven() ? Ink.QUIET : Ink.FAINT, 1);
      sheet.stroke(wheel, Ink.AXIS);
    }
    sheet.text(
        px(axle.x()),
        py(half) - 10,
        axle.name() + (axle.driven() ? ", driven" : ""),
        Lettering.of(11.5, Ink.TEXT).lifted().at(Anchor.MIDDLE));
  }

  private void fan(Sheet sheet) {
    Fan fan = machine.fan();
    double radius = fan.outlet().area() > 0 ? scale * Math.sqrt(fan.outlet().area() / Math.PI) : 12;
    double x = px(fan.outlet().x());
    double y = py(fan.outlet().y());
    Ellipse2D ring = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
    sheet.stroke(ring, new Pen(Ink.SERIES, 1, 2));
    sheet.mark(ring.getBounds2D(), "fan, " + Digits.plain(60 * fan.speed(), 5) + " rpm");
  }

  private void gravity(Sheet sheet) {
    Load load = machine.load();
    double x = px(load.x());
    double y = py(load.y());
    Path2D cross = new Path2D.Double();
    cross.append(new Line2D.Double(x - 8, y, x + 8, y), false);
    cross.append(new Line2D.Double(x, y - 8, x, y + 8), false);
    sheet.stroke(cross, new Pen(Ink.VORTEX, 1, 2.2));
    sheet.mark(
        new Rectangle2D.Double(x - 8, y - 8, 16, 16),
        "centre of gravity, %s kg, %s above the ground"
            .formatted(Digits.plain(load.mass(), 4), LengthUnit.text(load.height(), 4)));
  }
}
