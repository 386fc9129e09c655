package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The hold against a second computation that shares no formula with it. */
class HoldAgainstStaticsTest {
  private static final double AGREED = 0.2;

  private static Map<String, Machine> machines() throws InputException {
    Map<String, Machine> all = new LinkedHashMap<>(HoldMachines.kinds());
    for (String name : List.of("silo-wall-crawler", "hill-climb-cart")) {
      all.put(name, MachineFile.read(Path.of("..", "profiles", "machines", name + ".json")));
    }
    return all;
  }

  private static PlenumBalance balance(Machine m) {
    return new PlenumBalance(
        m,
        HoldMachines.laws(
            m.floor().edges().stream().map(e -> e.lip().name()).toArray(String[]::new)));
  }

  /** Suction, downforce and every margin within 0.2 % over tilts and headings. */
  @Test
  void agreesOnMachinesOfAllKinds() throws InputException {
    machines()
        .forEach(
            (name, m) -> {
              HoldSearch search = HoldSearch.whole(new HoldStatics(balance(m), true));
              SecondStatics second =
                  new SecondStatics(m, HoldMachines::discharge, HoldMachines.LIFT);
              int compared = 0;
              for (int t = 0; t <= 180; t += 30) {
                for (int h = 10; h < 360; h += 60) {
                  compared += compare(name, m, search, second, t, h);
                }
              }
              assertThat(compared).as(name).isGreaterThan(15);
            });
  }

  private static int compare(
      String name, Machine m, HoldSearch search, SecondStatics second, int tilt, int heading) {
    double t = Math.toRadians(tilt);
    double d = Math.toRadians(heading);
    HoldSearch.Found f = search.found(new Attitude(t, d), null);
    SecondStatics.Found s = second.settle(t, d, null, null);
    String at = name + " at " + tilt + "°, downhill " + heading + "°";
    if (f.state() == null || s == null || f.margins().tip() < 1) {
      return 0;
    }
    assertThat(f.state().suction()).as(at).isCloseTo(s.suction(), withPercentage(AGREED));
    assertThat(f.state().parts().sum()).as(at).isCloseTo(s.down(), withPercentage(AGREED));
    assertThat(f.margins().slip()).as("slip of %s", at).satisfies(close(second.slip(s)));
    assertThat(f.margins().tip()).as("tip of %s", at).satisfies(close(second.tip(s, t, d)));
    assertThat(f.margins().lift()).as("lift of %s", at).satisfies(close(second.lift(s, t, d)));
    double away = -m.load().mass() * SecondStatics.G * Math.cos(t);
    if (away > 1e-6) {
      assertThat(f.margins().peel()).as(at).isCloseTo(s.down() / away, withPercentage(AGREED));
    }
    return 1;
  }

  private static java.util.function.Consumer<Double> close(double expected) {
    return v -> {
      if (expected < 999 || v < 999) {
        assertThat(v).isCloseTo(expected, withPercentage(AGREED));
      }
    };
  }

  /** The worst heading of each case is no better than any of a dense fan of headings. */
  @Test
  void findsTheWorstHeading() throws InputException {
    machines()
        .forEach(
            (name, m) -> {
              SecondStatics second =
                  new SecondStatics(m, HoldMachines::discharge, HoldMachines.LIFT);
              for (Hold h : new HoldStudy(balance(m)).all()) {
                if (h.place().equals("wall") && h.margin() != null) {
                  double least = Double.POSITIVE_INFINITY;
                  for (int d = 0; d < 360; d += 15) {
                    SecondStatics.Found s =
                        second.settle(0.5 * Math.PI, Math.toRadians(d), null, null);
                    least = Math.min(least, s == null ? 0 : second.slip(s));
                  }
                  assertThat(Objects.requireNonNull(h.slip()).value())
                      .as(name)
                      .isLessThan(1.002 * least);
                }
              }
            });
  }

  /**
   * Machines of chance: what is told to hold is held by the second computation too, for headings of
   * chance, and over every tilt where the worst of all is told to hold.
   */
  @Test
  void neverHoldsWhatFalls() {
    int count = Integer.getInteger("hemline.machines", 40);
    List<int[]> told =
        IntStream.range(0, count).parallel().mapToObj(HoldAgainstStaticsTest::check).toList();
    int holds = told.stream().mapToInt(t -> t[0]).sum();
    int dips = told.stream().mapToInt(t -> t[1]).sum();
    System.getLogger("hold").log(System.Logger.Level.INFO, "{0} holds, {1} over dips", holds, dips);
    assertThat(holds).isGreaterThan(count);
    assertThat(dips).isGreaterThan(count / 2);
  }

  private static int[] check(int number) {
    SplittableRandom r = new SplittableRandom(20_000L + number);
    Machine m = HoldMachines.random(r);
    if (new hemline.shared.vehicle.SupportPolygon(m.running().axles())
            .restoring(1, m.load().x(), m.load().y())
        < 0) {
      return new int[2];
    }
    PlenumBalance balance = balance(m);
    SecondStatics second = new SecondStatics(m, HoldMachines::discharge, HoldMachines.LIFT);
    int[] told = new int[2];
    List<Hold> holds = new HoldStudy(balance).all();
    for (Hold h : holds) {
      if (h.holds()) {
        told[0]++;
        for (int k = 0; k < 2; k++) {
          double tilt = h.place().equals("worst") ? Math.PI * r.nextDouble() : h.angle();
          double d = 2 * Math.PI * r.nextDouble();
          falls(second, tilt, d, null, null, "machine " + number + ", " + h.place());
        }
        double worst = Math.PI - h.noseAngle();
        falls(second, h.angle(), worst, null, null, "machine " + number + ", " + h.place());
      }
    }
    Bands<PlenumState> rest = Settling.settled(balance, Stand.REST);
    if (rest != null) {
      for (StepCrossing c : StepStudy.of(balance, rest, holds)) {
        for (Hold h : c.holds()) {
          if (h.holds() && r.nextInt(6) == 0) {
            told[1]++;
            over(second, m, r, c, h, number);
          }
        }
      }
    }
    return told;
  }

  private static void over(
      SecondStatics second, Machine m, SplittableRandom r, StepCrossing c, Hold h, int number) {
    GroundStep step = Objects.requireNonNull(m.step());
    boolean corner = c.kind() == StepCrossing.Kind.CORNER;
    int n = m.floor().edges().size();
    int vertex = -1;
    if (corner) {
      vertex = c.edges().get(1);
      if (c.edges().get(0) == 0 && c.edges().get(1) == n - 1 && n > 2) {
        vertex = 0;
      }
    }
    SecondStatics.Dip dip =
        new SecondStatics.Dip(
            c.kind() == StepCrossing.Kind.LEDGE ? -step.height() : step.height(),
            corner ? 0.5 * step.length() : step.length(),
            c.edges(),
            vertex);
    double d = 2 * Math.PI * r.nextDouble();
    String at = "machine " + number + ", " + h.place() + " over a " + c.kind() + " " + c.edges();
    SecondStatics.Found before = second.settle(h.angle(), d, null, null);
    assertThat(before).as(at).isNotNull();
    falls(second, h.angle(), d, dip, Objects.requireNonNull(before).plane(), at);
    falls(second, h.angle(), d, dip, null, at);
  }

  private static void falls(
      SecondStatics second,
      double tilt,
      double downhill,
      SecondStatics.Dip dip,
      double[] keep,
      String at) {
    assertThat(second.letsGo(tilt, downhill, dip, keep))
        .as("%s, %.2f°, downhill %.2f°", at, Math.toDegrees(tilt), Math.toDegrees(downhill))
        .isFalse();
  }
}
