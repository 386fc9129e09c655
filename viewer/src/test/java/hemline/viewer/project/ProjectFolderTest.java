package hemline.viewer.project;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ProjectFolderTest {
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");
  @TempDir Path dir;

  private static LipDrawing drawing(String name) {
    // crosses itself: a drawing in work may
    DrawnOutline bow =
        new DrawnOutline(
            List.of(
                new Vertex(0, 0),
                new Vertex(8e-3, 10e-3),
                new Vertex(8e-3, 0),
                new Vertex(0, 10e-3)));
    return new LipDrawing(name, "flat", "", true, "", bow, 1, List.of());
  }

  private static final String FLAT =
      "{\"schema\": \"hemline.lip/1\", \"name\": \"%s\","
          + " \"outline\": [[0, 0], [8, 0], [8, 10], [0, 10]]}";

  @Test
  void lipsThatCannotBeReadAreToldAndTheOthersUsed() throws Exception {
    Files.writeString(dir.resolve("a.json"), FLAT.formatted("a"));
    Files.writeString(dir.resolve("b.json"), "{\"schema\": \"hemline.lip/1\"}");
    Files.writeString(dir.resolve("c.json"), "{\"schema\": \"hemline.duct/1\"}");
    ProjectFolder.Lips lips = new ProjectFolder(dir).lips();
    assertThat(lips.lips()).extracting(lip -> lip.profile().name()).containsExactly("a");
    assertThat(lips.problems()).isNotEmpty().allMatch(p -> p.place().contains("b.json"));
    assertThat(new ProjectFolder(dir.resolve("none")).lips().lips()).isEmpty();
    // what the window keeps is out of the way of commands that read the folder
    new RescueStore(new ProjectFolder(dir).rescue())
        .putBy(List.of(new RescueStore.Open(drawing("x"), Map.of(), null, "")), NOON);
    Files.delete(dir.resolve("b.json"));
    assertThat(LipFile.loadFolder(dir)).hasSize(1);
    assertThat(new ProjectFolder(dir).fileFor("Labyrinth, 3 teeth!"))
        .isEqualTo(dir.resolve("labyrinth-3-teeth.json"));
  }

  @Test
  void recentFilesAreNewestFirstWithoutRepeatsAndOnlyThoseThatExist() throws Exception {
    RecentPlaces recent = new RecentPlaces(dir.resolve("settings/recent.json"));
    assertThat(recent.files()).isEmpty();
    for (int k = 0; k < 15; k++) {
      recent.used(Files.writeString(dir.resolve(k + ".json"), ""));
    }
    recent.used(dir.resolve("9.json"));
    Files.delete(dir.resolve("14.json"));
    List<Path> files = new RecentPlaces(dir.resolve("settings/recent.json")).files();
    assertThat(files).hasSize(11).startsWith(dir.resolve("9.json"), dir.resolve("13.json"));
    Files.writeString(dir.resolve("settings/recent.json"), "nonsense");
    assertThat(recent.files()).isEmpty();
  }

  @Test
  void settingsLieWhereTheSystemWantsThem() {
    assertThat(SettingsFile.usual(Map.of("XDG_CONFIG_HOME", "/conf"), "/home/x", "recent.json"))
        .isEqualTo(Path.of("/conf/hemline/recent.json"));
    assertThat(SettingsFile.usual(Map.of(), "/home/x", "recent.json"))
        .isEqualTo(Path.of("/home/x/.config/hemline/recent.json"));
  }

  @Test
  void homeIsWhatTheEnvironmentNames() {
    assertThat(ProjectFolder.home(Map.of("HOME", "/mine"), "/record")).isEqualTo(Path.of("/mine"));
    assertThat(ProjectFolder.home(Map.of("HOME", " "), "/record")).isEqualTo(Path.of("/record"));
    assertThat(ProjectFolder.home(Map.of(), "/record")).isEqualTo(Path.of("/record"));
  }

  @Test
  void theFingerprintIsStable() {
    assertThat(Engine.fingerprint()).isEqualTo(Engine.fingerprint()).hasSize(16);
  }
}
