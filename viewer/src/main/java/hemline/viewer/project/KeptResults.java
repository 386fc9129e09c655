package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionResult;
import hemline.solver.study.LeakKey;
import hemline.solver.study.ResultStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what solved sections gave in a folder, one sealed file each, named by the content of the
 * question and the solver.
 *
 * <p>A kept leak decides whether a machine holds. A file is therefore believed only if its seal is
 * sound and what it says it was made of is what is asked, of the solver that asks. Any other counts
 * as missing and is replaced once the section is solved again; a folder that cannot be written
 * keeps nothing. Then only time is lost.
 *
 * @param <T> a record, to the last bit the same when it is found
 */
public final class KeptResults<T extends Record> implements ResultStore<T> {
  /** Digits that name the shelves, so that no folder holds all of a large batch. */
  private static final int SHELF_DIGITS = 2;

  /** Most files of one of the 256 shelves: 150,000 in all, below 1 GB. */
  private static final int MOST = 600;

  /** Share of the oldest files that make room when there are more. */
  private static final double DROPPED = 0.1;

  private final Class<T> kind;
  private final String schema;
  private final Path folder;
  private final String solver;
  private final int most;
  private final ObjectMapper json =
      KeptForm.json().enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES);

  KeptResults(Class<T> kind, String schema, Path folder, String solver, int most) {
    this.kind = kind;
    this.schema = schema;
    this.folder = folder;
    this.solver = solver;
    this.most = most;
  }

  /**
   * Figures of sections.
   *
   * @param solver {@link Engine#fingerprint} of the solver that asks
   */
  public static KeptResults<SectionResult> figures(Path folder, String solver) {
    return new KeptResults<>(SectionResult.class, "hemline.figures/2", folder, solver, MOST);
  }

  /** Leaks for the balance of machines; parameters as for {@link #figures}. */
  public static KeptResults<LeakPoint> leaks(Path folder, String solver) {
    return new KeptResults<>(LeakPoint.class, "hemline.leak/5", folder, solver, MOST);
  }

  @Override
  public @Nullable T find(LeakOrigin asked) {
    Path file = file(asked);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || solver.equals(Engine.UNKNOWN)) {
      return null;
    }
    try {
      JsonNode document = KeptFile.read(json, file, schema);
      if (!document.path("asked").asText().equals(asked.text())
          || !document.path("solver").asText().equals(solver)) {
        return null;
      }
      T result = json.treeToValue(document.path("result"), kind);
      return result == null || Whole.missing(result) != null ? null : result;
    } catch (InputException | JsonProcessingException | IllegalArgumentException e) {
      return null;
    }
  }

  @Override
  public void keep(LeakOrigin asked, T result) {
    ObjectNode document = KeptFile.start(json, schema);
    document.put("asked", asked.text());
    document.put("solver", solver);
    document.set("result", json.valueToTree(result));
    try {
      KeptFile.writeFigures(file(asked), KeptFile.text(json, document));
      makeRoom(shelf(name(asked)));
    } catch (InputException | JsonProcessingException e) {
      // nothing is kept; the section is solved again when it is needed
    }
  }

  private String name(LeakOrigin asked) {
    return LeakKey.digest(asked.text() + "solver " + solver);
  }

  private Path shelf(String name) {
    return folder.resolve(name.substring(0, SHELF_DIGITS));
  }

  private Path file(LeakOrigin asked) {
    String name = name(asked);
    return shelf(name).resolve(name + KeptFile.END);
  }

  /** Drops the oldest files where there are too many; those of former solvers are among them. */
  private void makeRoom(Path shelf) {
    List<Path> files = KeptFile.in(shelf).stream().filter(KeptResults::named).toList();
    if (files.size() <= most) {
      return;
    }
    files.stream()
        .sorted(Comparator.comparingLong(KeptResults::written))
        .limit(files.size() - (long) ((1 - DROPPED) * most))
        .forEach(
            file -> {
              try {
                Files.deleteIfExists(file);
              } catch (IOException e) {
                // another program dropped it
              }
            });
  }

  /** True for the name of a kept file; others of the folder are not touched. */
  private static boolean named(Path file) {
    return file.getFileName().toString().matches("[0-9a-f]+" + Pattern.quote(KeptFile.END));
  }

  private static long written(Path file) {
    try {
      return Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toMillis();
    } catch (IOException e) {
      return Long.MAX_VALUE;
    }
  }
}
