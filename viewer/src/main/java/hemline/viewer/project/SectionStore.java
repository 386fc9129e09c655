package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import hemline.shared.result.GridRun;
import hemline.shared.section.Drive;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.flow.FlowField;
import hemline.solver.flow.SolvedSection;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.solver.study.LeakKey;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Solved sections, one file each: their figures by grid, and to the last bit the flow on the
 * coarsest grid, which others start from, and where pictures were asked that on the finest.
 *
 * <p>Every file appears whole or not at all, sealed, with the question and the solver inside. A
 * file that is damaged, of another solver or of another section counts as missing, and a folder
 * that cannot be written keeps nothing: then only time is lost. A folder that is full lets go its
 * oldest.
 */
public final class SectionStore {
  private static final String SCHEMA = "hemline.section/3";

  /** Most bytes of a folder, about a thousand medium sections. */
  private static final long MOST = 1L << 30;

  private final Path folder;
  private final String solver;
  private final long most;

  /** Bytes of the folder at the last look, and what was kept since; below 0 before the first. */
  private long held = -1;

  private final ObjectMapper json = KeptForm.json();

  /**
   * A store in a folder, which is made when the first section is kept.
   *
   * @param solver {@link Engine#fingerprint} of the solver that asks
   */
  public SectionStore(Path folder, String solver) {
    this(folder, solver, MOST);
  }

  SectionStore(Path folder, String solver, long most) {
    this.folder = folder;
    this.solver = solver;
    this.most = most;
  }

  /**
   * A family that solves only what is not kept here.
   *
   * @param fields true where pictures are wanted: the finest flow is kept too, and solved again
   *     where it is not kept
   */
  public SectionFamily over(SectionFamily family, boolean fields) {
    return new KeptFamily(family, this, fields);
  }

  /**
   * Name of what is solved: the same for the same content, whatever lips and ducts are called.
   *
   * @param starts names of the flows to start from
   */
  String name(SolveRequest request, List<String> starts) {
    return LeakKey.digest(question(request, starts) + solver);
  }

  private String question(SolveRequest request, List<String> starts) {
    Drive drive = request.section().drive();
    JsonNode asked =
        json.valueToTree(
            List.of(
                request.section() instanceof SealSection ? "lip" : "duct",
                request.section(),
                drive == null ? "walls" : drive.getClass().getSimpleName(),
                request.level(),
                request.grids(),
                request.closure(),
                starts));
    for (String word : List.of("name", "notes", "family")) {
      asked.findParents(word).forEach(of -> ((ObjectNode) of).remove(word));
    }
    return asked.toString();
  }

  /** The section kept for a request; null when there is none, or none with a field if asked. */
  @Nullable GridFamily find(SolveRequest request, List<String> starts, boolean fields) {
    Path file = file(request, starts);
    if (solver.equals(Engine.UNKNOWN)
        || !Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        || KeptFile.linked(folder)) {
      return null;
    }
    try {
      JsonNode document = KeptFile.read(json, file, SCHEMA);
      boolean same =
          document.path("asked").asText().equals(question(request, starts))
              && document.path("solver").asText().equals(solver);
      return same ? family(document, request, fields) : null;
    } catch (IOException | InputException | IllegalArgumentException e) {
      return null;
    }
  }

  private @Nullable GridFamily family(JsonNode document, SolveRequest request, boolean fields)
      throws IOException {
    Closure closure = Closure.valueOf(document.path("closure").asText());
    List<GridSolution> grids = new ArrayList<>();
    for (JsonNode node : document.path("runs")) {
      GridRun run = run(node);
      if (run == null) {
        return null;
      }
      grids.add(new GridSolution(run));
    }
    SolvedSection start = null;
    JsonNode flow = document.get("flow");
    if (flow != null && request.section() instanceof SealSection lip) {
      start = FamilySolver.unfilled(lip, request.level(), closure);
      if (!FlowBytes.fill(start.state(), flow.binaryValue())) {
        return null;
      }
    }
    JsonNode lost = document.get("lost");
    JsonNode other = document.get("other");
    GridRun second = other == null ? null : run(other);
    if (other != null && second == null) {
      return null;
    }
    GridFamily figures =
        new GridFamily(
            closure, grids, start, lost == null ? null : Closure.valueOf(lost.asText()), second);
    return fields ? withField(figures, document.get("field"), request) : figures;
  }

  private @Nullable GridRun run(JsonNode node) throws JsonProcessingException {
    GridRun run = json.treeToValue(node, GridRun.class);
    return run == null || Whole.missing(run) != null ? null : run;
  }

  /** The same family with the flow on its finest grid; null where that was not kept. */
  private static @Nullable GridFamily withField(
      GridFamily family, @Nullable JsonNode kept, SolveRequest request) throws IOException {
    GridSolution finest = family.finestUsable();
    if (finest == null) {
      return family;
    }
    if (kept == null) {
      return null;
    }
    int place = family.grids().indexOf(finest);
    FlowField field =
        FlowBytes.field(
            FamilySolver.mesh(request.section(), request.level(), place), kept.binaryValue());
    if (field == null) {
      return null;
    }
    List<GridSolution> grids = new ArrayList<>(family.grids());
    grids.set(place, new GridSolution(finest.run(), field));
    return new GridFamily(family.closure(), grids, family.start(), family.lost(), family.other());
  }

  /**
   * Keeps a section.
   *
   * @param fields true to keep the flow on the finest grid too
   */
  synchronized void keep(
      SolveRequest request, List<String> starts, GridFamily family, boolean fields) {
    ObjectNode document = KeptFile.start(json, SCHEMA);
    document.put("solver", solver);
    document.put("asked", question(request, starts));
    document.put("closure", family.closure().name());
    ArrayNode runs = document.putArray("runs");
    family.runs().forEach(run -> runs.add(json.<JsonNode>valueToTree(run)));
    if (family.lost() != null) {
      document.put("lost", family.lost().name());
    }
    if (family.other() != null) {
      document.set("other", json.<JsonNode>valueToTree(family.other()));
    }
    if (family.start() != null) {
      document.put("flow", FlowBytes.of(family.start().state()));
    }
    GridSolution finest = family.finestUsable();
    if (fields && finest != null && finest.hasField()) {
      document.put("field", FlowBytes.of(finest.field()));
    }
    try {
      String text = KeptFile.text(json, document);
      makeRoom(text.length());
      KeptFile.writeFigures(file(request, starts), text);
    } catch (IOException | InputException e) {
      // nothing is kept; the section is solved again when it is needed
    }
  }

  /** Forgets all sections. */
  public void clear() {
    try {
      for (Path file : KeptFile.in(folder)) {
        Files.deleteIfExists(file);
      }
      if (!KeptFile.linked(folder)) {
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      // what stays does no harm
    }
  }

  private Path file(SolveRequest request, List<String> starts) {
    return folder.resolve(name(request, starts) + KeptFile.END);
  }

  /** Lets go the oldest files until the rest leaves room for a new one. */
  private void makeRoom(long length) throws IOException {
    if (held >= 0 && held + length <= most) {
      held += length;
      return;
    }
    List<Kept> kept = new ArrayList<>();
    long size = length;
    for (Path file : KeptFile.in(folder)) {
      kept.add(new Kept(file, Files.size(file), Files.getLastModifiedTime(file).toMillis()));
      size += kept.get(kept.size() - 1).size();
    }
    kept.sort(Comparator.comparingLong(Kept::written));
    for (int k = 0; k < kept.size() && size > most; k++) {
      Files.deleteIfExists(kept.get(k).file());
      size -= kept.get(k).size();
    }
    held = size;
  }

  private record Kept(Path file, long size, long written) {}
}
