package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Values of machines that were changed and not saved, put by as they are changed. Each running
 * program has one file. The folder may come from anybody: what it says are texts for the reader of
 * machine files, which judges them, and nothing is written by it.
 */
public final class MachineRescue {
  private static final String SCHEMA = "hemline.machine-rescue/1";

  private final Path folder;
  private final Program program;
  private final ObjectMapper json = new ObjectMapper();

  /**
   * Values that were not saved.
   *
   * @param machine its file
   * @param values text by key
   * @param place file that holds them
   */
  public record Left(Path machine, Map<String, String> values, Path place) {}

  /** A store in a folder of a project, for this program. */
  public MachineRescue(Path folder) {
    this(folder, Program.here());
  }

  /** A store in a folder, for another program. */
  public MachineRescue(Path folder, Program program) {
    this.folder = folder.toAbsolutePath().normalize();
    this.program = program;
  }

  /**
   * Puts values by; none clear what was put by.
   *
   * @throws InputException if they cannot be written
   */
  public void putBy(Path machine, Map<String, String> values) throws InputException {
    if (values.isEmpty()) {
      KeptFile.drop(own());
      return;
    }
    ObjectNode document = KeptFile.start(json, SCHEMA);
    program.write(document);
    document.put("file", machine.toAbsolutePath().normalize().toString());
    ObjectNode texts = document.putObject("values");
    values.forEach(texts::put);
    try {
      KeptFile.write(own(), KeptFile.text(json, document));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Values that an ended program left for a machine file of a list; null for none. */
  public @Nullable Left left(List<Path> machines) {
    for (Path place : KeptFile.in(folder)) {
      try {
        JsonNode d = KeptFile.read(json, place, SCHEMA);
        Program owner = Program.read(d);
        Path file = Path.of(d.path("file").asText());
        boolean known =
            machines.stream().anyMatch(one -> one.toAbsolutePath().normalize().equals(file));
        if (known && !place.equals(own()) && !owner.mayRun()) {
          Map<String, String> values = new LinkedHashMap<>();
          d.path("values").properties().forEach(v -> values.put(v.getKey(), v.getValue().asText()));
          return new Left(file, values, place);
        }
      } catch (InputException e) {
        KeptFile.setAside(place, e);
      } catch (DateTimeException | InvalidPathException e) {
        KeptFile.setAside(place, new InputException("kept.form", place.toString(), "is damaged"));
      }
    }
    return null;
  }

  /** Forgets values that were left. */
  public void drop(Left left) {
    KeptFile.drop(left.place());
  }

  private Path own() {
    return folder.resolve("machine-" + program.id() + KeptFile.END);
  }
}
