package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.solver.flow.CancelToken;
import hemline.solver.refine.FamilySolver;
import hemline.viewer.project.InventedLeaks;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BalanceCommandTest {
  private static final Path MACHINES = Path.of("..", "profiles", "machines");
  private static final String CRAWLER = MACHINES.resolve("silo-wall-crawler.json").toString();

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @TempDir Path folder;

  private int run(String... args) {
    return run(new FakeStudies(), args);
  }

  private int run(Studies studies, String... args) {
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false,
            new CancelToken(),
            studies,
            () -> 0L);
    return Commands.execute(desk, file -> {}, args);
  }

  private String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8);
  }

  @Test
  void tellsEverythingWithItsCautions() {
    assertThat(run("balance", CRAWLER)).isEqualTo(ExitCode.DONE);
    assertThat(text(out))
        .contains("silo-wall inspection crawler (invented figures)")
        .contains("settles here")
        .contains("downforce")
        .contains("Ride height and suck-down")
        .contains("Relief valve")
        .contains("ceiling")
        .contains("A dip or a ledge of 2 mm")
        .contains("One change at a time")
        .contains("! A fan can burst")
        .contains("Never carry people on")
        .contains("pinches")
        .contains("licensed practice")
        .doesNotContain("NaN")
        .doesNotContain("Infinity");
    assertThat(text(err)).isEmpty();
  }

  @Test
  void writesTheContractAsJson() throws Exception {
    assertThat(run("balance", CRAWLER, "--json")).isEqualTo(ExitCode.DONE);
    JsonNode d = new ObjectMapper().readTree(text(out));
    assertThat(d.get("schema").asText()).isEqualTo("hemline.balance/1");
    JsonNode point = d.get("operatingPoints").get(0);
    for (String key : List.of("suction", "fanFlow", "leakFlow", "valveFlow", "otherFlow")) {
      figure(point.get(key));
    }
    assertThat(point.get("stable").asBoolean()).isTrue();
    figure(d.get("downforce"));
    for (String key : List.of("floor", "lips", "fanThrust", "valve")) {
      figure(d.get("downforceParts").get(key));
    }
    figure(d.get("centreOfPressure").get("x"));
    figure(d.get("centreOfPressure").get("y"));
    assertThat(d.get("axleLoads")).hasSize(2);
    figure(d.get("gapUnderLoad").get("least"));
    for (String key : List.of("force", "gap", "requiredStiffness")) {
      figure(d.get("suckDownMargin").get(key));
    }
    figure(d.get("valveSetting").get("largestSuction"));
    assertThat(d.get("holds")).hasSize(4);
    assertThat(d.get("worstHold").get("verdict").asText()).isNotEmpty();
    assertThat(d.get("holdOverTilt")).hasSize(25);
    assertThat(d.get("worstHold").get("sensitiveTo").asText()).isEqualTo("fan speed");
    assertThat(d.get("sensitivities").get(0).get("effects").size()).isGreaterThan(15);
    assertThat(d.get("holdEnds").get(0).get("surfaces")).hasSize(3);
    assertThat(d.get("crossings").size()).isGreaterThan(d.get("groundStep").size());
    for (JsonNode hold : d.get("holds")) {
      assertThat(hold.get("case").asText()).isIn("level", "slope", "wall", "ceiling");
      assertThat(hold.has("holds") && hold.has("limitedBy") && hold.has("margin")).isTrue();
    }
    assertThat(d.get("warnings").isArray()).isTrue();
    assertThat(text(out)).doesNotContain("NaN").doesNotContain("Infinity");
  }

  private static void figure(JsonNode e) {
    assertThat(e.get("low").asDouble()).isLessThanOrEqualTo(e.get("value").asDouble());
    assertThat(e.get("high").asDouble()).isGreaterThanOrEqualTo(e.get("value").asDouble());
    assertThat(e.get("unit").asText()).isNotEmpty();
  }

  @Test
  void writesPlotsTablesAndAReport() throws Exception {
    Path to = folder.resolve("crawler");
    int code =
        run(
            "balance",
            CRAWLER,
            "--out",
            to.toString(),
            "--lips",
            Path.of("..", "profiles", "round-nose.json").toString());
    assertThat(code).isEqualTo(ExitCode.DONE);
    for (String name :
        List.of(
            "balance.json",
            "figures.csv",
            "trades.csv",
            "curves.csv",
            "sections.csv",
            "fan-and-leaks.png",
            "fan-and-leaks.svg",
            "downforce.svg",
            "trades.svg",
            "report.html")) {
      assertThat(to.resolve(name)).isNotEmptyFile();
    }
    String html = Files.readString(to.resolve("report.html"));
    assertThat(html.split("data:image/svg", -1)).hasSize(6);
    assertThat(html)
        .contains("class=\"caution\"")
        .doesNotContain("<?xml")
        .doesNotContainPattern("src=\"(?!data:)")
        .doesNotContain("<script")
        .doesNotContain("NaN");
    assertThat(text(out)).contains("Other lips all round");
    String figures = Files.readString(to.resolve("figures.csv"));
    assertThat(figures).startsWith("state,figure,value,low,high,unit\r\n").contains("travel,");
  }

  @Test
  void tellsBadInputInOneSentenceEach() throws Exception {
    assertThat(run("balance")).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run("balance", "none.json")).isEqualTo(ExitCode.BAD_INPUT);
    String bad =
        Files.readString(Path.of(CRAWLER))
            .replace("\"mass\": \"4.6kg\"", "\"mass\": \"-1kg\"")
            .replace(
                "../plain-flat-8.json",
                Path.of("..", "profiles").toAbsolutePath().normalize() + "/plain-flat-8.json")
            .replace(
                "silo-wall-crawler-fan.csv",
                MACHINES.toAbsolutePath().normalize() + "/silo-wall-crawler-fan.csv");
    Path file = folder.resolve("bad.json");
    Files.writeString(file, bad);
    err.reset();
    assertThat(run("balance", file.toString(), "--factor", "0.5", "--mesh", "thick"))
        .isEqualTo(ExitCode.BAD_INPUT);
    assertThat(text(err).lines().toList()).hasSize(3);
    assertThat(text(err)).contains("load.mass").contains("--factor").contains("--mesh");
    assertThat(text(out)).isEmpty();
  }

  /** A machine that does not settle has no answer to give, but says why. */
  @Test
  void saysWhyAMachineDoesNotSettle() throws Exception {
    String soft =
        Files.readString(Path.of(CRAWLER))
            .replace("\"100N/mm\"", "\"5N/mm\"")
            .replace(
                "../plain-flat-8.json",
                Path.of("..", "profiles").toAbsolutePath().normalize() + "/plain-flat-8.json")
            .replace(
                "silo-wall-crawler-fan.csv",
                MACHINES.toAbsolutePath().normalize() + "/silo-wall-crawler-fan.csv");
    Path file = folder.resolve("soft.json");
    Files.writeString(file, soft);
    assertThat(run("balance", file.toString())).isEqualTo(ExitCode.NOT_USABLE);
    assertThat(text(out)).contains("drawn down").contains("It needs at least");
    assertThat(run("balance", file.toString(), "--json", "--out", folder.resolve("o").toString()))
        .isEqualTo(ExitCode.NOT_USABLE);
    assertThat(folder.resolve("o").resolve("report.html")).isNotEmptyFile();
  }

  @Test
  void saysWhereTheCentreOfPressureLies() throws Exception {
    assertThat(run("balance", CRAWLER)).isEqualTo(ExitCode.DONE);
    assertThat(text(out))
        .contains("centre of pressure lies 5 mm ahead of the centre of gravity, between the axles")
        .doesNotContain("lifts the axle");
    out.reset();
    String ahead =
        Files.readString(Path.of(CRAWLER))
            .replace("\"x\": \"150mm\"", "\"x\": \"-4mm\"")
            .replace("\"100N/mm\"", "\"20000N/mm\"")
            .replace("9000Nm/rad", "900000Nm/rad")
            .replace(
                "../plain-flat-8.json",
                Path.of("..", "profiles").toAbsolutePath().normalize() + "/plain-flat-8.json")
            .replace(
                "silo-wall-crawler-fan.csv",
                MACHINES.toAbsolutePath().normalize() + "/silo-wall-crawler-fan.csv");
    Path file = folder.resolve("ahead.json");
    Files.writeString(file, ahead);
    assertThat(run("balance", file.toString())).isEqualTo(ExitCode.DONE);
    assertThat(text(out)).contains("beyond the axles").contains("lifts the axle \"rear\"");
  }

  /** The launcher's first start must leave nothing behind where a section has to be solved. */
  @Test
  void asksToBeStartedAgainBeforeItSolves() throws Exception {
    Studies studies = new SolverStudies(new FamilySolver(), true);
    String keep = folder.resolve("keep").toString();
    String[] command = {"balance", CRAWLER, "--keep", keep};
    assertThat(run(studies, command)).isEqualTo(ExitCode.AGAIN);
    assertThat(run(studies, "balance", CRAWLER, "--solve-anew")).isEqualTo(ExitCode.AGAIN);
    assertThat(text(out)).isEmpty();
    assertThat(text(err)).isEmpty();
    assertThat(folder).isEmptyDirectory();
    assertThat(run(studies, "balance", "none.json")).isEqualTo(ExitCode.BAD_INPUT);

    InventedLeaks.main(new String[] {keep, CRAWLER});
    assertThat(run(studies, command)).as("invented leaks, not asked for").isEqualTo(ExitCode.AGAIN);
    System.setProperty("hemline.rehearsal", "true");
    try {
      assertThat(run(studies, command)).isEqualTo(ExitCode.DONE);
      assertThat(text(out)).contains("settles here");
      assertThat(text(err)).contains("invented leaks");
      try (Stream<Path> kept = Files.walk(Path.of(keep))) {
        Files.delete(kept.filter(Files::isRegularFile).skip(3).findFirst().orElseThrow());
      }
      assertThat(run(studies, command)).isEqualTo(ExitCode.AGAIN);
    } finally {
      System.clearProperty("hemline.rehearsal");
    }
  }
}
