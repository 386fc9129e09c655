package hemline.validation.exact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The formulas against the equations they solve and against what is known of them. */
class PlaneFlowTest {
  private static final long SEED = 20261125;
  private static final double H = 1e-3;

  /** A place inside a flow. */
  private record Place(double x, double y) {}

  private static Place inside(PlaneFlow flow, SplittableRandom random) {
    if (flow instanceof JefferyHamel) {
      double r = random.nextDouble(1, 2);
      double angle = random.nextDouble(-0.15, 0.15);
      return new Place(r * Math.cos(angle), r * Math.sin(angle));
    }
    if (flow instanceof Wannier) {
      double angle = random.nextDouble(0, 2 * Math.PI);
      double r = random.nextDouble(1.05, 1.4);
      return new Place(r * Math.cos(angle), 1.5 + r * Math.sin(angle));
    }
    return new Place(random.nextDouble(-0.4, 0.4), random.nextDouble(-0.4, 0.4));
  }

  private static final List<PlaneFlow> FLOWS =
      List.of(
          new Kovasznay(40),
          new SlantedChannel(Math.toRadians(20), 0.05),
          new JefferyHamel(Math.toRadians(10), -50, -0.644412277),
          new JefferyHamel(Math.toRadians(10), 100, -12.19291529),
          new Wannier(1, 1.5));

  @Test
  void velocityIsTheSlopeOfTheStreamfunction() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (PlaneFlow flow : FLOWS) {
      for (int k = 0; k < 20; k++) {
        Place p = inside(flow, random);
        String what = flow.getClass().getSimpleName() + " at " + p + ", seed " + SEED;
        double u = slopeY(flow::streamfunction, p);
        double v = -slopeX(flow::streamfunction, p);
        assertThat(flow.u(p.x, p.y)).as(what).isCloseTo(u, within(2e-5));
        assertThat(flow.v(p.x, p.y)).as(what).isCloseTo(v, within(2e-5));
      }
    }
  }

  @Test
  void momentumIsInBalance() {
    SplittableRandom random = new SplittableRandom(SEED);
    double[] viscosity = {1.0 / 40, 0.05, Math.toRadians(10) / 50, Math.toRadians(10) / 100};
    for (int f = 0; f < viscosity.length; f++) {
      PlaneFlow flow = FLOWS.get(f);
      for (int k = 0; k < 20; k++) {
        Place p = inside(flow, random);
        String what = flow.getClass().getSimpleName() + " at " + p + ", seed " + SEED;
        double u = flow.u(p.x, p.y);
        double v = flow.v(p.x, p.y);
        double x =
            u * slopeX(flow::u, p)
                + v * slopeY(flow::u, p)
                + slopeX(flow::pressure, p)
                - viscosity[f] * laplacian(flow::u, p);
        double y =
            u * slopeX(flow::v, p)
                + v * slopeY(flow::v, p)
                + slopeY(flow::pressure, p)
                - viscosity[f] * laplacian(flow::v, p);
        assertThat(x).as(what).isCloseTo(0, within(2e-3));
        assertThat(y).as(what).isCloseTo(0, within(2e-3));
      }
    }
  }

  @Test
  void theWedgeEndsAtItsWalls() {
    double[][] known = {{-50, -0.644412277}, {50, -5.910438904}, {100, -12.19291529}};
    for (double[] k : known) {
      assertThat(new JefferyHamel(Math.toRadians(10), k[0], k[1]).missOnWall())
          .isCloseTo(0, within(1e-8));
    }
  }

  @Test
  void nothingSlipsUnderTheCylinder() {
    Wannier flow = new Wannier(1, 1.5);
    for (int k = 0; k < 50; k++) {
      double angle = 0.1 + k;
      double x = Math.cos(angle);
      double y = 1.5 + Math.sin(angle);
      assertThat(flow.u(x, y)).isCloseTo(0, within(1e-11));
      assertThat(flow.v(x, y)).isCloseTo(0, within(1e-11));
      assertThat(flow.u(k - 25, 0)).isCloseTo(1, within(1e-12));
      assertThat(flow.v(k - 25, 0)).isZero();
    }
    // rows of an independent evaluation of the closed form
    assertThat(flow.u(0, 0.25)).isCloseTo(0.7590336816, within(1e-9));
    assertThat(flow.u(0.5, 4)).isCloseTo(0.622196273, within(1e-9));
    assertThat(flow.v(0.5, 4)).isCloseTo(-0.1198244562, within(1e-9));
    assertThat(flow.force()).isCloseTo(13.05700521, within(1e-8));
  }

  @Test
  void dyingTurbulenceObeysItsEquations() {
    DecayingTurbulence flow = new DecayingTurbulence(1e-4, 20);
    for (double x : new double[] {0.1, 0.7, 1.9}) {
      double dk = (flow.k(x + H) - flow.k(x - H)) / (2 * H);
      double dw = (flow.omega(x + H) - flow.omega(x - H)) / (2 * H);
      assertThat(dk).isCloseTo(-0.09 * flow.k(x) * flow.omega(x), within(1e-8));
      assertThat(dw).isCloseTo(-0.0828 * flow.omega(x) * flow.omega(x), within(1e-3));
    }
  }

  private interface Field {
    double at(double x, double y);
  }

  private static double slopeX(Field f, Place p) {
    double near = f.at(p.x + H, p.y) - f.at(p.x - H, p.y);
    double far = f.at(p.x + 2 * H, p.y) - f.at(p.x - 2 * H, p.y);
    return (8 * near - far) / (12 * H);
  }

  private static double slopeY(Field f, Place p) {
    double near = f.at(p.x, p.y + H) - f.at(p.x, p.y - H);
    double far = f.at(p.x, p.y + 2 * H) - f.at(p.x, p.y - 2 * H);
    return (8 * near - far) / (12 * H);
  }

  private static double laplacian(Field f, Place p) {
    return (f.at(p.x + H, p.y)
            + f.at(p.x - H, p.y)
            + f.at(p.x, p.y + H)
            + f.at(p.x, p.y - H)
            - 4 * f.at(p.x, p.y))
        / (H * H);
  }
}
