package hemline.shared.file;

import org.apache.batik.parser.DefaultPathHandler;

/** Follows the commands of SVG path data (SVG 1.1, section 8.3). */
final class SvgPath extends DefaultPathHandler {
  private final SvgShape shape;
  private double startX;
  private double startY;
  private double x;
  private double y;

  /** Last control point, for the smooth curves. */
  private double controlX;

  private double controlY;
  private char smooth = ' ';

  SvgPath(SvgShape shape) {
    this.shape = shape;
  }

  @Override
  public void endPath() {
    shape.end(here(), false);
  }

  @Override
  public void movetoRel(float dx, float dy) {
    moveTo(x + d(dx), y + d(dy));
  }

  @Override
  public void movetoAbs(float toX, float toY) {
    moveTo(d(toX), d(toY));
  }

  @Override
  public void closePath() {
    shape.line(here(), new double[] {startX, startY});
    shape.end(new double[] {startX, startY}, true);
    x = startX;
    y = startY;
    smooth = ' ';
  }

  @Override
  public void linetoRel(float dx, float dy) {
    lineTo(x + d(dx), y + d(dy));
  }

  @Override
  public void linetoAbs(float toX, float toY) {
    lineTo(d(toX), d(toY));
  }

  @Override
  public void linetoHorizontalRel(float dx) {
    lineTo(x + d(dx), y);
  }

  @Override
  public void linetoHorizontalAbs(float toX) {
    lineTo(d(toX), y);
  }

  @Override
  public void linetoVerticalRel(float dy) {
    lineTo(x, y + d(dy));
  }

  @Override
  public void linetoVerticalAbs(float toY) {
    lineTo(x, d(toY));
  }

  @Override
  public void curvetoCubicRel(float x1, float y1, float x2, float y2, float dx, float dy) {
    cubic(x + d(x1), y + d(y1), x + d(x2), y + d(y2), x + d(dx), y + d(dy));
  }

  @Override
  public void curvetoCubicAbs(float x1, float y1, float x2, float y2, float toX, float toY) {
    cubic(d(x1), d(y1), d(x2), d(y2), d(toX), d(toY));
  }

  @Override
  public void curvetoCubicSmoothRel(float x2, float y2, float dx, float dy) {
    double[] c = mirrored('c');
    cubic(c[0], c[1], x + d(x2), y + d(y2), x + d(dx), y + d(dy));
  }

  @Override
  public void curvetoCubicSmoothAbs(float x2, float y2, float toX, float toY) {
    double[] c = mirrored('c');
    cubic(c[0], c[1], d(x2), d(y2), d(toX), d(toY));
  }

  @Override
  public void curvetoQuadraticRel(float x1, float y1, float dx, float dy) {
    quadratic(x + d(x1), y + d(y1), x + d(dx), y + d(dy));
  }

  @Override
  public void curvetoQuadraticAbs(float x1, float y1, float toX, float toY) {
    quadratic(d(x1), d(y1), d(toX), d(toY));
  }

  @Override
  public void curvetoQuadraticSmoothRel(float dx, float dy) {
    double[] c = mirrored('q');
    quadratic(c[0], c[1], x + d(dx), y + d(dy));
  }

  @Override
  public void curvetoQuadraticSmoothAbs(float toX, float toY) {
    double[] c = mirrored('q');
    quadratic(c[0], c[1], d(toX), d(toY));
  }

  @Override
  public void arcRel(
      float rx, float ry, float tilt, boolean large, boolean sweep, float dx, float dy) {
    arc(d(rx), d(ry), d(tilt), large, sweep, x + d(dx), y + d(dy));
  }

  @Override
  public void arcAbs(
      float rx, float ry, float tilt, boolean large, boolean sweep, float toX, float toY) {
    arc(d(rx), d(ry), d(tilt), large, sweep, d(toX), d(toY));
  }

  private double[] here() {
    return new double[] {x, y};
  }

  /** The parser hands on floats; this is the decimal that was written, up to seven digits. */
  static double d(float value) {
    return Double.parseDouble(Float.toString(value));
  }

  private void moveTo(double toX, double toY) {
    shape.end(here(), false);
    x = toX;
    y = toY;
    startX = toX;
    startY = toY;
    smooth = ' ';
  }

  private void lineTo(double toX, double toY) {
    shape.line(here(), new double[] {toX, toY});
    x = toX;
    y = toY;
    smooth = ' ';
  }

  private double[] mirrored(char kind) {
    return smooth == kind ? new double[] {2 * x - controlX, 2 * y - controlY} : here();
  }

  private void cubic(double x1, double y1, double x2, double y2, double toX, double toY) {
    double x0 = x;
    double y0 = y;
    shape.curve(
        t -> {
          double s = 1 - t;
          double a = s * s * s;
          double b = 3 * s * s * t;
          double c = 3 * s * t * t;
          double d = t * t * t;
          return new double[] {
            a * x0 + b * x1 + c * x2 + d * toX, a * y0 + b * y1 + c * y2 + d * toY
          };
        });
    controlX = x2;
    controlY = y2;
    smooth = 'c';
    x = toX;
    y = toY;
  }

  private void quadratic(double x1, double y1, double toX, double toY) {
    double x0 = x;
    double y0 = y;
    shape.curve(
        t -> {
          double s = 1 - t;
          return new double[] {
            s * s * x0 + 2 * s * t * x1 + t * t * toX, s * s * y0 + 2 * s * t * y1 + t * t * toY
          };
        });
    controlX = x1;
    controlY = y1;
    smooth = 'q';
    x = toX;
    y = toY;
  }

  /** End points to centre, SVG 1.1 appendix F.6.5 and F.6.6. */
  private void arc(
      double rxGiven,
      double ryGiven,
      double degrees,
      boolean large,
      boolean sweep,
      double toX,
      double toY) {
    double rx = Math.abs(rxGiven);
    double ry = Math.abs(ryGiven);
    if (rx == 0 || ry == 0 || (toX == x && toY == y)) {
      lineTo(toX, toY);
      return;
    }
    double tilt = Math.toRadians(degrees);
    double cos = Math.cos(tilt);
    double sin = Math.sin(tilt);
    double hx = 0.5 * (x - toX);
    double hy = 0.5 * (y - toY);
    double px = cos * hx + sin * hy;
    double py = -sin * hx + cos * hy;
    double reach = Math.sqrt(px * px / (rx * rx) + py * py / (ry * ry));
    if (reach > 1) {
      rx *= reach;
      ry *= reach;
    }
    double ratio = px * px / (rx * rx) + py * py / (ry * ry);
    double off = Math.sqrt(Math.max(0, 1 / ratio - 1)) * (large == sweep ? -1 : 1);
    double cxp = off * rx * py / ry;
    double cyp = -off * ry * px / rx;
    double start = Math.atan2((py - cyp) / ry, (px - cxp) / rx);
    double end = Math.atan2((-py - cyp) / ry, (-px - cxp) / rx);
    double turn = 2 * Math.PI;
    double angle = ((end - start) % turn + turn) % turn;
    double swept = sweep ? angle : angle - turn;
    double xc = cos * cxp - sin * cyp + 0.5 * (x + toX);
    double yc = sin * cxp + cos * cyp + 0.5 * (y + toY);
    shape.ellipse(xc, yc, rx, ry, tilt, start, swept);
    x = toX;
    y = toY;
    smooth = ' ';
  }
}
