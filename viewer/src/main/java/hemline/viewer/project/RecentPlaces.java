package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Lip files used last, newest first, kept for the user across projects. */
public final class RecentPlaces {
  private static final int MOST = 12;

  private final SettingsFile store;

  /** Kept in a file, which is made at the first use. */
  public RecentPlaces(Path store) {
    this.store = new SettingsFile(store, "hemline.recent/1");
  }

  /** The list among a user's own settings. */
  public static RecentPlaces usual(Map<String, String> environment, String home) {
    return new RecentPlaces(SettingsFile.usual(environment, home, "recent.json"));
  }

  /** Files that still exist. */
  public List<Path> files() {
    return read(store.read()).stream().filter(Files::isRegularFile).toList();
  }

  /** Puts a file first. */
  public void used(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    ObjectNode document = store.read();
    List<Path> next = new ArrayList<>(List.of(absolute));
    read(document).stream().filter(f -> !f.equals(absolute)).forEach(next::add);
    var list = document.putArray("files");
    next.stream().limit(MOST).forEach(f -> list.add(f.toString()));
    store.write(document);
  }

  private static List<Path> read(ObjectNode document) {
    List<Path> files = new ArrayList<>();
    try {
      for (JsonNode file : document.path("files")) {
        files.add(Path.of(file.asText()));
      }
    } catch (InvalidPathException e) {
      return List.of();
    }
    return files;
  }
}
