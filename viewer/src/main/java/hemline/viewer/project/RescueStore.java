package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.LipFile;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Drawings put by while they are edited, so that a crash costs seconds of work. Each running
 * program has one file; a file whose program is gone is a drawing to recover.
 */
public final class RescueStore {
  private static final String SCHEMA = "hemline.rescue/1";
  private static final String END = ".json";

  private final Path folder;
  private final long owner;
  private final ObjectMapper json = new ObjectMapper();

  /**
   * A drawing that was not saved.
   *
   * @param drawing the drawing, which may have faults
   * @param file lip file it belongs to; null when it never had one
   * @param when instant of the last change put by, ISO 8601
   * @param place file that holds it
   */
  public record Rescued(LipDrawing drawing, @Nullable Path file, String when, Path place) {}

  /** A store in a folder, for this program. */
  public RescueStore(Path folder) {
    this(folder, ProcessHandle.current().pid());
  }

  /**
   * A store in a folder, for the program of a process number.
   *
   * @param owner process number
   */
  public RescueStore(Path folder, long owner) {
    this.folder = folder;
    this.owner = owner;
  }

  /**
   * Puts the drawing by.
   *
   * @param file lip file it belongs to; null when it has none yet
   * @param when instant of the change
   * @throws InputException if it cannot be written
   */
  public void putBy(LipDrawing drawing, @Nullable Path file, Instant when) throws InputException {
    ObjectNode document = json.createObjectNode();
    document.put("schema", SCHEMA);
    document.put("owner", owner);
    document.put("when", when.toString());
    document.put("file", file == null ? null : file.toAbsolutePath().toString());
    document.put("lip", LipFile.text(drawing));
    try {
      Files.createDirectories(folder);
      TextFiles.write(own(), json.writeValueAsString(document));
    } catch (IOException e) {
      throw new InputException(
          "rescue.write",
          folder.toString(),
          "the drawing cannot be put by here; check the folder's permissions and space");
    }
  }

  /** Drops this program's drawing: it is saved, or not wanted. */
  public void clear() {
    delete(own());
  }

  /** Drawings of programs that ended without saving them, newest first. */
  public List<Rescued> left() {
    List<Rescued> found = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path place : files.filter(f -> f.toString().endsWith(END)).sorted().toList()) {
          Rescued one = read(place);
          if (one != null) {
            found.add(one);
          }
        }
      } catch (IOException e) {
        return List.of();
      }
    }
    found.sort(Comparator.comparing(Rescued::when).reversed());
    return found;
  }

  /** Drops a drawing of a program that is gone. */
  public void drop(Rescued rescued) {
    delete(rescued.place());
  }

  private Path own() {
    return folder.resolve("drawing-" + owner + END);
  }

  private @Nullable Rescued read(Path place) {
    try {
      JsonNode document = json.readTree(Files.readString(place));
      if (!document.path("schema").asText().equals(SCHEMA) || alive(document, place)) {
        return null;
      }
      JsonNode file = document.path("file");
      return new Rescued(
          LipFile.parse(document.path("lip").asText(), place.toString()),
          file.isTextual() ? Path.of(file.asText()) : null,
          document.path("when").asText(),
          place);
    } catch (IOException | InputException | IllegalArgumentException e) {
      return null;
    }
  }

  /** True while the program that wrote the drawing runs; a later one may have got its number. */
  private boolean alive(JsonNode document, Path place) {
    long pid = document.path("owner").asLong();
    Instant written = Instant.parse(document.path("when").asText());
    return place.equals(own())
        || ProcessHandle.of(pid)
            .filter(ProcessHandle::isAlive)
            .flatMap(p -> p.info().startInstant())
            .map(start -> !start.isAfter(written))
            .orElse(false);
  }

  private static void delete(Path place) {
    try {
      Files.deleteIfExists(place);
    } catch (IOException e) {
      // it will be offered once more, which is better than lost work
    }
  }
}
