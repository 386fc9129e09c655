package hemline.viewer.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.DuctFile;
import hemline.shared.file.LipFile;
import hemline.solver.flow.CancelToken;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The guides say what the program does. */
final class ReadmeTest {
  private static final Path ROOT = Path.of("..");
  private static final Pattern BLOCK = Pattern.compile("```(\\w+)\\n(.*?)```", Pattern.DOTALL);

  private static String readme() throws Exception {
    return Files.readString(ROOT.resolve("README.md"));
  }

  /** All guides for users: the README and those it leads to. */
  private static String guides() throws Exception {
    StringBuilder text = new StringBuilder(readme());
    for (String module : List.of("viewer", "profiles", "validation")) {
      text.append('\n').append(Files.readString(ROOT.resolve(module).resolve("README.md")));
    }
    return text.toString();
  }

  private static List<String> blocks(String kind) throws Exception {
    List<String> blocks = new ArrayList<>();
    Matcher m = BLOCK.matcher(guides());
    while (m.find()) {
      if (m.group(1).equals(kind)) {
        blocks.add(m.group(2));
      }
    }
    return blocks;
  }

  @Test
  void exampleFilesAreRead() throws Exception {
    int lips = 0;
    int ducts = 0;
    for (String block : blocks("json")) {
      if (block.contains("hemline.lip/")) {
        assertThat(LipFile.load(block, "README").profile().name()).isNotBlank();
        lips++;
      } else {
        assertThat(DuctFile.parse(block, "README").gap()).isEqualTo(1);
        ducts++;
      }
    }
    assertThat(lips).isEqualTo(1);
    assertThat(ducts).isEqualTo(1);
  }

  /** Both commands stand in the first block; they set up what they need by one script. */
  @Test
  void ciRunsTheTestCommandOfTheReadme() throws Exception {
    List<String> commands = blocks("sh").get(0).lines().toList();
    assertThat(commands).hasSize(2);
    assertThat(commands.get(0)).startsWith("viewer/hemline rank profiles ");
    assertThat(Files.readString(ROOT.resolve(".ci/run")).lines()).contains(commands.get(1));
    for (String script : List.of("viewer/hemline", commands.get(1))) {
      assertThat(ROOT.resolve(script.split(" ")[0])).isExecutable();
      assertThat(Files.readString(ROOT.resolve(script.split(" ")[0]))).contains(".ci/setup");
    }
    assertThat(Files.readString(ROOT.resolve(commands.get(1)))).contains(" -Pstrict verify");
  }

  @Test
  void picturesAndFilesItNamesAreThere() throws Exception {
    Matcher picture = Pattern.compile("!\\[[^]]*]\\(([^)]*)\\)").matcher(readme());
    assertThat(picture.find()).isTrue();
    assertThat(ROOT.resolve(picture.group(1))).exists();
    Matcher profile = Pattern.compile("profiles/[\\w-]+\\.json").matcher(guides());
    while (profile.find()) {
      assertThat(ROOT.resolve(profile.group())).exists();
    }
  }

  @Test
  void everyOptionItNamesExistsAndTheOtherWayRound() throws Exception {
    Set<String> named = options(guides());
    Set<String> known = new TreeSet<>();
    for (String command :
        List.of(
            "run", "sweep", "rank", "improve", "batch", "compare", "balance", "check", "convert")) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8);
      Desk desk = new Desk(out, out, false, new CancelToken(), new FakeStudies(), () -> 0L);
      assertThat(Commands.execute(desk, file -> {}, command, "--help")).isZero();
      known.addAll(options(bytes.toString(StandardCharsets.UTF_8)));
    }
    known.remove("--version");
    assertThat(named).isEqualTo(known);
  }

  private static Set<String> options(String text) {
    Set<String> options = new TreeSet<>();
    String both = text.replaceAll("--\\[no-](\\w+)", "--$1, --no-$1");
    Matcher m = Pattern.compile("(?<![\\w-])--[a-z][a-z-]*").matcher(both);
    while (m.find()) {
      options.add(m.group());
    }
    return options;
  }
}
