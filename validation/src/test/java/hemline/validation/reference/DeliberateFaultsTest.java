package hemline.validation.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The list of deliberate faults fits the code: each can still be put in, and the test that caught
 * it is still there.
 */
class DeliberateFaultsTest {
  private static final Path ROOT = Path.of("..");

  @Test
  void eachFaultCanBePutInAndItsTestIsThere() throws IOException {
    List<List<String>> rows = CommaText.parse(Files.readString(Path.of("mutation", "faults.csv")));
    assertThat(rows.get(0)).containsExactly("fault", "file", "text", "instead", "caught_by");
    assertThat(rows).hasSizeGreaterThan(20);
    for (List<String> row : rows.subList(1, rows.size())) {
      String code = Files.readString(ROOT.resolve(row.get(1)));
      assertThat(code.split(Pattern.quote(row.get(2)), -1))
          .as("places of \"%s\" in %s", row.get(2), row.get(1))
          .hasSize(2);
      assertThat(row.get(3)).isNotEqualTo(row.get(2));
      String[] test = row.get(4).split("\\.");
      assertThat(source(test[0])).as(row.get(0)).contains("void " + test[1] + "(");
    }
  }

  private static String source(String test) throws IOException {
    for (String module : List.of("shared", "solver", "validation", "viewer")) {
      try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src/test/java"))) {
        Path file = files.filter(f -> f.endsWith(test + ".java")).findFirst().orElse(null);
        if (file != null) {
          return Files.readString(file);
        }
      }
    }
    return "";
  }
}
