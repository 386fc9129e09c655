package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import hemline.solver.study.LeakKey;
import hemline.solver.study.ResultStore;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the figures of solved sections in a folder, one sealed file each, named by the content of
 * the question and the solver.
 *
 * <p>A file is believed only if its seal is sound and what it says it was made of is what is asked,
 * of the solver that asks. Any other counts as missing and is replaced; a folder that cannot be
 * written keeps nothing. Then only time is lost.
 */
public final class KeptResults implements ResultStore {
  private static final String SCHEMA = "hemline.figures/1";

  /** Digits that name the folders of the files, so that none holds all of a large batch. */
  private static final int FOLDER_DIGITS = 2;

  private final Path folder;
  private final String solver;
  private final ObjectMapper json =
      new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

  /**
   * Results of a solver.
   *
   * @param solver {@link Engine#fingerprint} of the solver that asks
   */
  public KeptResults(Path folder, String solver) {
    this.folder = folder;
    this.solver = solver;
  }

  /** Where they are kept for this user. */
  public static Path usual() {
    return LeakFolder.usual().resolveSibling("figures");
  }

  @Override
  public @Nullable SectionResult find(LeakOrigin asked) {
    Path file = file(asked);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || solver.equals(Engine.UNKNOWN)) {
      return null;
    }
    try {
      JsonNode document = KeptFile.read(json, file, SCHEMA);
      if (!document.path("asked").asText().equals(asked.text())
          || !document.path("solver").asText().equals(solver)) {
        return null;
      }
      SectionResult result = json.treeToValue(document.path("result"), SectionResult.class);
      return result == null || Whole.missing(result) != null ? null : result;
    } catch (InputException | JsonProcessingException | IllegalArgumentException e) {
      return null;
    }
  }

  @Override
  public void keep(LeakOrigin asked, SectionResult result) {
    ObjectNode document = KeptFile.start(json, SCHEMA);
    document.put("asked", asked.text());
    document.put("solver", solver);
    document.set("result", json.valueToTree(result));
    try {
      KeptFile.writeFigures(file(asked), KeptFile.text(json, document));
    } catch (InputException | JsonProcessingException e) {
      // nothing is kept; the section is solved again when it is needed
    }
  }

  private Path file(LeakOrigin asked) {
    String name = LeakKey.digest(asked.text() + "solver " + solver);
    return folder.resolve(name.substring(0, FOLDER_DIGITS)).resolve(name + KeptFile.END);
  }
}
