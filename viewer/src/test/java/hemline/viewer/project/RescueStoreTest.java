package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.file.Seal;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drawings put by, among them files that no program wrote. */
final class RescueStoreTest {
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
  private static final Program HERE = Program.here();
  private static final Program GONE =
      new Program(HERE.computer(), HERE.machine(), Integer.MAX_VALUE - 7L, NOON);
  private static final Program ELSEWHERE = new Program("bench-pc", "0badcafe", HERE.pid(), NOON);

  @TempDir Path dir;
  private Path folder;
  private RescueStore now;

  @BeforeEach
  void open() {
    folder = new ProjectFolder(dir).rescue();
    now = new RescueStore(folder);
  }

  private static LipDrawing drawing(String name) {
    DrawnOutline bow =
        new DrawnOutline(
            List.of(
                new Vertex(0, 0),
                new Vertex(8e-3, 10e-3),
                new Vertex(8e-3, 0),
                new Vertex(0, 10e-3)));
    return new LipDrawing(name, "flat", "", true, "", bow, 1, List.of());
  }

  private Path only() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(".json")).findFirst().orElseThrow();
    }
  }

  @Test
  void aDrawingIsRecoveredWhenItsProgramIsGone() throws Exception {
    Path lip = dir.resolve("mine.json");
    RescueStore crashed = new RescueStore(folder, GONE);
    now.putBy(List.of(new RescueStore.Open(drawing("of this window"), Map.of(), null, "")), NOON);
    assertThat(now.left().drawings()).isEmpty();
    crashed.putBy(List.of(new RescueStore.Open(drawing("first"), Map.of(), lip, "abc")), NOON);
    crashed.putBy(
        List.of(new RescueStore.Open(drawing("second"), Map.of(), lip, "abc")),
        NOON.plusSeconds(5));
    List<RescueStore.Rescued> left = now.left().drawings();
    assertThat(left).hasSize(1);
    assertThat(left.get(0).drawing()).isEqualTo(drawing("second"));
    assertThat(left.get(0).file()).isEqualTo(lip);
    assertThat(left.get(0).basis()).isEqualTo("abc");
    now.drop(left.get(0));
    assertThat(now.left().drawings()).isEmpty();
    crashed.putBy(List.of(new RescueStore.Open(drawing("third"), Map.of(), null, "")), NOON);
    assertThat(now.left().drawings().get(0).file()).isNull();
    crashed.clear();
    assertThat(now.left().drawings()).isEmpty();
  }

  /** A second window on the project once told it as a file that is not there. */
  @Test
  void aDrawingSavedByAnotherProgramMeanwhileIsNoFault() throws Exception {
    RescueStore reader = new RescueStore(folder, GONE);
    AtomicBoolean ended = new AtomicBoolean();
    Thread editor =
        new Thread(
            () -> {
              while (!ended.get()) {
                try {
                  now.putBy(
                      List.of(new RescueStore.Open(drawing("edited"), Map.of(), null, "")), NOON);
                } catch (InputException e) {
                  throw new IllegalStateException(e);
                }
                now.clear();
              }
            });
    editor.start();
    try {
      for (int k = 0; k < 300; k++) {
        RescueStore.Left left = reader.left();
        assertThat(left.refused()).isEmpty();
        assertThat(left.drawings()).isEmpty();
      }
    } finally {
      ended.set(true);
      editor.join();
    }
  }

  @Test
  void aDrawingNeverNamesAForeignFileToOverwrite() throws Exception {
    Path outside = Files.createDirectories(dir.resolve("outside"));
    Path settings = Files.writeString(outside.resolve("settings.conf"), "precious");
    Path machine = Files.writeString(dir.resolve("machine.json"), "{\"schema\": \"x\"}");
    LipFile.write(outside.resolve("lip.json"), drawing("x"));
    Files.createSymbolicLink(dir.resolve("linked.json"), outside.resolve("lip.json"));
    RescueStore stranger = new RescueStore(folder, GONE);
    for (Path named :
        List.of(
            settings,
            machine,
            outside.resolve("new.json"),
            dir.resolve("outside/../outside/lip.json"),
            dir.resolve("linked.json"),
            dir.resolve("notes.txt"),
            dir.resolve("outside"))) {
      stranger.putBy(List.of(new RescueStore.Open(drawing("x"), Map.of(), named, "")), NOON);
      assertThat(now.left().drawings().get(0).file()).as(named.toString()).isNull();
    }
    LipFile.write(dir.resolve("mine.json"), drawing("x"));
    stranger.putBy(
        List.of(new RescueStore.Open(drawing("x"), Map.of(), dir.resolve("mine.json"), "")), NOON);
    assertThat(now.left().drawings().get(0).file()).isEqualTo(dir.resolve("mine.json"));
  }

  @Test
  void aDamagedFileIsToldOnceAndSetAside() throws Exception {
    new RescueStore(folder, GONE)
        .putBy(List.of(new RescueStore.Open(drawing("x"), Map.of(), null, "")), NOON);
    Path file = only();
    String text = Files.readString(file);
    List<String> damaged =
        List.of(
            "",
            "nonsense",
            "{}",
            "{\"schema\": \"hemline.rescue/2\"",
            text.replace("2026", "2027"),
            sealed(text.replace(NOON.toString(), "")),
            sealed(text.replace(NOON.toString(), "soon")),
            sealed(text.replaceFirst("\"lip\":.*", "\"lip\":\"{}\"}")),
            "[".repeat(100_000));
    for (String one : damaged) {
      assertThat(one).isNotEqualTo(text);
      Files.writeString(file, one);
      RescueStore.Left left = now.left();
      assertThat(left.drawings()).isEmpty();
      assertThat(left.refused()).as(one).hasSize(1);
      assertThat(file).doesNotExist();
      assertThat(now.left().refused()).isEmpty();
    }
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).hasSize(damaged.size());
    }
  }

  private static String sealed(String text) {
    return Seal.close(
        text.replaceFirst("\"seal\":\"[0-9a-f]{64}\"", "\"seal\":\"" + Seal.BLANK + "\""));
  }

  @Test
  void whatIsNoOrdinaryFileIsNeitherReadNorFollowed() throws Exception {
    Path secret = Files.writeString(dir.resolve("secret"), "precious");
    Files.createDirectories(folder.resolve("folder.json"));
    Files.createSymbolicLink(folder.resolve("link.json"), secret);
    RescueStore.Left left = now.left();
    assertThat(left.drawings()).isEmpty();
    assertThat(left.refused()).hasSize(2);
    // a link where this program puts its drawing by
    now.putBy(List.of(new RescueStore.Open(drawing("x"), Map.of(), null, "")), NOON);
    Path own = only();
    Files.delete(own);
    Files.createSymbolicLink(own, secret);
    now.putBy(List.of(new RescueStore.Open(drawing("x"), Map.of(), null, "")), NOON);
    assertThat(secret).hasContent("precious");
  }

  @Test
  void aProgramOfAnotherComputerMayStillRun() throws Exception {
    new RescueStore(folder, ELSEWHERE)
        .putBy(List.of(new RescueStore.Open(drawing("far"), Map.of(), null, "")), NOON);
    RescueStore.Rescued one = now.left().drawings().get(0);
    assertThat(one.elsewhere()).isEqualTo("bench-pc");
    new RescueStore(folder, GONE)
        .putBy(
            List.of(new RescueStore.Open(drawing("near"), Map.of(), null, "")),
            NOON.plusSeconds(1));
    assertThat(now.left().drawings().get(0).elsewhere()).isEmpty();
  }

  @Test
  void aNumberGivenAgainIsAnotherProgram() throws Exception {
    Program earlier =
        new Program(HERE.computer(), HERE.machine(), HERE.pid(), HERE.start().minusSeconds(600));
    assertThat(HERE.mayRun()).isTrue();
    assertThat(earlier.mayRun()).isFalse();
    assertThat(GONE.mayRun()).isFalse();
    assertThat(ELSEWHERE.mayRun()).isTrue();
    // its drawing is neither taken for the own one nor overwritten
    new RescueStore(folder, earlier)
        .putBy(List.of(new RescueStore.Open(drawing("earlier"), Map.of(), null, "")), NOON);
    now.putBy(List.of(new RescueStore.Open(drawing("now"), Map.of(), null, "")), NOON);
    assertThat(now.left().drawings())
        .extracting(r -> r.drawing().name())
        .containsExactly("earlier");
  }
}
