package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Cavity;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Stations;
import hemline.shared.section.DuctSection.Wall;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DuctFileTest {
  private static final String CHANNEL =
      """
      {"schema": "hemline.duct/1", "name": "flat lip in a channel", "lengthUnit": "m",
       "channel": {"from": -10, "to": 40, "height": 8},
       "obstacles": [{"outline": [[0, 8], [0, 1], [4, 1], [4, 8]]}],
       "fluid": {"density": 1, "kinematicViscosity": 0.05},
       "drive": {"leakFlow": 1}, "inlet": "developed",
       "ground": {"speed": 0, "spanwiseSpeed": 0, "frictionless": false},
       "ceiling": {"speed": 0, "frictionless": false},
       "stations": {"upstream": -10, "downstream": 40},
       "referenceGap": 1, "closure": "laminar"}
      """;

  private static final String CAVITY =
      """
      {"schema": "hemline.duct/1", "lengthUnit": "m",
       "channel": {"from": 0, "to": 1, "height": 1},
       "fluid": {"density": 1, "kinematicViscosity": 0.001},
       "walls": {"left": {"speed": 0.5}, "right": {}},
       "ceiling": {"speed": 1}, "closure": "laminar"}
      """;

  @TempDir Path folder;

  @Test
  void readsAChannel() throws InputException {
    DuctSection duct = DuctFile.parse(CHANNEL, "d.json");
    Wall still = new Wall(0, 0, false);
    assertThat(duct)
        .isEqualTo(
            new DuctSection(
                "flat lip in a channel",
                new DuctSection.Channel(-10, 40, 8),
                List.of(
                    new Outline(
                        List.of(
                            new Vertex(0, 8),
                            new Vertex(0, 1),
                            new Vertex(4, 1),
                            new Vertex(4, 8)))),
                new FluidState(1, 0.05),
                new DuctSection.Inflow(new Drive.LeakFlow(1), Inlet.DEVELOPED),
                new DuctSection.Walls(still, still, null),
                new DuctSection.Measures(new Stations(-10, 40), 1),
                "laminar"));
  }

  @Test
  void readsACavity() throws InputException {
    DuctSection duct = DuctFile.parse(CAVITY, "cavity.json");
    assertThat(duct.name()).isEqualTo("cavity.json");
    assertThat(duct.walls().cavity()).isEqualTo(new Cavity(0.5, 0));
    assertThat(duct.drive()).isNull();
    assertThat(duct.inflow().inlet()).isNull();
    assertThat(duct.walls().upper()).isEqualTo(new Wall(1, 0, false));
    assertThat(duct.gap()).isEqualTo(1);
  }

  @Test
  void fillsInDefaultsInMillimetres() throws InputException {
    DuctSection duct =
        DuctFile.parse(
            """
            {"schema": "hemline.duct/1", "channel": {"from": -20, "to": 60, "height": 10},
             "obstacles": [{"outline": [[0, 2], [8, 2], [8, 10], [0, 10]]}],
             "drive": {"pressureDrop": 600}, "notes": "air"}
            """,
            "d.json");
    assertThat(duct.channel().from()).isEqualTo(-0.02);
    assertThat(duct.fluid()).isEqualTo(Air.STANDARD);
    assertThat(duct.drive()).isEqualTo(new Drive.PressureDrop(600));
    assertThat(duct.gap()).isEqualTo(0.002);
    assertThat(duct.measures().stations()).isNull();
    assertThat(duct.closure()).isEqualTo("auto");
    assertThat(duct.walls().lower()).isEqualTo(new Wall(0, 0, false));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"leakFlow\": 1 | \"leakflow\": 1 | line 5, key drive.leakflow | did you mean"
            + " \"leakFlow\"",
        "\"leakFlow\": 1 | \"leakFlow\": 1, \"pressureDrop\": 2 | line 5, key drive | one of the"
            + " two",
        "\"drive\": {\"leakFlow\": 1}, | '' | line 1, key drive | missing",
        "\"height\": 8 | \"height\": 0 | line 2, key channel.height | positive",
        "\"height\": 8 | \"height\": \"8 m\" | line 2, key channel.height | a number",
        "\"to\": 40 | \"to\": -40 | line 2, key channel.to | larger than from",
        "[4, 1] | [4, -1] | line 3, key obstacles[0].outline | beyond the walls",
        "[4, 1] | [4, 0], [3, 1] | line 3, key obstacles[0].outline | no passage",
        "[4, 1] | [-2, 9], [4, 9] | line 3, key obstacles[0].outline | beyond the walls",
        "[4, 8] | [-4, 8] | line 3, key obstacles[0].outline | crosses",
        "\"density\": 1 | \"density\": -1 | line 4, key fluid.density | positive",
        "\"inlet\": \"developed\" | \"inlet\": \"parabolic\" | line 5, key inlet | uniform",
        "\"frictionless\": false | \"frictionless\": 0 | line 6, key ground.frictionless | true or"
            + " false",
        "\"upstream\": -10 | \"upstream\": -11 | line 8, key stations.upstream | outside the"
            + " channel",
        "\"closure\": \"laminar\" | \"closure\": \"les\" | line 9, key closure | auto, laminar",
        "duct/1 | duct/3 | line 1, key schema | newer version",
        "\"drive\": {\"leakFlow\": 1} | \"walls\": {} | line 5, key inlet | closed cavity",
      })
  void namesFileLineAndKey(String from, String to, String place, String hint) {
    String text = CHANNEL.replaceFirst(Pattern.quote(from), to);
    assertThat(text).isNotEqualTo(CHANNEL);
    InputException e =
        catchThrowableOfType(InputException.class, () -> DuctFile.parse(text, "d.json"));
    assertThat(e).as("a problem").isNotNull();
    String all = e.problems().toString();
    assertThat(e.problems())
        .as(all)
        .anySatisfy(
            p -> {
              assertThat(p.place()).isEqualTo("d.json, " + place);
              assertThat(p.text()).contains(hint);
            });
  }

  @Test
  void obstaclesMustNotOverlap() {
    String text = CHANNEL.replace("}],", "}, {\"outline\": [[1, 8], [1, 2], [2, 2], [2, 8]]}],");
    InputException e =
        catchThrowableOfType(InputException.class, () -> DuctFile.parse(text, "d.json"));
    assertThat(e.getMessage()).contains("obstacles[1].outline").contains("overlaps obstacles[0]");
  }

  @Test
  void readsWhatItWrote() throws InputException {
    Path file = folder.resolve("duct.json");
    for (int seed = 0; seed < 300; seed++) {
      DuctSection duct = random(new SplittableRandom(seed));
      String text = DuctFile.text(duct, seed % 2 == 0 ? "" : "notes");
      assertThat(DuctFile.parse(text, "d.json")).as("seed %d", seed).isEqualTo(duct);
      if (seed % 50 == 0) {
        DuctFile.write(file, duct, "notes");
        assertThat(DuctFile.read(file)).as("seed %d", seed).isEqualTo(duct);
      }
    }
  }

  private static DuctSection random(SplittableRandom random) {
    double height = random.nextDouble(0.001, 10);
    double from = random.nextDouble(-10, 0);
    double to = random.nextDouble(1, 10);
    List<Outline> obstacles = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      double y = height * random.nextDouble(0.1, 0.5);
      obstacles.add(
          new Outline(
              List.of(
                  new Vertex(0.2 * i, y, random.nextBoolean() ? 0.2 : 0),
                  new Vertex(0.2 * i + 0.1, y),
                  new Vertex(0.2 * i + 0.1, height),
                  new Vertex(0.2 * i, height))));
    }
    // an arc must stay above the ground
    if (height < 0.2) {
      obstacles.clear();
    }
    int kind = random.nextInt(3);
    Drive drive =
        kind == 0
            ? new Drive.LeakFlow(random.nextDouble(-1, 1))
            : kind == 1 ? new Drive.PressureDrop(random.nextDouble(-1e4, 1e4)) : null;
    boolean stations = drive != null && random.nextBoolean();
    return new DuctSection(
        "duct " + random.nextInt(),
        new DuctSection.Channel(from, to, height),
        obstacles,
        new FluidState(random.nextDouble(0.1, 1000), random.nextDouble(1e-7, 1)),
        new DuctSection.Inflow(
            drive, kind == 0 ? (random.nextBoolean() ? Inlet.DEVELOPED : Inlet.UNIFORM) : null),
        new DuctSection.Walls(
            wall(random),
            wall(random),
            kind == 2 ? new Cavity(random.nextDouble(), random.nextDouble(-1, 0)) : null),
        new DuctSection.Measures(
            stations ? new Stations(from / 2, to / 2) : null, random.nextDouble(1e-4, 1)),
        List.of("auto", "laminar", "sst", "sa").get(random.nextInt(4)));
  }

  private static Wall wall(SplittableRandom random) {
    return new Wall(random.nextDouble(-20, 20), random.nextDouble(-20, 20), random.nextBoolean());
  }

  @Test
  @Tag("many")
  void fuzzedFilesGiveADuctOrProblems() {
    List<String> valid =
        List.of(CHANNEL, CAVITY, DuctFile.text(random(new SplittableRandom(3)), "a note"));
    for (int seed = 0; seed < 4000; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      String text = TextMutation.mutate(valid.get(seed % valid.size()), random);
      try {
        assertThat(DuctFile.parse(text, "f.json")).isNotNull();
      } catch (InputException e) {
        assertThat(e.problems()).as("seed %d", seed).isNotEmpty();
        for (Problem p : e.problems()) {
          assertThat(p.place()).as("seed %d", seed).startsWith("f.json");
        }
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError("seed " + seed + "\n" + text, e);
      }
    }
  }
}
