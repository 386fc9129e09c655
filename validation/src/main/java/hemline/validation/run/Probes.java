package hemline.validation.run;

import hemline.shared.result.Figure;
import hemline.shared.result.RawFigures;
import hemline.solver.flow.FlowField;
import hemline.solver.refine.GridSolution;
import hemline.validation.reference.ProfileReference;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads the quantities of cases.
 *
 * <p>Besides the names of figures there are, with lengths in m and c one of u, v, w (velocity), p
 * (pressure) and nut (eddy viscosity):
 *
 * <ul>
 *   <li>{@code c at 0.5,0.2}: the value at a point;
 *   <li>{@code max c on x=0.5}, {@code min c on y=0.5}: the extreme along a line;
 *   <li>{@code zero of c on y=0.2 beyond 0.25}: first change of sign along a line;
 *   <li>{@code max psi}, {@code min psi}: the extreme of the streamfunction, m²/s;
 *   <li>{@code zero of shear 1 on ground beyond 0.5}, or on ceiling: where the shear on the wall
 *       changes sign for the first, second, … time;
 *   <li>{@code shear at 0.5 on ground}, or on ceiling: force of the fluid on the wall over its
 *       area, Pa;
 *   <li>{@code surface pressure from 0,1 to 2,1}: pressure on a solid at one point less that at
 *       another;
 *   <li>{@code base discharge coefficient}, {@code base pressure share at 0,1}, {@code ground
 *       pressure at 1}: see {@link BasePressure};
 *   <li>{@code stageShare 1}, {@code carryOver 1}, {@code vortex strength}: of the lip;
 *   <li>{@code unbalanced force along x}: what the pressures on all sides and the friction leave;
 *   <li>{@code uneven reattachment}: distance between the ends of the eddies on ground and ceiling
 *       behind x = 0;
 *   <li>{@code deviation of u on x=0.5}: largest distance to the published profile of that line.
 * </ul>
 */
final class Probes {
  static final String BASE_COEFFICIENT = "base discharge coefficient";
  private static final String NUMBER = "(-?[0-9.]+(?:[eE]-?[0-9]+)?)";
  private static final String COMPONENT = "(u|v|w|p|nut|eddyViscosity)";
  private static final Pattern AT = Pattern.compile(COMPONENT + " at " + NUMBER + "," + NUMBER);
  private static final Pattern EXTREME =
      Pattern.compile("(max|min) " + COMPONENT + " on (x|y)=" + NUMBER);
  private static final Pattern ZERO =
      Pattern.compile("zero of " + COMPONENT + " on (x|y)=" + NUMBER + " beyond " + NUMBER);
  private static final Pattern PSI = Pattern.compile("(max|min) psi");
  private static final Pattern SHEAR_ZERO =
      Pattern.compile("zero of shear ([1-9]) on (ground|ceiling) beyond " + NUMBER);
  private static final Pattern SHEAR =
      Pattern.compile("shear at " + NUMBER + " on (ground|ceiling)");
  private static final Pattern SURFACE =
      Pattern.compile(
          "surface pressure from " + NUMBER + "," + NUMBER + " to " + NUMBER + "," + NUMBER);
  private static final Pattern LISTED = Pattern.compile("(stageShare|carryOver) ([1-9])");
  private static final Pattern SHARE_AT =
      Pattern.compile("base pressure share at " + NUMBER + "," + NUMBER);
  private static final Pattern GROUND = Pattern.compile("ground pressure at " + NUMBER);
  private static final Pattern DEVIATION = Pattern.compile("deviation of (.+)");
  static final Pattern LINE = Pattern.compile(COMPONENT + " on (x|y)=" + NUMBER);

  private Probes() {}

  private record Simple(String unit, boolean distance, ToDoubleFunction<GridSolution> value)
      implements Probe {
    @Override
    public double of(GridSolution grid) {
      return value.applyAsDouble(grid);
    }
  }

  /**
   * Reads a quantity.
   *
   * @param profiles published profiles of the case
   * @throws IllegalArgumentException when no such quantity is known
   */
  static Probe parse(String text, List<ProfileReference> profiles) {
    for (Figure figure : Figure.values()) {
      if (figure.key().equals(text)) {
        return new Simple(
            figure.unit(),
            false,
            g -> g.run().figures().scalars().getOrDefault(figure, Double.NaN));
      }
    }
    Matcher m = AT.matcher(text);
    if (m.matches()) {
      String c = m.group(1);
      double x = number(m, 2);
      double y = number(m, 3);
      return new Simple(
          unit(c), false, g -> new FieldSampler(g.field()).at(component(g.field(), c), x, y));
    }
    m = EXTREME.matcher(text);
    if (m.matches()) {
      boolean max = m.group(1).equals("max");
      String c = m.group(2);
      boolean alongY = m.group(3).equals("x");
      double at = number(m, 4);
      return new Simple(
          unit(c),
          false,
          g -> Extremes.onLine(g.field(), component(g.field(), c), alongY, at, max));
    }
    m = ZERO.matcher(text);
    if (m.matches()) {
      String c = m.group(1);
      boolean alongY = m.group(2).equals("x");
      double at = number(m, 3);
      double beyond = number(m, 4);
      return new Simple(
          "m",
          false,
          g -> Extremes.zeroOnLine(g.field(), component(g.field(), c), alongY, at, beyond));
    }
    m = PSI.matcher(text);
    if (m.matches()) {
      boolean max = m.group(1).equals("max");
      return new Simple("m2/s", false, g -> Extremes.streamfunction(g.field(), max));
    }
    m = SHEAR_ZERO.matcher(text);
    if (m.matches()) {
      int which = Integer.parseInt(m.group(1));
      boolean ground = m.group(2).equals("ground");
      double beyond = number(m, 3);
      return new Simple("m", false, g -> WallShear.of(g, ground).zero(which, beyond));
    }
    m = SHEAR.matcher(text);
    if (m.matches()) {
      double x = number(m, 1);
      boolean ground = m.group(2).equals("ground");
      return new Simple("Pa", false, g -> WallShear.of(g, ground).at(x));
    }
    return more(text, profiles);
  }

  private static Probe more(String text, List<ProfileReference> profiles) {
    Matcher m = SURFACE.matcher(text);
    if (m.matches()) {
      double[] p = {number(m, 1), number(m, 2), number(m, 3), number(m, 4)};
      return new Simple(
          "Pa", false, g -> SurfacePressure.at(g, p[0], p[1]) - SurfacePressure.at(g, p[2], p[3]));
    }
    m = LISTED.matcher(text);
    if (m.matches()) {
      boolean shares = m.group(1).equals("stageShare");
      int k = Integer.parseInt(m.group(2)) - 1;
      return new Simple(
          "1",
          false,
          g -> {
            RawFigures f = g.run().figures();
            List<Double> list = shares ? f.stageShares() : f.carryOver();
            return k < list.size() ? list.get(k) : Double.NaN;
          });
    }
    if (text.equals("vortex strength")) {
      return new Simple(
          "1",
          false,
          g -> {
            var vortices = g.run().figures().vortices();
            return vortices.isEmpty() ? Double.NaN : vortices.get(0).strength();
          });
    }
    if (text.equals("unbalanced force along x")) {
      return new Simple("N/m", true, g -> Balance.force(g));
    }
    if (text.equals("uneven reattachment")) {
      return new Simple(
          "m",
          true,
          g -> Math.abs(WallShear.of(g, true).zero(1, 0.2) - WallShear.of(g, false).zero(1, 0.2)));
    }
    if (text.equals(BASE_COEFFICIENT)) {
      return new Simple("1", false, BasePressure::coefficient);
    }
    m = SHARE_AT.matcher(text);
    if (m.matches()) {
      double x = number(m, 1);
      double y = number(m, 2);
      return new Simple("1", false, g -> BasePressure.share(g, x, y));
    }
    m = GROUND.matcher(text);
    if (m.matches()) {
      double x = number(m, 1);
      return new Simple("1", false, g -> BasePressure.onGround(g, x));
    }
    m = DEVIATION.matcher(text);
    if (m.matches()) {
      String line = m.group(1);
      for (ProfileReference profile : profiles) {
        if (profile.line().equals(line)) {
          return new Simple(
              unit(lineComponent(line)), true, g -> ProfileCurve.deviation(g.field(), profile));
        }
      }
      throw new IllegalArgumentException("no published profile of " + line + " in this case");
    }
    throw new IllegalArgumentException("a case expects \"" + text + "\", which nothing measures");
  }

  static String lineComponent(String line) {
    Matcher m = LINE.matcher(line);
    if (!m.matches()) {
      throw new IllegalArgumentException("a line reads \"u on x=0.5\", got \"" + line + "\"");
    }
    return m.group(1);
  }

  static double[] component(FlowField field, String name) {
    return switch (name) {
      case "u" -> field.u();
      case "v" -> field.v();
      case "w" -> field.w();
      case "p" -> field.p();
      case "eddyViscosity", "nut" -> field.eddyViscosity();
      default -> throw new IllegalArgumentException("a flow has no component " + name);
    };
  }

  static String unit(String component) {
    return switch (component) {
      case "p" -> "Pa";
      case "eddyViscosity", "nut" -> "m2/s";
      default -> "m/s";
    };
  }

  private static double number(Matcher m, int group) {
    return Double.parseDouble(m.group(group));
  }
}
