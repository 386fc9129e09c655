package hemline.solver.plenum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.SupportPolygon;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Machines of chance: nothing that is told to hold falls in the second computation.
 *
 * <p>{@code -Dhemline.machines=10000} looks at more of them, {@code -Dhemline.machines.table=write}
 * keeps what was counted in {@code validation/holds/machines.csv}.
 */
@Tag("many")
class RandomHoldsTest {
  private static final System.Logger LOG = System.getLogger("hold");
  private static final long SEED = 20_000;
  private static final int USUAL = 40;
  private static final int BLOCK = 250;

  @Test
  void neverHoldsWhatFalls() throws IOException {
    int count = Integer.getInteger("hemline.machines", USUAL);
    boolean writes = "write".equals(System.getProperty("hemline.machines.table"));
    Map<String, SecondLook.Tally> sums = new LinkedHashMap<>();
    List<String> letGo = new ArrayList<>();
    for (int from = 0; from < count; from += BLOCK) {
      int to = Math.min(count, from + BLOCK);
      for (SecondLook look :
          IntStream.range(from, to).parallel().mapToObj(RandomHoldsTest::look).toList()) {
        letGo.addAll(look.letGo());
        look.tallies()
            .forEach((k, t) -> sums.computeIfAbsent(k, n -> new SecondLook.Tally()).add(t));
      }
      if (writes) {
        write(to, sums);
      }
    }
    assertThat(letGo).as("told to hold, and falls").isEmpty();
    int holds = 0;
    for (String place : List.of("level", "slope", "wall", "ceiling", "worst")) {
      holds += sums.get(place).yes;
    }
    assertThat(holds).isGreaterThan(count);
    for (StepCrossing.Kind kind : StepCrossing.Kind.values()) {
      assertThat(sums.get(kind.key()).yes).as(kind.key()).isGreaterThan(count / 4);
    }
  }

  /**
   * Machines on which the two once differed: on the point of being pulled off, where the demand of
   * the leaks leaps (196, 350, 1258), and with the fan all but shut off (414, 946).
   */
  @ParameterizedTest
  @ValueSource(ints = {196, 350, 414, 946, 1258})
  void agreesWhereItOnceDidNot(int number) {
    assertThat(look(number).letGo()).isEmpty();
  }

  /** What leaps is no operating point: machine 350 has none on the ceiling. */
  @Test
  void aLeapIsNoOperatingPoint() {
    Machine m = RandomMachines.of(new SplittableRandom(SEED + 350));
    PlenumBalance balance = new PlenumBalance(m, HoldMachines.laws("lip"));
    HoldStatics statics = new HoldStatics(balance, true);
    for (int t = 0; t <= 180; t += 5) {
      Attitude a = new Attitude(Math.toRadians(t), 0);
      for (PlenumState p : balance.points(statics.stand(a, Side.VALUE))) {
        assertThat(p.demand()).as("%d°", t).isCloseTo(p.flows().fan(), withPercentage(1e-4));
      }
    }
    Hold ceiling =
        new HoldStudy(balance)
            .all().stream()
                .filter(h -> h.place().name().equals("ceiling"))
                .findFirst()
                .orElseThrow();
    assertThat(ceiling.judgement().limitedBy()).isEqualTo("no balance");
  }

  private static SecondLook look(int number) {
    SplittableRandom r = new SplittableRandom(SEED + number);
    Machine m = RandomMachines.of(r);
    SecondLook look = new SecondLook("machine " + number, m, r);
    if (new SupportPolygon(m.running().axles()).restoring(1, m.load().x(), m.load().y()) < 0) {
      return look; // such a file is refused
    }
    PlenumBalance balance = new PlenumBalance(m, HoldMachines.laws("lip"));
    List<Hold> holds = new HoldStudy(balance).all();
    look.holds(holds);
    Bands<PlenumState> rest = Settling.settled(balance, Stand.REST);
    if (rest != null) {
      look.crossings(StepStudy.of(balance, rest, holds));
    }
    look.letGo().forEach(line -> LOG.log(System.Logger.Level.WARNING, line));
    return look;
  }

  private static void write(int count, Map<String, SecondLook.Tally> sums) throws IOException {
    StringBuilder out =
        new StringBuilder("case,date,seed,machines,told,yes,attitudes,let_go,closest_margin\n");
    sums.forEach(
        (name, t) ->
            out.append(
                String.format(
                    Locale.ROOT,
                    "%s,%s,%d,%d,%d,%d,%d,%d,%.4f%n",
                    name,
                    LocalDate.now(ZoneOffset.UTC),
                    SEED,
                    count,
                    t.told,
                    t.yes,
                    t.attitudes,
                    t.letGo,
                    t.closest)));
    Path file = Path.of("..", "validation", "holds", "machines.csv");
    Files.createDirectories(file.getParent());
    Files.writeString(file, out.toString().replace("\r\n", "\n"));
  }
}
