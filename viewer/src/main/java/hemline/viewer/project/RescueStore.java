package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.LipFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Drawings put by while they are edited, so that a crash costs seconds of work. Each running
 * program has one file; a file whose program is gone is a drawing to recover.
 *
 * <p>The folder may come from anybody. What a file of it says is therefore believed only where it
 * can do no harm: a recovered drawing belongs to a lip file of its own project or to none.
 */
public final class RescueStore {
  private static final int LOOKS = 3;
  private static final String SCHEMA = "hemline.rescue/2";

  private final Path folder;
  private final Program program;
  private final ObjectMapper json = new ObjectMapper();

  /**
   * A lip that is open in the window.
   *
   * @param drawing the lip, which may have faults
   * @param conditions under which it is looked at, by their names, SI
   * @param file lip file it belongs to; null when it has none yet
   * @param basis digest of that file as this program knows it
   */
  public record Open(
      LipDrawing drawing, Map<String, Double> conditions, @Nullable Path file, String basis) {}

  /**
   * A drawing that was not saved.
   *
   * @param drawing the drawing, which may have faults
   * @param conditions under which it was looked at, as anybody may have written them
   * @param file lip file of the project that it belongs to; null when it has none there
   * @param basis digest of that file when it was last read or written; empty for a new one
   * @param aside lips that were set aside beside it, B first, as anybody may have written them
   * @param when instant of the last change put by
   * @param program who put it by
   * @param place file that holds it
   */
  public record Rescued(
      LipDrawing drawing,
      Map<String, Double> conditions,
      @Nullable Path file,
      String basis,
      List<Open> aside,
      Instant when,
      Program program,
      Path place) {
    /** Computer on which the drawing may still be open; empty when it is certainly not. */
    public String elsewhere() {
      return program.elsewhere() ? program.computer() : "";
    }
  }

  /**
   * What was found.
   *
   * @param drawings of programs that ended without saving them, newest first
   * @param refused files that are no sound drawings, each once
   */
  public record Left(List<Rescued> drawings, List<Problem> refused) {
    public Left {
      drawings = List.copyOf(drawings);
      refused = List.copyOf(refused);
    }
  }

  /** A store in a folder of a project, for this program. */
  public RescueStore(Path folder) {
    this(folder, Program.here());
  }

  /**
   * A store in a folder, for another program.
   *
   * @param folder {@link ProjectFolder#rescue} of a project
   */
  public RescueStore(Path folder, Program program) {
    this.folder = folder.toAbsolutePath().normalize();
    this.program = program;
  }

  /**
   * Puts the lips of the window by.
   *
   * @param lips the one on the bench, then those that are set aside
   * @param when instant of the change
   * @throws InputException if they cannot be written
   */
  public void putBy(List<Open> lips, Instant when) throws InputException {
    ObjectNode document = KeptFile.start(json, SCHEMA);
    program.write(document);
    document.put("when", when.toString());
    put(document, lips.get(0));
    ArrayNode aside = document.putArray("aside");
    lips.stream().skip(1).forEach(lip -> put(aside.addObject(), lip));
    try {
      KeptFile.write(own(), KeptFile.text(json, document));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    } catch (InputException e) {
      throw new InputException(
          "rescue.write",
          folder.toString(),
          "the drawing cannot be put by here; check the folder's permissions and space");
    }
  }

  private void put(ObjectNode into, Open lip) {
    Path file = lip.file();
    into.put("file", file == null ? null : name(file));
    into.put("basis", lip.basis());
    ObjectNode numbers = into.putObject("conditions");
    new TreeMap<>(lip.conditions()).forEach(numbers::put);
    into.put("lip", LipFile.text(lip.drawing()));
  }

  private Open open(JsonNode from, Path place) throws InputException {
    return new Open(
        LipFile.parse(from.path("lip").asText(), place.toString()),
        numbers(from.path("conditions")),
        file(from.path("file").asText("")),
        from.path("basis").asText(""));
  }

  /** Drops this program's drawing: it is saved, or not wanted. */
  public void clear() {
    KeptFile.drop(own());
  }

  /** Drawings of programs that ended without saving them; files that are none are set aside. */
  public Left left() {
    List<Rescued> found = new ArrayList<>();
    List<Problem> refused = new ArrayList<>();
    for (Path place : KeptFile.in(folder)) {
      try {
        Rescued one = readOrAgain(place);
        if (one != null
            && !place.equals(own())
            && (one.program().elsewhere() || !one.program().mayRun())) {
          found.add(one);
        }
      } catch (InputException e) {
        refused.add(KeptFile.setAside(place, e));
      }
    }
    found.sort(Comparator.comparing(Rescued::when).reversed());
    return new Left(found, refused);
  }

  /** Drops a drawing of a program that is gone, or one that nobody wants. */
  public void drop(Rescued rescued) {
    KeptFile.drop(rescued.place());
  }

  private Path own() {
    return folder.resolve("drawing-" + program.id() + KeptFile.END);
  }

  /**
   * Reads a drawing; null when its program has saved it meanwhile. That program may put it by anew
   * between two looks, so only what is refused each time is refused.
   */
  private @Nullable Rescued readOrAgain(Path place) throws InputException {
    for (int look = 1; ; look++) {
      try {
        return read(place);
      } catch (InputException e) {
        if (Files.notExists(place, LinkOption.NOFOLLOW_LINKS)) {
          return null;
        }
        if (look == LOOKS) {
          throw e;
        }
      }
    }
  }

  private Rescued read(Path place) throws InputException {
    JsonNode d = KeptFile.read(json, place, SCHEMA);
    try {
      Open lip = open(d, place);
      List<Open> aside = new ArrayList<>();
      for (JsonNode one : d.path("aside")) {
        aside.add(open(one, place));
      }
      return new Rescued(
          lip.drawing(),
          lip.conditions(),
          lip.file(),
          lip.basis(),
          List.copyOf(aside),
          Instant.parse(d.path("when").asText()),
          Program.read(d),
          place);
    } catch (DateTimeException | InvalidPathException e) {
      throw new InputException("kept.form", place.toString(), "is no whole drawing");
    }
  }

  private static Map<String, Double> numbers(JsonNode conditions) {
    Map<String, Double> numbers = new HashMap<>();
    conditions
        .properties()
        .forEach(
            one -> {
              if (one.getValue().isNumber()) {
                numbers.put(one.getKey(), one.getValue().asDouble());
              }
            });
    return numbers;
  }

  /** A lip file by its name alone where it lies in the project. */
  private String name(Path file) {
    Path whole = file.toAbsolutePath().normalize();
    return whole.startsWith(project()) ? project().relativize(whole).toString() : whole.toString();
  }

  /**
   * The file that a drawing belongs to, if it is safe to write the drawing there: a lip file that
   * lies directly in the project, or a new one; no other kind of file and nothing behind a link.
   */
  private @Nullable Path file(String name) {
    if (name.isEmpty()) {
      return null;
    }
    Path file = project().resolve(name).normalize();
    if (!project().equals(file.getParent()) || !file.toString().endsWith(KeptFile.END)) {
      return null;
    }
    if (Files.notExists(file, LinkOption.NOFOLLOW_LINKS)) {
      return file;
    }
    try {
      if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
        return null;
      }
      LipFile.read(file);
      return file;
    } catch (InputException e) {
      return null;
    }
  }

  private Path project() {
    Path hidden = folder.getParent();
    Path project = hidden == null ? null : hidden.getParent();
    return project == null ? folder : project;
  }
}
