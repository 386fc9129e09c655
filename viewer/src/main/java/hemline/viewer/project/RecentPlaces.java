package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Lip files used last, newest first, kept for the user across projects. */
public final class RecentPlaces {
  private static final int MOST = 12;
  private static final String SCHEMA = "hemline.recent/1";

  private final Path store;
  private final ObjectMapper json = new ObjectMapper();

  /** Kept in a file, which is made at the first use. */
  public RecentPlaces(Path store) {
    this.store = store;
  }

  /**
   * Where a user's own settings go: the folder for them that the system names, else a hidden one at
   * home.
   *
   * @param environment variables of the environment
   * @param home the user's home
   */
  public static Path usualStore(java.util.Map<String, String> environment, String home) {
    String config = environment.get("XDG_CONFIG_HOME");
    String roaming = environment.get("APPDATA");
    Path folder =
        config != null && !config.isBlank()
            ? Path.of(config)
            : roaming != null && !roaming.isBlank()
                ? Path.of(roaming)
                : Path.of(home).resolve(".config");
    return folder.resolve("hemline").resolve("recent.json");
  }

  /** Files that still exist. */
  public List<Path> files() {
    return read().stream().filter(Files::isRegularFile).toList();
  }

  /** Puts a file first. */
  public void used(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    List<Path> next = new ArrayList<>(List.of(absolute));
    read().stream().filter(f -> !f.equals(absolute)).forEach(next::add);
    ObjectNode document = json.createObjectNode();
    document.put("schema", SCHEMA);
    var list = document.putArray("files");
    next.stream().limit(MOST).forEach(f -> list.add(f.toString()));
    try {
      Path parent = store.toAbsolutePath().getParent();
      if (parent != null) {
        Files.createDirectories(parent);
      }
      TextFiles.write(store, json.writeValueAsString(document));
    } catch (IOException | InputException e) {
      // a list of recent files is a convenience; the work itself goes on
    }
  }

  private List<Path> read() {
    List<Path> files = new ArrayList<>();
    try {
      if (Files.isRegularFile(store)) {
        JsonNode document = json.readTree(Files.readString(store));
        if (document.path("schema").asText().equals(SCHEMA)) {
          document.path("files").forEach(f -> files.add(Path.of(f.asText())));
        }
      }
    } catch (IOException | IllegalArgumentException e) {
      return List.of();
    }
    return files;
  }
}
