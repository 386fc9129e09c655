package hemline.viewer.project;

import java.nio.file.Path;
import java.util.Map;

/** Where programs of this user keep what can be made again. */
public enum KeptFolder {
  /** Leaks for the balance of machines. */
  LEAKS("leaks"),
  /** Figures of single sections. */
  FIGURES("figures"),
  /** Sections with the flows to start others from. */
  SECTIONS("sections");

  private final String name;

  KeptFolder(String name) {
    this.name = name;
  }

  /** Its place, by the user's settings. */
  public Path place() {
    Map<String, String> environment = System.getenv();
    String named = environment.getOrDefault("XDG_CACHE_HOME", "");
    Path base =
        named.isEmpty()
            ? ProjectFolder.home(environment, System.getProperty("user.home", "."))
                .resolve(".cache")
            : Path.of(named);
    return base.resolve("hemline").resolve(name);
  }
}
