package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LipFileTest {
  private static final String GOOD =
      """
      {
        "schema": "hemline.lip/1",
        "name": "flat",
        "outline": [
          [0, 0],
          [8, 0],
          [8, 10],
          [0, 10]
        ],
        "mountEdge": 2
      }
      """;

  @TempDir Path folder;

  @Test
  void readsAPlainLip() throws InputException {
    LoadedLip lip = LipFile.load(GOOD, "flat.json");
    assertThat(lip.profile().name()).isEqualTo("flat");
    assertThat(lip.profile().mountEdge()).isEqualTo(2);
    assertThat(lip.profile().outline().vertices().get(2)).isEqualTo(new Vertex(0.008, 0.01));
    assertThat(lip.notices()).isEmpty();
  }

  @Test
  void findsTheMountEdgeAtTheTop() throws InputException {
    assertThat(LipFile.load(GOOD.replace("],\n  \"mountEdge\": 2", "]"), "f").drawing().mountEdge())
        .isEqualTo(2);
  }

  @Test
  void readsMetres() throws InputException {
    String text =
        """
        {"schema": "hemline.lip/1", "name": "flat", "lengthUnit": "m",
         "outline": [[0, 0], [0.008, 0], [0.008, 0.01], [0, 0.01]]}
        """;
    assertThat(LipFile.load(text, "f").profile().outline())
        .isEqualTo(LipFile.load(GOOD, "f").profile().outline());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"name\": \"flat\" | \"nmae\": \"flat\" | f.json, line 3, key nmae | did you mean"
            + " \"name\"",
        "\"name\": \"flat\", | '' | f.json, line 1, key name | missing",
        "\"mountEdge\": 2 | \"mountEdge\": \"top\" | f.json, line 10, key mountEdge | a text",
        "hemline.lip/1 | hemline.lip/2 | f.json, line 2, key schema | newer version",
        "hemline.lip/1 | hemline.duct/1 | f.json, line 2, key schema | hemline.lip/1",
        "[8, 10] | [8, 10, 0, 0] | f.json, line 7, key outline[2] | [x, y, bulge]",
        "[8, 10] | [8, true] | f.json, line 7, key outline[2] | a number",
        "[8, 10] | [8, 1e999] | f.json, line 7, key outline[2] | too large",
        "[8, 10], | [8, 10] | f.json, line 8 | not sound JSON",
        "\"mountEdge\": 2 | \"mountEdge\": 7 | f.json, line 10, key mountEdge | numbered 0 to 3",
        "\"mountEdge\": 2 | \"mountEdge\": 0 | f.json, line 10, key mountEdge | bottom",
        "[8, 10], | [8, 10], [8, 10], | f.json, line 4, key outline | no length",
        "\"mountEdge\": 2 | \"lengthUnit\": \"ft\" | f.json, line 10, key lengthUnit | \"mm\" or"
            + " \"m\"",
      })
  void namesFileLineAndKey(String from, String to, String place, String hint) {
    String text = GOOD.replaceFirst(java.util.regex.Pattern.quote(from), to);
    assertThat(text).isNotEqualTo(GOOD);
    InputException e =
        catchThrowableOfType(InputException.class, () -> LipFile.load(text, "f.json"));
    assertThat(e.problems().get(0).place()).isEqualTo(place);
    assertThat(e.problems().get(0).text()).contains(hint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"name\": \"flat\" | the file ends before the last bracket, brace or quote is closed",
        "{\"name\": \"fl | the file ends before the last bracket, brace or quote is closed",
        "{\"outline\": [[0, NaN]]} | a number cannot be 'NaN'",
      })
  void tellsUnsoundJsonInPlainWords(String text, String reason) {
    InputException e =
        catchThrowableOfType(InputException.class, () -> LipFile.load(text, "f.json"));
    assertThat(e.problems().get(0).text()).isEqualTo("this is not sound JSON: " + reason);
  }

  @Test
  void refusesRepeatedKeysAndTrailingText() {
    for (String text :
        List.of(GOOD.replace("\"mountEdge\": 2", "\"name\": \"b\""), GOOD + "{}", "", "[]", "{")) {
      InputException e = catchThrowableOfType(InputException.class, () -> LipFile.load(text, "f"));
      assertThat(e).as(text).isNotNull();
    }
  }

  @Test
  void readsWhatItWrote() throws Exception {
    for (int seed = 0; seed < 300; seed++) {
      LipDrawing drawing = randomDrawing(new SplittableRandom(seed));
      Path file = folder.resolve("lip.json");
      assertThat(LipFile.parse(LipFile.text(drawing), "f")).as("seed %d", seed).isEqualTo(drawing);
      if (seed % 50 == 0) {
        LipFile.write(file, drawing);
        assertThat(LipFile.read(file)).as("seed %d", seed).isEqualTo(drawing);
      }
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).as("no part files stay").hasSize(1);
    }
  }

  private static LipDrawing randomDrawing(SplittableRandom random) {
    List<DrawnOutline> detached = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      detached.add(randomOutline(random));
    }
    DrawnOutline body = randomOutline(random);
    return new LipDrawing(
        "lip \"" + random.nextInt(1000) + "\" \\ é",
        random.nextBoolean() ? "" : "teeth",
        random.nextBoolean() ? "" : "tab\there, € and Ω",
        random.nextBoolean(),
        random.nextBoolean() ? "" : "drawn by hand",
        body,
        random.nextInt(body.vertices().size()),
        detached);
  }

  private static DrawnOutline randomOutline(SplittableRandom random) {
    List<Vertex> vertices = new ArrayList<>();
    List<Rounding> roundings = new ArrayList<>();
    for (int i = 3 + random.nextInt(20); i > 0; i--) {
      double size = Math.pow(10, random.nextDouble(-6, 1));
      vertices.add(
          new Vertex(
              size * random.nextDouble(-1, 1),
              random.nextInt(100) / 1000.0,
              random.nextBoolean() ? 0 : random.nextDouble(-3, 3)));
      if (random.nextBoolean()) {
        roundings.add(
            random.nextBoolean()
                ? Rounding.round(i, random.nextDouble())
                : Rounding.chamfer(i, random.nextDouble()));
      }
    }
    return new DrawnOutline(vertices, roundings);
  }

  @Test
  @Tag("many")
  void fuzzedFilesGiveALipOrProblems() {
    List<String> valid = List.of(GOOD, LipFile.text(randomDrawing(new SplittableRandom(7))));
    for (int seed = 0; seed < 4000; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      String text = TextMutation.mutate(valid.get(seed % valid.size()), random);
      try {
        assertThat(LipFile.load(text, "f.json")).isNotNull();
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

  @Test
  void folderNamesTwinsAndPassesOverOtherKinds() throws Exception {
    Files.writeString(folder.resolve("a.json"), GOOD);
    Files.writeString(folder.resolve("m.json"), "{\"schema\": \"hemline.machine/1\"}");
    Files.writeString(folder.resolve("notes.txt"), "not a lip");
    assertThat(LipFile.loadFolder(folder)).hasSize(1);
    Files.writeString(folder.resolve("b.json"), GOOD);
    InputException e = catchThrowableOfType(InputException.class, () -> LipFile.loadFolder(folder));
    assertThat(e.problems()).singleElement().extracting(Problem::code).isEqualTo("lip.name");
  }

  @Test
  void missingFilesAndFoldersAreProblems() {
    for (Path path : List.of(folder, folder.resolve("none.json"))) {
      InputException e = catchThrowableOfType(InputException.class, () -> LipFile.load(path));
      assertThat(e.problems().get(0).code()).isEqualTo("file.read");
    }
    InputException e =
        catchThrowableOfType(
            InputException.class,
            () -> LipFile.write(folder.resolve("no/such/x.json"), LipFile.parse(GOOD, "f")));
    assertThat(e.problems().get(0).code()).isEqualTo("file.write");
  }
}
