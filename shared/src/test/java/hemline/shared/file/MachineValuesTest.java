package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.PowerSupply;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.SealEdge;
import hemline.shared.vehicle.Tolerances;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A machine file number by number, its defaults, and seals edge by edge. */
class MachineValuesTest {
  private static final Path MACHINES = Path.of("..", "profiles", "machines");
  private static final double RPM = 1.0 / 60;

  @TempDir Path dir;

  private static String crawler() throws InputException {
    return TextFiles.read(MACHINES.resolve("silo-wall-crawler.json"));
  }

  private static Machine machine(String text) throws InputException {
    return MachineFile.parse(text, "m.json", MACHINES);
  }

  private static List<Problem> problems(String text, Path folder) {
    InputException e =
        catchThrowableOfType(InputException.class, () -> MachineFile.parse(text, "m.json", folder));
    assertThat(e).isNotNull();
    return e.problems();
  }

  @Test
  void everyNumberOfTheCrawler() throws InputException {
    Machine m = machine(crawler());
    assertThat(m.description().name()).isEqualTo("silo-wall inspection crawler");
    assertThat(m.description().notes()).startsWith("Carries a camera");
    assertThat(m.description().invented()).isTrue();
    assertThat(m.duty().air().temperature()).isCloseTo(288.15, within(1e-9));
    assertThat(m.duty().air().altitude()).isEqualTo(300);
    assertThat(m.duty().travelSpeed()).isEqualTo(0.2);
    assertThat(m.duty().slope()).isCloseTo(Math.PI / 4, within(1e-12));
    assertThat(m.floor().ceilingHeight()).isEqualTo(0.03);
    assertThat(m.load()).isEqualTo(new Load(4.6, -5e-3, 0, 45e-3));
    assertThat(m.running().axles())
        .containsExactly(
            new Axle("front", 0.15, 0.3, 1e5, true).withBrake(Double.POSITIVE_INFINITY),
            new Axle("rear", -0.15, 0.3, 1e5, true).withBrake(Double.POSITIVE_INFINITY));
    assertThat(m.running().heaveStiffness()).isEqualTo(4e5);
    assertThat(m.running().pitchStiffness()).isEqualTo(9000);
    assertThat(m.running().peakFriction()).isEqualTo(0.85);
    assertThat(m.running().slidingFriction()).isEqualTo(0.7);
    assertThat(m.running().drivePower()).isEqualTo(30);
    assertThat(m.running().topSpeed()).isEqualTo(0.4);
    assertThat(m.duty().terms().parked()).isTrue();
    assertThat(m.duty().terms().safetyFactor()).isEqualTo(1);
    assertThat(m.duty().terms().contactAllowance()).isEqualTo(1e-4);
    assertThat(m.duty().terms().tolerances()).isEqualTo(new Tolerances(0.1, 0.05, 0.02, 1e-4));
    assertThat(m.fan().curve().speed()).isCloseTo(24000 * RPM, within(1e-9));
    assertThat(m.fan().curve().density()).isEqualTo(1.2);
    assertThat(m.fan().maximumSpeed()).isCloseTo(30000 * RPM, within(1e-9));
    assertThat(m.fan().outlet().area()).isCloseTo(6e-3, within(1e-12));
    assertThat(m.fan().outlet().angle()).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(m.fan().rotorInertia()).isCloseTo(2.2e-5, within(1e-15));
    assertThat(m.power()).isEqualTo(new PowerSupply(0.78, 180, 90 * 3600, 0.8, 250, 22.2, 0.75));
    assertThat(m.openings().valve())
        .isEqualTo(new ReliefValve(3e-3, 300, 2.2, 0.016, 0.62, 0.018, 0.15));
    assertThat(m.openings().leaks()).containsExactly(new OtherLeak("cable hole", 6e-5, 0.62));
    assertThat(m.duty().step()).isEqualTo(new GroundStep(2e-3, 0.06));
  }

  /** What may be left out, and what then counts. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"slope\": \"45deg\",|slope",
        "\"travelSpeed\": \"0.2m/s\",|travel",
        "\"air\": {\"temperature\": \"15degC\", \"altitude\": \"300m\"},|air",
        "\"usableShare\": 0.8,|share",
        ", \"efficiency\": 0.75|drive",
        "\"brakes\": {\"axles\": [\"front\", \"rear\"], \"hold\": \"parked\"},|brakes",
        ", \"otherLeaks\": [{\"name\": \"cable hole\", \"area\": \"60mm2\"}]|leaks",
        "\"motorPower\": \"180W\",|motor"
      })
  void whatIsLeftOut(String part, String what) throws InputException {
    String text = crawler().replaceAll("\\s+", " ").replace(" ,", ",");
    assertThat(text).contains(part);
    Machine m = machine(text.replace(part, ""));
    switch (what) {
      case "slope" -> assertThat(m.duty().slope()).isCloseTo(Math.PI / 6, within(1e-12));
      case "travel" -> assertThat(m.duty().travelSpeed()).isZero();
      case "air" -> {
        assertThat(m.duty().air().temperature()).isCloseTo(288.15, within(1e-9));
        assertThat(m.duty().air().altitude()).isZero();
      }
      case "share" -> assertThat(m.power().usableShare()).isEqualTo(0.8);
      case "drive" -> assertThat(m.power().driveEfficiency()).isEqualTo(0.7);
      case "brakes" -> {
        assertThat(m.duty().terms().parked()).isFalse();
        assertThat(m.running().axles()).noneMatch(Axle::braked);
      }
      case "leaks" -> assertThat(m.openings().leaks()).isEmpty();
      default -> assertThat(m.power().motorPower()).isInfinite();
    }
  }

  private static final String LIP =
      """
      {"schema": "hemline.lip/1", "name": "%s",
       "outline": [[0, 0], [%d, 0], [%d, 10], [0, 10]], "mountEdge": 2}
      """;

  private String square(String seal) throws Exception {
    Files.writeString(dir.resolve("one.json"), LIP.formatted("one", 8, 8));
    Files.writeString(dir.resolve("two.json"), LIP.formatted("two", 6, 6));
    Files.writeString(dir.resolve("twin.json"), LIP.formatted("one", 5, 5));
    Files.copy(
        MACHINES.resolve("silo-wall-crawler-fan.csv"), dir.resolve("silo-wall-crawler-fan.csv"));
    String text = crawler();
    int from = text.indexOf("\"floor\"");
    return text.substring(0, from)
        + "\"floor\": {\"lengthUnit\": \"mm\", \"outline\": [[200, -200], [200, 200], [-200, 200],"
        + " [-200, -200]], \"ceilingHeight\": \"30mm\", "
        + seal
        + "},\n  "
        + text.substring(text.indexOf("\"load\""));
  }

  private static String edge(int number, String lip, String gap) {
    return "{\"edge\": " + number + ", \"lip\": \"" + lip + "\", \"gap\": \"" + gap + "\"}";
  }

  private static String edges(String... all) {
    return "\"edges\": [" + String.join(", ", all) + "]";
  }

  /** Every edge may name its own lip and gap; no usual one is then needed. */
  @Test
  void sealsEdgeByEdge() throws Exception {
    String text =
        square(
            edges(
                edge(2, "one.json", "3mm"),
                edge(0, "one.json", "1mm"),
                edge(1, "two.json", "2mm"),
                edge(3, "two.json", "4mm")));
    Machine m = MachineFile.parse(text, "m.json", dir);
    assertThat(m.floor().edges()).extracting(SealEdge::gap).containsExactly(1e-3, 2e-3, 3e-3, 4e-3);
    assertThat(m.floor().edges())
        .extracting(e -> e.lip().name())
        .containsExactly("one", "two", "one", "two");
  }

  @Test
  void theUsualSealFillsTheRest() throws Exception {
    Machine m =
        MachineFile.parse(
            square(
                "\"lip\": \"one.json\", \"gap\": \"2mm\", "
                    + edges(
                        "{\"edge\": 1, \"gap\": \"5mm\"}", "{\"edge\": 3, \"lip\": \"two.json\"}")),
            "m.json",
            dir);
    assertThat(m.floor().edges()).extracting(SealEdge::gap).containsExactly(2e-3, 5e-3, 2e-3, 2e-3);
    assertThat(m.floor().edges())
        .extracting(e -> e.lip().name())
        .containsExactly("one", "one", "one", "two");
  }

  @Test
  void sealsThatDoNotGoRound() throws Exception {
    String three =
        edges(edge(0, "one.json", "1mm"), edge(1, "one.json", "1mm"), edge(2, "one.json", "1mm"));
    assertThat(problems(square(three), dir))
        .extracting(Problem::code)
        .containsExactly("file.missing", "file.missing");
    Files.delete(dir.resolve("silo-wall-crawler-fan.csv"));
    String twice =
        "\"lip\": \"one.json\", \"gap\": \"1mm\", "
            + edges(edge(0, "one.json", "1mm"), edge(0, "one.json", "1mm"));
    assertThat(problems(square(twice), dir))
        .singleElement()
        .satisfies(p -> assertThat(p.text()).isEqualTo("edge 0 is described twice; keep one"));
    Files.delete(dir.resolve("silo-wall-crawler-fan.csv"));
    String names = "\"lip\": \"one.json\", \"gap\": \"1mm\", " + edges(edge(1, "twin.json", "1mm"));
    assertThat(problems(square(names), dir))
        .singleElement()
        .satisfies(p -> assertThat(p.text()).startsWith("two lip files carry the name \"one\""));
    Files.delete(dir.resolve("silo-wall-crawler-fan.csv"));
    String ceiling = "\"lip\": \"one.json\", \"gap\": \"30mm\"";
    assertThat(problems(square(ceiling), dir))
        .singleElement()
        .satisfies(
            p ->
                assertThat(p.text())
                    .startsWith("is 30 mm, no more than the gap of 30 mm under a lip"));
  }

  @Test
  void namesAndBrakesThatAreNone() throws InputException {
    String text = crawler();
    assertThat(problems(text.replace("\"silo-wall inspection crawler\"", "\" \""), MACHINES))
        .extracting(Problem::code)
        .containsExactly("machine.name");
    assertThat(problems(text.replace("[\"front\", \"rear\"]", "[\"front\", \"middle\"]"), MACHINES))
        .singleElement()
        .satisfies(
            p ->
                assertThat(p.text())
                    .isEqualTo("\"middle\" is no axle; the axles are \"front\", \"rear\""));
    assertThat(problems(text.replace("[\"front\", \"rear\"]", "[\"front\", 3]"), MACHINES))
        .singleElement()
        .satisfies(p -> assertThat(p.text()).startsWith("a number is no axle"));
  }

  /** One sentence each, at the key that is wrong. */
  @Test
  void noAxlesAndNoFanCurve() throws InputException {
    String text = crawler();
    assertThat(
            problems(
                text.replaceAll("(?s)\"axles\": \\[\\s*\\{.*?\\}\\s*\\]", "\"axles\": []"),
                MACHINES))
        .singleElement()
        .satisfies(p -> assertThat(p.place()).endsWith("key axles"))
        .satisfies(p -> assertThat(p.text()).startsWith("there is none"));
    assertThat(problems(text.replace("silo-wall-crawler-fan.csv", "none.csv"), MACHINES))
        .singleElement()
        .satisfies(p -> assertThat(p.place()).endsWith("key fan.curve"))
        .satisfies(p -> assertThat(p.text()).contains("none.csv: there is no such file"));
  }
}
