package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.vehicle.Machine;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MachineFileTest {
  private static final Path MACHINES = Path.of("..", "profiles", "machines");

  private static String demo(String name) throws InputException {
    return TextFiles.read(MACHINES.resolve(name + ".json"));
  }

  private static List<Problem> problems(String text) {
    InputException e =
        catchThrowableOfType(
            InputException.class, () -> MachineFile.parse(text, "m.json", MACHINES));
    assertThat(e).as("this should not be read").isNotNull();
    return e.problems();
  }

  @Test
  void readsTheCrawler() throws InputException {
    Machine m = MachineFile.read(MACHINES.resolve("silo-wall-crawler.json"));
    assertThat(m.description().invented()).isTrue();
    assertThat(m.floor().area()).isCloseTo(0.42 * 0.34 - (4 - Math.PI) * 9e-4, within(1e-9));
    assertThat(m.floor().edges()).hasSize(8);
    assertThat(m.floor().edges().get(3).gap()).isEqualTo(2.5e-3);
    assertThat(m.fan().speed()).isCloseTo(400, within(1e-9));
    assertThat(m.fan().curve().points()).hasSize(8);
    assertThat(m.openings().valve()).isNotNull();
    assertThat(m.power().batteryEnergy()).isEqualTo(90 * 3600);
    assertThat(m.running().axles().get(0).stiffness()).isEqualTo(1e5);
  }

  @Test
  void otherValuesAreReadInPlaceOfTheFiles() throws InputException {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("fan.speed", "22000rpm");
    values.put("axles.rear.stiffness", "80N/mm");
    values.put("axles.0.track", "280mm");
    values.put("tyres.peakFriction", "0.8");
    values.put("valve", "");
    values.put("invented", "false");
    Machine m = MachineFile.read(MACHINES.resolve("silo-wall-crawler.json"), values);
    assertThat(m.fan().speed()).isCloseTo(22000 / 60.0, within(1e-9));
    assertThat(m.running().axles()).extracting(a -> a.stiffness()).containsExactly(1e5, 8e4);
    assertThat(m.running().axles()).extracting(a -> a.track()).containsExactly(0.28, 0.3);
    assertThat(m.running().peakFriction()).isEqualTo(0.8);
    assertThat(m.openings().valve()).isNull();
    assertThat(m.description().invented()).isFalse();
    assertThat(m.description().notes()).contains("fan.speed 22000rpm").contains("valve left out");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "fan.sped | 1rpm | key fan.sped, unknown key; did you mean \"speed\"?",
        "fan.speed | 1m | key fan.speed, ",
        "fan.speed | 22000 | key fan.speed, ",
        "fan.speed.now | 1 | key fan.speed.now, there are no keys within a text",
        "axles.middle.x | 1mm | key axles.middle.x, name an entry of this list and a key of it;"
            + " entries are front, rear",
        "axles.7.x | 1mm | key axles.7.x, name an entry",
        "axles.front | 1mm | key axles.front, name an entry",
        "load.mass | heavy | key load.mass, ",
        "fans.speed | 1rpm | key fans, unknown key; did you mean \"fan\"?",
        "'' | 1 | unknown key"
      })
  void otherValuesThatCannotBeAreToldWithoutALine(String key, String value, String told) {
    InputException e =
        catchThrowableOfType(
            InputException.class,
            () -> MachineFile.read(MACHINES.resolve("silo-wall-crawler.json"), Map.of(key, value)));
    assertThat(e).isNotNull();
    Problem problem = e.problems().get(0);
    assertThat(problem.place() + ", " + problem.text()).contains(told).doesNotContain("line 0");
  }

  @Test
  void readsTheCart() throws InputException {
    Machine m = MachineFile.read(MACHINES.resolve("hill-climb-cart.json"));
    assertThat(m.floor().edges().get(0).gap()).isEqualTo(2.4e-3);
    assertThat(m.floor().edges().get(1).gap()).isEqualTo(2.2e-3);
    assertThat(m.floor().edges().get(0).lip().name()).isEqualTo("vortex trap one pocket");
    assertThat(m.openings().valve()).isNull();
  }

  /** Torque over the radius of the wheels: 2.4 N m on 60 mm bear 40 N; without it no limit. */
  @Test
  void readsTheTorqueOfBrakes() throws InputException {
    String text = demo("silo-wall-crawler");
    String old = "\"axles\": [\"front\", \"rear\"], \"hold\": \"parked\"";
    assertThat(text).contains(old);
    String one =
        "\"axles\": [\"rear\"], \"hold\": \"parked\", \"torque\": \"2.4Nm\","
            + " \"wheelRadius\": \"60mm\"";
    Machine m = MachineFile.parse(text.replace(old, one), "m.json", MACHINES);
    assertThat(m.running().axles().get(0).braked()).isFalse();
    assertThat(m.running().axles().get(1).brakeForce()).isCloseTo(40, within(1e-9));
    assertThat(m.running().axles().get(1).holding(false, true)).isCloseTo(40, within(1e-9));
    assertThat(m.running().axles().get(1).holding(false, false)).isZero();
    assertThat(m.running().axles().get(0).holding(true, true)).isInfinite();
    assertThat(m.running().axles().get(0).holding(false, true)).isZero();
    Machine all = MachineFile.parse(text, "m.json", MACHINES);
    assertThat(all.running().axles().get(1).brakeForce()).isInfinite();
  }

  /** The way an outline is drawn does not matter; seals stay with their edges. */
  @Test
  void turnsAClockwiseOutlineRound() throws InputException {
    String drawn =
        demo("hill-climb-cart")
            .replace(
                "[[155, -60], [155, 60], [60, 85], [-155, 85], [-155, -85], [60, -85]]",
                "[[155, 60], [155, -60], [60, -85], [-155, -85], [-155, 85], [60, 85]]");
    Machine m = MachineFile.parse(drawn, "m.json", MACHINES);
    assertThat(m.floor().area()).isPositive();
    for (var piece : m.floor().pieces()) {
      double gap = m.floor().edges().get(piece.edge()).gap();
      assertThat(gap).isEqualTo(piece.outwardX() == 1 ? 2.4e-3 : 2.2e-3);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "name",
        "floor",
        "load",
        "axles",
        "tyres",
        "drive",
        "fan",
        "power",
        "outline",
        "ceilingHeight",
        "lip",
        "gap",
        "mass",
        "height",
        "track",
        "stiffness",
        "peakFriction",
        "slidingFriction",
        "topSpeed",
        "curve",
        "curveSpeed",
        "motorEfficiency",
        "batteryEnergy",
        "seatArea",
        "springRate",
        "preload",
        "maximumLift",
        "area"
      })
  void namesAMissingKey(String key) throws InputException {
    // a misspelt key is unknown, and the right one is missing
    String text = demo("silo-wall-crawler").replace("\"" + key + "\":", "\"" + key + "Q\":");
    assertThat(problems(text))
        .anyMatch(p -> p.code().equals("file.missing") && p.place().endsWith(key))
        .anyMatch(p -> p.code().equals("file.key") && p.place().endsWith(key + "Q"));
  }

  @ParameterizedTest
  @CsvSource({
    "\"mass\": \"4.6kg\", \"mass\": \"-4.6kg\", machine.range",
    "\"mass\": \"4.6kg\", \"mass\": \"4.6\", quantity.unit",
    "\"mass\": \"4.6kg\", \"mass\": \"4.6mm\", quantity.unit",
    "\"mass\": \"4.6kg\", \"mass\": 4.6, file.type",
    "\"mass\": \"4.6kg\", \"mass\": \"9e9kg\", machine.range",
    "\"gap\": \"2.5mm\", \"gap\": \"-2.5mm\", machine.range",
    "\"gap\": \"2.5mm\", \"gap\": \"2.5m\", machine.range",
    "\"gap\": \"2.5mm\", \"gap\": \"31mm\", machine.ceiling",
    "\"name\": \"silo, \"name\": \"\\nsilo, file.text",
    "\"peakFriction\": 0.85, \"peakFriction\": \"much\", file.type",
    "\"altitude\": \"300m\", \"altitude\": \"30km\", quantity.unit",
    "\"altitude\": \"300m\", \"altitude\": \"30000m\", machine.range",
    "\"temperature\": \"15degC\", \"temperature\": \"15\", quantity.unit",
    "\"peakFriction\": 0.85, \"peakFriction\": 85, machine.range",
    "\"slidingFriction\": 0.7, \"slidingFriction\": 0.9, machine.range",
    "\"motorEfficiency\": 0.78, \"motorEfficiency\": 78, machine.range",
    "\"seatArea\": \"3000mm2\", \"seatArea\": \"3000mm\", quantity.unit",
    "\"springRate\": \"0.3N/mm\", \"springRate\": \"0.3N\", quantity.unit",
    "\"maximumSpeed\": \"30000rpm\", \"maximumSpeed\": \"20000rpm\", machine.fanSpeed",
    "\"x\": \"-5mm\", \"x\": \"400mm\", machine.wheels",
    "\"hold\": \"parked\", \"hold\": \"stuck\", machine.brakes",
    "\"hold\": \"parked\", \"torque\": \"2Nm\", machine.brakes",
    "\"hold\": \"parked\", \"wheelRadius\": \"4cm\", machine.brakes",
    "\"curve\": \"silo, \"curve\": \"none, file.read",
    "hemline.machine/1, hemline.machine/2, file.schema",
    "hemline.machine/1, hemline.lip/1, file.schema"
  })
  void refusesBadValues(String good, String bad, String code) throws InputException {
    String text = demo("silo-wall-crawler");
    assertThat(text).contains(good);
    List<Problem> problems = problems(text.replace(good, bad));
    assertThat(problems).hasSize(1);
    assertThat(problems.get(0).code()).isEqualTo(code);
    assertThat(problems.get(0).text()).hasSizeLessThan(300).doesNotContain("\n");
  }

  @Test
  void refusesBadOutlines() throws InputException {
    String text = demo("hill-climb-cart");
    String outline = "[[155, -60], [155, 60], [60, 85], [-155, 85], [-155, -85], [60, -85]]";
    assertThat(problems(text.replace(outline, "[[0, 0], [100, 100], [100, 0], [0, 100]]")))
        .extracting(Problem::code)
        .containsOnly("outline.crossing");
    assertThat(problems(text.replace(outline, "[[0, 0], [1, 0], [1, 1], [0, 1]]")))
        .extracting(Problem::code)
        .containsOnly("machine.range");
    assertThat(problems(text.replace("\"edge\": 0", "\"edge\": 6")))
        .extracting(Problem::code)
        .containsOnly("machine.edges");
  }

  /** Numbers far off are told as people write them, not as 1.0E9. */
  @Test
  void tellsNumbersPlainly() throws InputException {
    String text = demo("hill-climb-cart");
    String outline = "[[155, -60], [155, 60], [60, 85], [-155, 85], [-155, -85], [60, -85]]";
    assertThat(problems(text.replace(outline, "[[0, 0], [0.3, 0], [0.3, 0.4], [0, 0.4]]")))
        .extracting(Problem::text)
        .anyMatch(t -> t.startsWith("encloses 0.0012 cm², but"));
    assertThat(problems(text.replace(outline, "[[0, 0], [3e4, 0], [3e4, 4e4], [0, 4e4]]")))
        .extracting(Problem::text)
        .anyMatch(t -> t.startsWith("encloses 1200 m², but"));
    assertThat(problems(text.replace("\"peakFriction\": 1.0", "\"peakFriction\": 1e9")))
        .extracting(Problem::text)
        .contains("is 1000000000, but grip before slip lies between 0.05 and 3");
  }

  @Test
  void refusesWheelsOnALine() throws InputException {
    String text = demo("hill-climb-cart").replace("\"track\": \"180mm\"", "\"track\": \"0mm\"");
    assertThat(problems(text)).extracting(Problem::code).containsExactly("machine.wheels");
  }

  @Test
  void refusesAMachineThatNothingDrives() throws InputException {
    String text = demo("silo-wall-crawler").replace("\"driven\": true", "\"driven\": false");
    assertThat(problems(text)).extracting(Problem::code).containsExactly("machine.driven");
  }

  @Test
  void tellsEveryProblemAtOnce() throws InputException {
    String text =
        demo("silo-wall-crawler")
            .replace("\"mass\": \"4.6kg\"", "\"mass\": \"4.6\"")
            .replace("\"power\": \"30W\"", "\"power\": \"30N\"")
            .replace("\"area\": \"60mm2\"", "\"area\": \"-60mm2\"");
    assertThat(problems(text)).hasSize(3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "flow, pressure",
        "flow (L/s), static pressure (bananas)",
        "flow (Pa), static pressure (Pa)",
        "0, 1, 2",
        "flow (L/s), static pressure (Pa)~0, x",
        "flow (L/s), static pressure (Pa)~0, 1, 2",
        "flow (L/s), static pressure (Pa)~0, 500~20, 400~10, 100",
        "flow (L/s), static pressure (Pa)~0, 500~20, 300~40, 400",
        "flow (L/s), static pressure (Pa)~5, 500~20, 300~40, 100"
      })
  void refusesBadFanCurves(String lines) {
    InputException e =
        catchThrowableOfType(
            InputException.class, () -> FanCurveFile.parse(lines.replace("~", "\n"), "fan.csv"));
    assertThat(e).isNotNull();
    assertThat(e.problems()).hasSize(1);
    assertThat(e.problems().get(0).text()).doesNotContain("\n").hasSizeLessThan(300);
  }

  @Test
  void readsUnitsOfAFanCurve() throws InputException {
    var points =
        FanCurveFile.parse(
            "# remark\nflow (m3/h), static pressure (inH2O)\n0, 2\n36, 1.5\n72, 0.5\n", "f.csv");
    assertThat(points.get(1).flow()).isCloseTo(0.01, within(1e-12));
    assertThat(points.get(0).staticPressure()).isCloseTo(498.178, within(1e-3));
    assertThat(points.get(0).shaftPower()).isNaN();
  }

  @Test
  void writesChangedValuesAndLeavesAllElseAsItIs(@TempDir Path dir) throws Exception {
    Path from = MACHINES.resolve("silo-wall-crawler.json");
    Map<String, String> changed = new LinkedHashMap<>();
    changed.put("fan.speed", "23000rpm");
    changed.put("axles.0.stiffness", "80N/mm");
    changed.put("fan.y", "3mm");
    changed.put("tyres.peakFriction", "0.9");
    Path to = dir.resolve("mine.json");
    MachineFile.write(from, changed, to);
    Machine machine = MachineFile.read(to);
    assertThat(machine.fan().speed()).isCloseTo(23000 / 60.0, within(1e-9));
    assertThat(machine.fan().outlet().y()).isEqualTo(3e-3);
    assertThat(machine.running().axles().get(0).stiffness()).isEqualTo(80e3);
    assertThat(machine.running().axles().get(1).stiffness()).isEqualTo(100e3);
    assertThat(machine.running().peakFriction()).isEqualTo(0.9);
    Map<String, String> before = MachineFile.values(from);
    Map<String, String> after = MachineFile.values(to);
    before.keySet().removeIf(key -> key.matches("floor.lip|fan.curve"));
    before.putAll(changed);
    assertThat(after).containsAllEntriesOf(before);
    assertThat(
            catchThrowableOfType(
                InputException.class,
                () -> MachineFile.write(from, Map.of("fan.speed", "31000rpm"), to)))
        .isNotNull();
    assertThat(MachineFile.values(to)).isEqualTo(after);
  }

  /** What reading takes away or takes as a text, writing does too. */
  @Test
  void writesTheMachineThatWouldBeRead(@TempDir Path dir) throws Exception {
    Path from = MACHINES.resolve("silo-wall-crawler.json");
    Map<String, String> changed = new LinkedHashMap<>();
    changed.put("name", "17");
    changed.put("valve", "");
    changed.put("groundStep", "");
    changed.put("fan.rotorInertia", "");
    changed.put("fan.curveDensity", "");
    changed.put("fan.efficiency", "");
    changed.put("invented", "false");
    Path to = dir.resolve("mine.json");
    MachineFile.write(from, changed, to);
    Machine read = MachineFile.read(from, changed);
    Machine written = MachineFile.read(to);
    assertThat(written.description().name()).isEqualTo("17").isEqualTo(read.description().name());
    assertThat(written.openings().valve()).isNull();
    assertThat(written.description().invented()).isFalse();
    assertThat(written.fan().rotorInertia()).isEqualTo(read.fan().rotorInertia());
    assertThat(written.floor().area()).isEqualTo(read.floor().area());
    assertThat(MachineFile.values(to))
        .doesNotContainKeys("valve.seatArea", "groundStep.height", "fan.rotorInertia");
  }
}
