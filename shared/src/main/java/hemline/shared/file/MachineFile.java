package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.vehicle.Machine;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Machine files, schema {@code hemline.machine/1}.
 *
 * <p>Quantities are texts with their unit. Lips and the fan curve are named by their files, from
 * the folder of the machine file on. profiles/README.md tells every key.
 */
public final class MachineFile {
  /** Keys that name other files. */
  private static final String FILES = "fan\\.curve|floor\\.lip|floor\\.edges\\.\\d+\\.lip";

  static final String KIND = "machine";
  static final int VERSION = 1;

  private MachineFile() {}

  /**
   * Reads a machine with its lips and its fan curve.
   *
   * @throws InputException with every problem found
   */
  public static Machine read(Path file) throws InputException {
    return read(file, Map.of());
  }

  /**
   * Reads a machine with other values in place of some of its own; its notes name them.
   *
   * @param values text by key, such as {@code 22000rpm} by {@code fan.speed}; keys within groups
   *     have dots between them, entries of lists go by their name or place from 0, an empty text
   *     takes a key away
   * @throws InputException with every problem found
   */
  public static Machine read(Path file, Map<String, String> values) throws InputException {
    Path folder = file.toAbsolutePath().getParent();
    return parse(
        TextFiles.read(file), file.toString(), folder == null ? Path.of("") : folder, values);
  }

  /**
   * Reads the text of a machine file.
   *
   * @param file name for the messages
   * @param folder in which the lips and the fan curve are looked for
   */
  public static Machine parse(String text, String file, Path folder) throws InputException {
    return parse(text, file, folder, Map.of());
  }

  private static Machine parse(String text, String file, Path folder, Map<String, String> values)
      throws InputException {
    JsonItem.Members top = JsonTree.read(text, file);
    List<Problem> problems = new ArrayList<>();
    JsonKeys keys = new JsonKeys(file, "", top, problems);
    if (!SchemaKey.check(keys, KIND, VERSION)) {
      throw new InputException(problems);
    }
    JsonKeys changed = new JsonKeys(file, "", ChangedValues.put(top, values, keys), problems);
    Machine machine = new MachineReader(changed, folder, problems).read(values);
    if (machine == null) {
      throw new InputException(problems);
    }
    return machine;
  }

  /**
   * Texts and numbers of a machine file as they are written, by their keys as {@link #read(Path,
   * Map)} takes them; entries of lists by their place from 0.
   *
   * @throws InputException if it is no sound JSON
   */
  public static Map<String, String> values(Path file) throws InputException {
    Map<String, String> values = new LinkedHashMap<>();
    gather("", JsonTree.read(TextFiles.read(file), file.toString()), values);
    return values;
  }

  private static void gather(String path, JsonItem item, Map<String, String> values) {
    String lead = path.isEmpty() ? "" : path + ".";
    if (item instanceof JsonItem.Members members) {
      members.values().forEach((key, inner) -> gather(lead + key, inner, values));
    } else if (item instanceof JsonItem.Array array) {
      for (int k = 0; k < array.items().size(); k++) {
        gather(lead + k, array.items().get(k), values);
      }
    } else if (item instanceof JsonItem.Text text) {
      values.put(path, text.value());
    } else if (item instanceof JsonItem.Number number) {
      values.put(path, number.literal());
    }
  }

  /**
   * Writes a machine with other values in place of some of its own; all else stays as it is
   * written, and the files that it names are found from the new place too.
   *
   * @param values text by key, as for {@link #read(Path, Map)}; entries of lists by their place
   * @throws InputException if they do not make a sound machine, or the file cannot be written
   */
  public static void write(Path from, Map<String, String> values, Path to) throws InputException {
    read(from, values);
    String text = TextFiles.read(from);
    Map<String, String> next = new LinkedHashMap<>();
    Path there = to.toAbsolutePath().normalize().getParent();
    boolean moved = there != null && !there.equals(from.toAbsolutePath().normalize().getParent());
    if (moved) {
      next.putAll(values(from));
      next.keySet().removeIf(key -> !key.matches(FILES));
    }
    next.putAll(values);
    for (Map.Entry<String, String> one : next.entrySet()) {
      if (there != null && one.getKey().matches(FILES)) {
        Path named = from.toAbsolutePath().resolveSibling(one.getValue()).normalize();
        one.setValue(there.relativize(named).toString());
      }
    }
    for (Map.Entry<String, String> one : next.entrySet()) {
      text = JsonEdit.set(text, one.getKey(), one.getValue());
    }
    TextFiles.write(to, text);
  }

  /** Lip files that a machine file names, each once; empty where it cannot be read. */
  public static List<Path> lipFiles(Path machine) {
    Set<Path> files = new LinkedHashSet<>();
    try {
      JsonItem floor = JsonTree.read(TextFiles.read(machine), "").values().get("floor");
      if (floor instanceof JsonItem.Members members) {
        addLip(members, machine, files);
        if (members.values().get("edges") instanceof JsonItem.Array edges) {
          for (JsonItem edge : edges.items()) {
            if (edge instanceof JsonItem.Members one) {
              addLip(one, machine, files);
            }
          }
        }
      }
    } catch (InputException e) {
      return List.of();
    }
    return List.copyOf(files);
  }

  private static void addLip(JsonItem.Members group, Path machine, Set<Path> files) {
    if (group.values().get("lip") instanceof JsonItem.Text name) {
      try {
        files.add(machine.toAbsolutePath().resolveSibling(name.value()).normalize());
      } catch (InvalidPathException e) {
        // reading the machine tells it
        return;
      }
    }
  }
}
