package hemline.shared.file;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.MountEdge;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Lip files, schema {@code hemline.lip/1}.
 *
 * <p>Keys: {@code schema}, {@code name}, {@code outline} (vertices {@code [x, y]} or {@code [x, y,
 * bulge]}, x from ambient to plenum, y up, closed implicitly) must be there; {@code mountEdge}
 * (number of the edge fixed to the skirt, from 0; absent: the longest level edge at the top),
 * {@code family}, {@code notes}, {@code invented}, {@code source}, {@code lengthUnit} (mm or m;
 * absent: mm), {@code roundings} (a list of {@code {vertex, radius}} or {@code {vertex, chamfer}})
 * and {@code detached} (further bodies: vertex lists, or groups with {@code outline} and {@code
 * roundings}) may be.
 */
public final class LipFile {
  static final String KIND = "lip";
  static final int VERSION = 1;

  private LipFile() {}

  /**
   * Reads and resolves a lip.
   *
   * @throws InputException with every problem found in the file or the lip
   */
  public static LoadedLip load(Path file) throws InputException {
    return load(TextFiles.read(file), file.toString());
  }

  /**
   * Reads every lip of a folder, in the order of the file names; files of other kinds are passed
   * over.
   *
   * @throws InputException with the problems of all files; also if there is no lip, or two of one
   *     name
   */
  public static List<LoadedLip> loadFolder(Path folder) throws InputException {
    if (!Files.isDirectory(folder)) {
      throw new InputException(
          "file.read", folder.toString(), "there is no such folder; check the path");
    }
    List<Path> files = new ArrayList<>();
    try (Stream<Path> entries = Files.list(folder)) {
      entries
          .filter(f -> f.getFileName().toString().endsWith(".json"))
          .sorted()
          .forEach(files::add);
    } catch (IOException e) {
      throw new InputException(
          "file.read", folder.toString(), "the folder cannot be read; check its permissions");
    }
    return loadAll(files, true, folder.toString());
  }

  private static List<LoadedLip> loadAll(List<Path> files, boolean passOver, String place)
      throws InputException {
    List<LoadedLip> lips = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    Map<String, Path> names = new HashMap<>();
    for (Path file : files) {
      try {
        String text = TextFiles.read(file);
        if (passOver && isOtherKind(text, file.toString())) {
          continue;
        }
        LoadedLip lip = load(text, file.toString());
        Path first = names.putIfAbsent(lip.profile().name(), file);
        if (first != null) {
          problems.add(
              new Problem(
                  "lip.name",
                  file.toString(),
                  "the name \""
                      + lip.profile().name()
                      + "\" is also that of "
                      + first
                      + "; give each lip its own name"));
        }
        lips.add(lip);
      } catch (InputException e) {
        problems.addAll(e.problems());
      }
    }
    if (problems.isEmpty() && lips.isEmpty()) {
      problems.add(
          new Problem("file.read", place, "there is no lip file here; a lip file ends in .json"));
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    return lips;
  }

  private static boolean isOtherKind(String text, String file) throws InputException {
    return JsonTree.read(text, file).values().get("schema") instanceof JsonItem.Text schema
        && schema.value().startsWith("hemline.")
        && !schema.value().startsWith("hemline." + KIND + "/");
  }

  /** Reads and resolves the text of a lip file; the file name serves the messages. */
  public static LoadedLip load(String text, String file) throws InputException {
    JsonItem.Members top = JsonTree.read(text, file);
    LipDrawing drawing = drawing(top, file);
    LipFindings findings = LipResolver.check(drawing);
    if (findings.profile() == null) {
      throw new InputException(
          findings.problems().stream().map(p -> located(p, top, file)).toList());
    }
    return new LoadedLip(drawing, findings.profile(), findings.notices());
  }

  /** Reads a drawing without judging its outlines. */
  public static LipDrawing read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString());
  }

  /** Reads the text of a lip file without judging its outlines. */
  public static LipDrawing parse(String text, String file) throws InputException {
    return drawing(JsonTree.read(text, file), file);
  }

  private static LipDrawing drawing(JsonItem.Members top, String file) throws InputException {
    List<Problem> problems = new ArrayList<>();
    JsonKeys keys = new JsonKeys(file, "", top, problems);
    if (!SchemaKey.check(keys, KIND, VERSION)) {
      throw new InputException(problems);
    }
    keys.allow(
        "schema",
        "name",
        "family",
        "notes",
        "invented",
        "source",
        "lengthUnit",
        "outline",
        "mountEdge",
        "roundings",
        "detached");
    FileUnit unit = SchemaKey.lengthUnit(keys);
    String name = keys.text("name", "plain flat 8");
    if (keys.item("name") instanceof JsonItem.Text && name.isBlank()) {
      keys.fault(
          "lip.name", "name", "the name is empty; give a short one such as \"plain flat 8\"");
    }
    DrawnOutline body = OutlineKeys.drawn(keys, unit);
    int mountEdge = mountEdge(keys, body);
    LipDrawing drawing =
        new LipDrawing(
            name,
            keys.text("family", "", "flat"),
            keys.text("notes", "", "for wet concrete"),
            keys.truth("invented", false),
            keys.text("source", "", "drawn for the demonstration"),
            body,
            mountEdge,
            detached(keys, unit));
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    return drawing;
  }

  private static int mountEdge(JsonKeys keys, DrawnOutline body) {
    if (keys.has("mountEdge")) {
      return keys.index("mountEdge", "the number of an edge, from 0");
    }
    OptionalInt found = MountEdge.findAtTop(body.vertices());
    if (found.isEmpty() && !body.vertices().isEmpty()) {
      keys.missing(
          "mountEdge", "the number of the edge fixed to the skirt, or draw a level top edge");
    }
    return found.orElse(0);
  }

  private static List<DrawnOutline> detached(JsonKeys keys, FileUnit unit) {
    List<DrawnOutline> out = new ArrayList<>();
    List<JsonItem> items = keys.list("detached");
    for (int i = 0; i < items.size(); i++) {
      String at = "detached[" + i + "]";
      if (items.get(i) instanceof JsonItem.Array array) {
        out.add(new DrawnOutline(OutlineKeys.vertices(keys, array.items(), at, unit)));
        continue;
      }
      JsonKeys one = keys.group(items.get(i), at);
      if (one != null) {
        one.allow("outline", "roundings");
        out.add(OutlineKeys.drawn(one, unit));
      }
    }
    return out;
  }

  /** Gives a problem of the drawing the file and the line of its key. */
  private static Problem located(Problem p, JsonItem.Members top, String file) {
    String key = p.place().replaceAll("\\[.*", "");
    int line = top.keyLines().getOrDefault(key, top.line());
    return new Problem(p.code(), file + ", line " + line + ", key " + p.place(), p.text());
  }

  /**
   * Writes a lip in one step, lengths in mm.
   *
   * @throws InputException if the file cannot be written
   */
  public static void write(Path file, LipDrawing drawing) throws InputException {
    TextFiles.write(file, text(drawing));
  }

  /** Text of a lip file. */
  public static String text(LipDrawing drawing) {
    Map<String, Object> top = new LinkedHashMap<>();
    top.put("schema", "hemline." + KIND + "/" + VERSION);
    top.put("name", drawing.name());
    putText(top, "family", drawing.family());
    putText(top, "notes", drawing.notes());
    if (drawing.invented()) {
      top.put("invented", true);
    }
    putText(top, "source", drawing.source());
    top.put("lengthUnit", FileUnit.MM.key());
    putOutline(top, drawing.body());
    top.put("mountEdge", drawing.mountEdge());
    if (!drawing.detached().isEmpty()) {
      List<Object> detached = new ArrayList<>();
      for (DrawnOutline d : drawing.detached()) {
        Map<String, Object> one = new LinkedHashMap<>();
        putOutline(one, d);
        detached.add(one);
      }
      top.put("detached", detached);
    }
    return JsonLayout.text(top);
  }

  private static void putText(Map<String, Object> top, String key, String value) {
    if (!value.isEmpty()) {
      top.put(key, value);
    }
  }

  private static void putOutline(Map<String, Object> top, DrawnOutline drawn) {
    top.put("outline", OutlineKeys.list(drawn.vertices(), FileUnit.MM));
    if (!drawn.roundings().isEmpty()) {
      top.put("roundings", OutlineKeys.list(drawn, FileUnit.MM));
    }
  }
}
