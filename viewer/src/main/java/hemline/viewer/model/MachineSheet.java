package hemline.viewer.model;

import hemline.shared.file.MachineFile;
import hemline.shared.problem.InputException;
import hemline.shared.vehicle.Machine;
import hemline.viewer.edit.History;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/**
 * A machine file with the values that were changed in the window, which leave the file as it is
 * until they are saved. All methods belong to the screen's thread; files are read beside it.
 */
public final class MachineSheet {
  private final Beside disk;
  private final History<Map<String, String>> history = new History<>(Map.of());
  private final ReadOnlyObjectWrapper<@Nullable State> state = new ReadOnlyObjectWrapper<>();
  private @Nullable Path file;

  /**
   * A machine as it was read.
   *
   * @param file its file
   * @param written values of the file by key
   * @param changed other values in their place
   * @param machine with those; null where they do not go together
   * @param fault why; empty for none
   */
  public record State(
      Path file,
      Map<String, String> written,
      Map<String, String> changed,
      @Nullable Machine machine,
      String fault) {
    /** The value that counts; empty where none is given. */
    public String value(String key) {
      return changed.getOrDefault(key, written.getOrDefault(key, ""));
    }
  }

  public MachineSheet(Beside disk) {
    this.disk = disk;
  }

  /** The machine; null before one is chosen. */
  public ReadOnlyObjectProperty<@Nullable State> state() {
    return state.getReadOnlyProperty();
  }

  /** The machine's file; null before one is chosen. */
  public @Nullable Path file() {
    return file;
  }

  /** True while values differ from those of the file. */
  public boolean unsaved() {
    return !history.now().isEmpty();
  }

  /** Turns to another file; its values are as written there. */
  public void open(Path other) {
    if (!other.equals(file)) {
      file = other;
      history.restart(Map.of());
      read();
    }
  }

  /** Changes a value, as one step. */
  public void set(String key, String value) {
    set(Map.of(key, value));
  }

  /** Changes several values, as one step. */
  public void set(Map<String, String> values) {
    Map<String, String> next = new LinkedHashMap<>(history.now());
    next.putAll(values);
    history.put(Collections.unmodifiableMap(next));
    read();
  }

  public void undo() {
    history.undo();
    read();
  }

  public void redo() {
    history.redo();
    read();
  }

  /**
   * Writes the machine with its changes.
   *
   * @param to file that the page turns to
   * @param fault hears why it cannot be written
   */
  public void save(Path to, Consumer<String> fault) {
    Path from = file;
    Map<String, String> changed = history.now();
    if (from != null) {
      disk.read(
          () -> {
            try {
              MachineFile.write(from, changed, to);
              return "";
            } catch (InputException e) {
              return e.problems().get(0).toString();
            }
          },
          said -> {
            if (said.isEmpty()) {
              file = null;
              open(to);
            }
            fault.accept(said);
          });
    }
  }

  private void read() {
    Path place = file;
    Map<String, String> changed = history.now();
    if (place != null) {
      disk.read(
          () -> read(place, changed),
          read -> {
            if (place.equals(file) && changed.equals(history.now())) {
              state.set(read);
            }
          });
    }
  }

  private static State read(Path place, Map<String, String> changed) {
    Map<String, String> written = Map.of();
    try {
      written = MachineFile.values(place);
      return new State(place, written, changed, MachineFile.read(place, changed), "");
    } catch (InputException e) {
      return new State(place, written, changed, null, e.problems().get(0).toString());
    }
  }
}
