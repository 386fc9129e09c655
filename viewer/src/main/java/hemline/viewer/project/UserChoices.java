package hemline.viewer.project;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Map;

/** What a user chose in the window once for all projects, such as the unit of lengths. */
public final class UserChoices {
  /** Unit of lengths in the window. */
  public static final String UNITS = "units";

  /** What is left of the first steps. */
  public static final String STEPS = "steps";

  private final SettingsFile store;

  /** Kept in a file, which is made at the first choice. */
  public UserChoices(Path store) {
    this.store = new SettingsFile(store, "hemline.choices/1");
  }

  /** The choices among a user's own settings. */
  public static UserChoices usual(Map<String, String> environment, String home) {
    return new UserChoices(SettingsFile.usual(environment, home, "choices.json"));
  }

  /** A choice; empty where none was made. */
  public synchronized String get(String name) {
    return store.read().path(name).asText("");
  }

  /** Keeps a choice; one that cannot be kept counts until the window is closed. */
  public synchronized void put(String name, String value) {
    ObjectNode document = store.read();
    document.put(name, value);
    store.write(document);
  }
}
