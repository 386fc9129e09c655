package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Studies of a project on disk, one file each, named by what was asked of which solver: the same
 * question finds its answer again after a restart, another build of the solver does not.
 *
 * <p>Every file appears whole or not at all. A file that cannot be read counts as missing.
 */
public final class StudyStore {
  private static final String SCHEMA = "hemline.study/1";
  private static final String END = ".json";

  private final Path folder;
  private final String engine;
  private final ObjectMapper json = new ObjectMapper();

  /**
   * A store in a folder, which is made when the first study is kept.
   *
   * @param engine fingerprint of the solver that answers
   */
  public StudyStore(Path folder, String engine) {
    this.folder = folder;
    this.engine = engine;
  }

  public String engine() {
    return engine;
  }

  /** Name of a question: the same for the same content, whatever lip notes say. */
  public String key(StudyQuestion question) {
    return Engine.digest(json, List.of(engine, question));
  }

  /** Sections that a study has solved before its end. */
  public SectionStore sections(StudyQuestion question) {
    return new SectionStore(folder.resolve("sections").resolve(key(question)));
  }

  /** The answer kept to a question; null when there is none. */
  public @Nullable KeptStudy find(StudyQuestion question) {
    return read(file(question));
  }

  /**
   * Keeps a study; one stopped before its end never replaces a whole one. The sections of a whole
   * one are forgotten.
   *
   * @throws InputException if it cannot be written
   */
  public void keep(KeptStudy study) throws InputException {
    KeptStudy before = find(study.question());
    if (before != null && before.complete() && !study.complete()) {
      return;
    }
    try {
      Files.createDirectories(folder);
      ObjectNode document = json.createObjectNode();
      document.put("schema", SCHEMA);
      document.set("study", json.valueToTree(study));
      TextFiles.write(file(study.question()), json.writeValueAsString(document));
      if (study.complete()) {
        sections(study.question()).clear();
      }
    } catch (IOException e) {
      throw new InputException(
          "study.keep",
          folder.toString(),
          "the study cannot be kept here; check the folder's permissions and space");
    }
  }

  /** All studies that can be read, newest first, those of other builds of the solver among them. */
  public List<KeptStudy> all() {
    List<KeptStudy> studies = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.filter(f -> f.toString().endsWith(END)).sorted().toList()) {
          KeptStudy study = read(file);
          if (study != null) {
            studies.add(study);
          }
        }
      } catch (IOException e) {
        return List.of();
      }
    }
    studies.sort(Comparator.comparing(KeptStudy::when).reversed());
    return studies;
  }

  /** Forgets a study. */
  public void remove(KeptStudy study) {
    try {
      // the file may be named by another build of the solver
      StudyStore store = new StudyStore(folder, study.engine());
      store.sections(study.question()).clear();
      Files.deleteIfExists(store.file(study.question()));
    } catch (IOException e) {
      // it stays in the list, where it does no harm
    }
  }

  private Path file(StudyQuestion question) {
    return folder.resolve(key(question) + END);
  }

  private @Nullable KeptStudy read(Path file) {
    if (!Files.isRegularFile(file)) {
      return null;
    }
    try {
      JsonNode document = json.readTree(Files.readString(file));
      if (!document.path("schema").asText().equals(SCHEMA)) {
        return null;
      }
      return json.treeToValue(document.get("study"), KeptStudy.class);
    } catch (IOException | IllegalArgumentException e) {
      return null;
    }
  }
}
