package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import hemline.shared.problem.NoticeKind;
import hemline.shared.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Studies of a project on disk, one file each, named by what was asked of which solver: the same
 * question finds its answer again after a restart, another build of the solver does not.
 *
 * <p>Every file appears whole or not at all, sealed. The folder may come from anybody: a file that
 * is damaged, or answers another question than its name says, counts as missing.
 */
public final class StudyStore {
  private static final String SCHEMA = "hemline.study/3";

  /** The one before, whose notices are sentences. */
  private static final String FORMER = "hemline.study/2";

  /**
   * What was found.
   *
   * @param studies newest first
   * @param refused files that are no sound studies, each once
   */
  public record Kept(List<KeptStudy> studies, List<Problem> refused) {
    public Kept {
      studies = List.copyOf(studies);
      refused = List.copyOf(refused);
    }
  }

  private final Path folder;
  private final String engine;

  private final ObjectMapper json = KeptForm.json();

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
    return new SectionStore(folder.resolve("sections").resolve(key(question)), engine);
  }

  /** The answer kept to a question; null when there is none that can be believed. */
  public @Nullable KeptStudy find(StudyQuestion question) {
    Path file = file(question);
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return null;
    }
    try {
      return read(file);
    } catch (InputException e) {
      return null;
    }
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
    ObjectNode document = KeptFile.start(json, SCHEMA);
    document.set("study", json.valueToTree(study));
    try {
      KeptFile.write(file(study.question()), KeptFile.text(json, document));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    } catch (InputException e) {
      throw new InputException(
          "study.keep",
          folder.toString(),
          "the study cannot be kept here; check the folder's permissions and space");
    }
    if (study.complete()) {
      sections(study.question()).clear();
    }
  }

  /**
   * All studies that can be read, newest first, those of other builds of the solver among them.
   * Files that are none are set aside.
   */
  public Kept all() {
    List<KeptStudy> studies = new ArrayList<>();
    List<Problem> refused = new ArrayList<>();
    for (Path file : KeptFile.in(folder)) {
      try {
        studies.add(read(file));
      } catch (InputException e) {
        refused.add(KeptFile.setAside(file, e));
      }
    }
    studies.sort(Comparator.comparing((KeptStudy s) -> Instant.parse(s.run().when())).reversed());
    return new Kept(studies, refused);
  }

  /** Forgets a study. */
  public void remove(KeptStudy study) {
    try {
      // the file may be named by another build of the solver
      StudyStore store = new StudyStore(folder, study.run().engine());
      store.sections(study.question()).clear();
      Files.deleteIfExists(store.file(study.question()));
    } catch (IOException e) {
      // it stays in the list, where it does no harm
    }
  }

  private Path file(StudyQuestion question) {
    return folder.resolve(key(question) + KeptFile.END);
  }

  /** A study that is whole, answers the question it names and is named by that question. */
  private KeptStudy read(Path file) throws InputException {
    JsonNode document = KeptFile.read(json, file, SCHEMA, FORMER);
    if (document.path("schema").asText().equals(FORMER)) {
      document.findValues("notices").forEach(list -> list.forEach(this::renew));
    }
    KeptStudy study;
    String why;
    try {
      study = json.treeToValue(document.path("study"), KeptStudy.class);
      why = study == null ? "holds no study" : fault(study, file);
    } catch (JsonProcessingException | IllegalArgumentException e) {
      throw new InputException("kept.form", file.toString(), "is damaged: it holds no whole study");
    }
    if (!why.isEmpty()) {
      throw new InputException("kept.form", file.toString(), "is damaged: it " + why);
    }
    return study;
  }

  /** Makes a notice of the sentence that stands in its place. */
  private void renew(JsonNode former) {
    if (former instanceof ObjectNode notice && notice.path("text").isTextual()) {
      String sentence = notice.path("text").textValue();
      notice.removeAll().setAll(json.<ObjectNode>valueToTree(NoticeKind.FORMER.of(sentence)));
    }
  }

  private String fault(KeptStudy study, Path file) {
    String missing = Whole.missing(study);
    if (missing != null) {
      return "lacks \"" + missing + "\"";
    }
    try {
      Instant.parse(study.run().when());
    } catch (DateTimeException e) {
      return "does not tell when it was solved";
    }
    Path named = new StudyStore(folder, study.run().engine()).file(study.question());
    if (!named.getFileName().equals(file.getFileName())) {
      return "answers another question than its name says";
    }
    return study.answersItsQuestion() ? "" : "does not answer its own question";
  }
}
