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

/** What a user chose in the window once for all projects, such as the unit of lengths. */
public final class UserChoices {
  /** Unit of lengths in the window. */
  public static final String UNITS = "units";

  /** What is left of the first steps. */
  public static final String STEPS = "steps";

  private static final String SCHEMA = "hemline.choices/1";

  private final Path store;
  private final ObjectMapper json = new ObjectMapper();

  /** Kept in a file, which is made at the first choice. */
  public UserChoices(Path store) {
    this.store = store;
  }

  /** The choices beside the list of recent places. */
  public static UserChoices usual(Map<String, String> environment, String home) {
    return new UserChoices(
        RecentPlaces.usualStore(environment, home).resolveSibling("choices.json"));
  }

  /** A choice; empty where none was made. */
  public synchronized String get(String name) {
    return read().path(name).asText("");
  }

  /** Keeps a choice; one that cannot be kept counts until the window is closed. */
  public synchronized void put(String name, String value) {
    ObjectNode document = read();
    document.put("schema", SCHEMA);
    document.put(name, value);
    try {
      Path parent = store.toAbsolutePath().getParent();
      if (parent != null) {
        Files.createDirectories(parent);
      }
      TextFiles.write(store, json.writeValueAsString(document));
    } catch (IOException | InputException e) {
      // a choice is a convenience; the work itself goes on
    }
  }

  private ObjectNode read() {
    try {
      if (Files.isRegularFile(store)) {
        JsonNode document = json.readTree(Files.readString(store));
        if (document instanceof ObjectNode object
            && object.path("schema").asText().equals(SCHEMA)) {
          return object;
        }
      }
    } catch (IOException e) {
      // damaged choices are made anew
    }
    return json.createObjectNode();
  }
}
