package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.vehicle.Machine;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The hold against a second computation that shares no formula with it. */
class HoldAgainstStaticsTest {
  private static final double AGREED = 0.05;

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

  /** The demonstration machines with the sections that were solved for them. */
  @ParameterizedTest
  @CsvSource({"silo-wall-crawler, crawler", "hill-climb-cart, cart"})
  void agreesOnTheDemonstrationWithItsSections(String file, String table)
      throws InputException, IOException {
    Machine m = MachineFile.read(Path.of("..", "profiles", "machines", file + ".json"));
    LeakLaw law = KeptSections.law(table + "-sections.csv");
    String lip = m.floor().edges().get(0).lip().name();
    HoldSearch search =
        HoldSearch.whole(new HoldStatics(new PlenumBalance(m, Map.of(lip, law)), true));
    SecondStatics second =
        new SecondStatics(
            m,
            (h, p) -> law.discharge(Math.log(h), Math.log(p), false, 0, Side.VALUE),
            (h, p) -> law.lift(Math.log(h), Math.log(p), false, 0, Side.VALUE));
    int compared = 0;
    for (int t = 0; t <= 180; t += 15) {
      for (int h = 0; h < 360; h += 45) {
        compared += compare(file, m, search, second, t, h);
      }
    }
    assertThat(compared).isEqualTo(13 * 8);
  }

  /** The kinds are what their names say: close to the fold, with the valve open. */
  @Test
  void kindsAreWhatTheirNamesSay() {
    Machine soft = Objects.requireNonNull(HoldMachines.kinds().get("soft"));
    RideHeight height = HeightStability.of(balance(soft), Stand.REST);
    assertThat(Objects.requireNonNull(height.heave().factor()).value()).isBetween(1.0, 1.35);
    Machine open = Objects.requireNonNull(HoldMachines.kinds().get("valve open"));
    PlenumState s = Machines.settled(balance(open));
    assertThat(s.flows().valve()).isGreaterThan(0.05 * s.flows().fan());
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
    assertThat(f.margins().sliding()).as("sliding of %s", at).satisfies(close(second.sliding(s)));
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
                if (h.place().name().equals("wall") && h.margins().least() != null) {
                  double least = Double.POSITIVE_INFINITY;
                  for (int d = 0; d < 360; d += 15) {
                    SecondStatics.Found s =
                        second.settle(0.5 * Math.PI, Math.toRadians(d), null, null);
                    least = Math.min(least, s == null ? 0 : second.slip(s));
                  }
                  assertThat(Objects.requireNonNull(h.margins().slip()).value())
                      .as(name)
                      .isLessThan(1.002 * least);
                }
              }
            });
  }
}
