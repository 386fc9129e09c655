package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * A file of the user's own settings across projects. They are a convenience: what cannot be read
 * counts as none, what cannot be written is let go, and the work itself goes on.
 */
final class SettingsFile {
  private final Path file;
  private final String schema;
  private final ObjectMapper json = new ObjectMapper();

  /** A file, which is made at the first {@link #write}. */
  SettingsFile(Path file, String schema) {
    this.file = file;
    this.schema = schema;
  }

  /**
   * Where a user's own settings go: the folder for them that the system names, else a hidden one at
   * home.
   *
   * @param environment variables of the environment
   * @param home the user's home
   */
  static Path usual(Map<String, String> environment, String home, String name) {
    String config = environment.get("XDG_CONFIG_HOME");
    String roaming = environment.get("APPDATA");
    Path folder =
        config != null && !config.isBlank()
            ? Path.of(config)
            : roaming != null && !roaming.isBlank()
                ? Path.of(roaming)
                : Path.of(home).resolve(".config");
    return folder.resolve("hemline").resolve(name);
  }

  /** The document in the file; one with its schema alone where there is none. */
  ObjectNode read() {
    try {
      if (Files.isRegularFile(file)) {
        JsonNode document = json.readTree(TextFiles.read(file));
        if (document instanceof ObjectNode object
            && object.path("schema").asText().equals(schema)) {
          return object;
        }
      }
    } catch (IOException | InputException e) {
      // damaged settings are made anew
    }
    return json.createObjectNode().put("schema", schema);
  }

  /** Puts a document from {@link #read} into the file. */
  void write(ObjectNode document) {
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      TextFiles.write(file, json.writeValueAsString(document));
    } catch (IOException | InputException e) {
      // let go
    }
  }
}
