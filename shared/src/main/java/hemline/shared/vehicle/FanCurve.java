package hemline.shared.vehicle;

import hemline.shared.problem.Problem;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.List;

/**
 * Fan static pressure and shaft power against flow at one speed and air density.
 *
 * <p>Terms of ISO 5801 (from memory): fan static pressure p_fs is the static pressure at the outlet
 * minus the stagnation pressure at the inlet. A fan that draws from a plenum at rest and blows into
 * the open raises the air by the suction, so p_fs = Δp.
 */
public final class FanCurve {
  private static final int MOST_POINTS = 1000;

  private final List<Point> points;
  private final double speed;
  private final double density;
  private final MonotoneCurve pressure;
  private final MonotoneCurve power;
  private final double peakPressure;

  /**
   * A measured point.
   *
   * @param flow m³/s
   * @param staticPressure Pa
   * @param shaftPower W; not a number where it was not measured
   */
  public record Point(double flow, double staticPressure, double shaftPower) {}

  /**
   * A curve whose points {@link #check} finds no fault with.
   *
   * @param points by rising flow, the first at zero flow
   * @param speed at which it was measured, 1/s
   * @param density of the air it was measured in, kg/m³
   */
  public FanCurve(List<Point> points, double speed, double density) {
    List<Problem> problems = check(points, "fan curve");
    if (!problems.isEmpty()) {
      throw new IllegalArgumentException(problems.get(0).toString());
    }
    if (!(speed > 0) || !(density > 0)) {
      throw new IllegalArgumentException(
          "speed and density must be positive, got " + speed + " and " + density);
    }
    this.points = List.copyOf(points);
    this.speed = speed;
    this.density = density;
    double[] q = points.stream().mapToDouble(Point::flow).toArray();
    pressure = new MonotoneCurve(q, points.stream().mapToDouble(Point::staticPressure).toArray());
    power = new MonotoneCurve(q, points.stream().mapToDouble(Point::shaftPower).toArray());
    peakPressure = points.stream().mapToDouble(Point::staticPressure).max().orElseThrow();
  }

  /** What is wrong with the points of a curve; empty when it can be used. */
  public static List<Problem> check(List<Point> points, String place) {
    List<Problem> problems = new ArrayList<>();
    if (points.size() < 3 || points.size() > MOST_POINTS) {
      problems.add(
          new Problem(
              "fan.points",
              place,
              "a fan curve needs 3 to " + MOST_POINTS + " points; this one has " + points.size()));
      return problems;
    }
    for (int i = 0; i < points.size(); i++) {
      checkPoint(points, i, place, problems);
    }
    if (problems.isEmpty()) {
      checkShape(points, place, problems);
    }
    return problems;
  }

  private static void checkPoint(List<Point> points, int i, String place, List<Problem> problems) {
    Point p = points.get(i);
    if (!Double.isFinite(p.flow()) || !Double.isFinite(p.staticPressure()) || p.flow() < 0) {
      problems.add(
          new Problem(
              "fan.number",
              place,
              "point " + (i + 1) + " needs a flow of 0 or more and a pressure, both finite"));
    } else if (i > 0 && !(p.flow() > points.get(i - 1).flow())) {
      problems.add(
          new Problem(
              "fan.twoValued",
              place,
              "point "
                  + (i + 1)
                  + " has the flow "
                  + litres(p.flow())
                  + ", not more than the point before it: the curve would have two pressures at"
                  + " one flow; sort the points by flow and keep one of each"));
    }
    boolean measured = Double.isFinite(p.shaftPower());
    if (measured != Double.isFinite(points.get(0).shaftPower())) {
      problems.add(
          new Problem(
              "fan.power",
              place,
              "point " + (i + 1) + ": give the shaft power of every point or of none"));
    } else if (measured && !(p.shaftPower() > 0)) {
      problems.add(
          new Problem(
              "fan.power",
              place,
              "point "
                  + (i + 1)
                  + " has the shaft power "
                  + p.shaftPower()
                  + " W; it must be above 0"));
    }
  }

  private static void checkShape(List<Point> points, String place, List<Problem> problems) {
    if (points.get(0).flow() != 0) {
      problems.add(
          new Problem(
              "fan.shutOff",
              place,
              "the first point has the flow "
                  + litres(points.get(0).flow())
                  + "; begin with the pressure at zero flow (outlet or inlet closed)"));
    }
    int peak = 0;
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i).staticPressure() > points.get(peak).staticPressure()) {
        peak = i;
      }
    }
    if (!(points.get(peak).staticPressure() > 0)) {
      problems.add(
          new Problem("fan.pressure", place, "no point has a pressure above 0; check the columns"));
      return;
    }
    for (int i = 1; i < points.size(); i++) {
      double step = points.get(i).staticPressure() - points.get(i - 1).staticPressure();
      if (i <= peak ? step < 0 : step >= 0) {
        problems.add(turned(i, peak, place));
        return;
      }
    }
    checkSigns(points, place, problems);
  }

  private static Problem turned(int i, int peak, String place) {
    return new Problem(
        "fan.monotone",
        place,
        "the pressure "
            + (i <= peak ? "falls" : "does not fall")
            + " from point "
            + i
            + " to "
            + (i + 1)
            + "; it may rise to one peak (the stall side) and must fall from there on:"
            + " smooth the measurement");
  }

  /** Pressure that another fan makes, or more power in the air than at the shaft. */
  private static void checkSigns(List<Point> points, String place, List<Problem> problems) {
    for (int i = 0; i < points.size(); i++) {
      if (points.get(i).staticPressure() < 0) {
        problems.add(
            new Problem(
                "fan.negative",
                place,
                "point "
                    + (i + 1)
                    + " has the static pressure "
                    + NumberText.pressure(points.get(i).staticPressure())
                    + ", where another fan drives the air and this one draws nothing out of a"
                    + " floor; end the curve at the last point of 0 Pa or more, or check the signs"));
        return;
      }
    }
    for (Point p : points) {
      if (Double.isFinite(p.shaftPower()) && p.flow() * p.staticPressure() > p.shaftPower()) {
        problems.add(
            new Problem(
                "fan.efficiency",
                place,
                "at "
                    + litres(p.flow())
                    + " the air power is more than the shaft power of "
                    + NumberText.significant(p.shaftPower(), 4)
                    + " W; check the units of the columns"));
        return;
      }
    }
  }

  private static String litres(double flow) {
    return NumberText.significant(1000 * flow, 4) + " L/s";
  }

  public List<Point> points() {
    return points;
  }

  /** Speed of rotation, 1/s. */
  public double speed() {
    return speed;
  }

  /** Density of the air, kg/m³. */
  public double density() {
    return density;
  }

  /** Largest flow of the curve, m³/s. */
  public double largestFlow() {
    return pressure.to();
  }

  /** Largest pressure of the curve, Pa. */
  public double peakPressure() {
    return peakPressure;
  }

  /** Flow at the largest pressure, m³/s; below it lies the stall side. */
  public double peakFlow() {
    double peak = peakPressure();
    return points.stream()
        .filter(p -> p.staticPressure() == peak)
        .mapToDouble(Point::flow)
        .max()
        .orElseThrow();
  }

  /** Static pressure at a flow, Pa. */
  public double pressureAt(double flow) {
    return pressure.at(flow);
  }

  /** Slope of the pressure at a flow, Pa s/m³. */
  public double slopeAt(double flow) {
    return pressure.slopeAt(flow);
  }

  /** True when the shaft power was measured. */
  public boolean hasPower() {
    return Double.isFinite(points.get(0).shaftPower());
  }

  /** Shaft power at a flow, W; not a number when it was not measured. */
  public double powerAt(double flow) {
    return power.at(flow);
  }

  /**
   * The curve at another speed and density by the fan laws: q ~ n, p ~ ρ n², P ~ ρ n³ (ISO 5801,
   * from memory).
   */
  public FanCurve scaled(double newSpeed, double newDensity) {
    double n = newSpeed / speed;
    double rho = newDensity / density;
    return new FanCurve(
        points.stream()
            .map(
                p ->
                    new Point(
                        n * p.flow(),
                        rho * n * n * p.staticPressure(),
                        rho * n * n * n * p.shaftPower()))
            .toList(),
        newSpeed,
        newDensity);
  }

  /** The curve with all flows and powers times a factor. */
  public FanCurve wider(double factor) {
    return new FanCurve(
        points.stream()
            .map(p -> new Point(factor * p.flow(), p.staticPressure(), factor * p.shaftPower()))
            .toList(),
        speed,
        density);
  }

  /** The curve with all pressures and powers times a factor. */
  public FanCurve stronger(double factor) {
    return new FanCurve(
        points.stream()
            .map(p -> new Point(p.flow(), factor * p.staticPressure(), factor * p.shaftPower()))
            .toList(),
        speed,
        density);
  }
}
