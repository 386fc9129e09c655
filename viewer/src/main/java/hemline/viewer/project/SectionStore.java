package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.problem.InputException;
import hemline.shared.result.GridRun;
import hemline.shared.section.SealSection;
import hemline.solver.field.FlowState;
import hemline.solver.flow.Closure;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Sections that a study has solved before its end, one file each: their figures by grid, and the
 * flow on the coarsest grid, which others start from, to the last bit.
 *
 * <p>Every file appears whole or not at all, sealed, with the names of study and section inside. A
 * file that is damaged or belongs to another section counts as missing, and a folder that is full
 * or cannot be written keeps nothing more: then only time is lost.
 */
public final class SectionStore {
  private static final String SCHEMA = "hemline.section/2";

  /** Most bytes of one study, some hundred medium sections. */
  private static final long MOST = 200L << 20;

  private final Path folder;
  private final long most;

  /** Maps in the order of their keys, so that the same content is the same file. */
  private final ObjectMapper json =
      new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

  SectionStore(Path folder) {
    this(folder, MOST);
  }

  /** A store in a folder, which is made when the first section is kept. */
  SectionStore(Path folder, long most) {
    this.folder = folder;
    this.most = most;
  }

  /**
   * Name of what is solved: the same for the same content.
   *
   * @param before names of the flows to start from
   */
  public String key(
      SealSection section, MeshLevel level, int grids, Closure closure, List<String> before) {
    return Engine.digest(json, List.of(section, level, grids, closure, before));
  }

  /** The section kept under a name; null when there is none. */
  public @Nullable GridFamily find(String key, SealSection section, MeshLevel level) {
    Path file = folder.resolve(key + KeptFile.END);
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS) || KeptFile.linked(folder)) {
      return null;
    }
    try {
      JsonNode document = KeptFile.read(json, file, SCHEMA);
      if (!document.path("section").asText().equals(key)
          || !document.path("study").asText().equals(study())) {
        return null;
      }
      Closure closure = Closure.valueOf(document.path("closure").asText());
      List<GridSolution> grids = new ArrayList<>();
      for (JsonNode run : document.path("runs")) {
        GridRun read = json.treeToValue(run, GridRun.class);
        if (read == null || Whole.missing(read) != null) {
          return null;
        }
        grids.add(new GridSolution(read));
      }
      JsonNode flow = document.get("flow");
      SolvedSection start = null;
      if (flow != null) {
        start = FamilySolver.unfilled(section, level, closure);
        if (!fill(start.state(), flow.binaryValue())) {
          return null;
        }
      }
      JsonNode lost = document.get("lost");
      JsonNode other = document.get("other");
      GridRun second = other == null ? null : json.treeToValue(other, GridRun.class);
      if (second != null && Whole.missing(second) != null) {
        return null;
      }
      return new GridFamily(
          closure, grids, start, lost == null ? null : Closure.valueOf(lost.asText()), second);
    } catch (IOException | InputException | IllegalArgumentException e) {
      return null;
    }
  }

  /** Keeps a section under a name. */
  public synchronized void keep(String key, GridFamily family) {
    ObjectNode document = KeptFile.start(json, SCHEMA);
    document.put("study", study());
    document.put("section", key);
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
      document.put("flow", bytes(family.start().state()));
    }
    try {
      String text = KeptFile.text(json, document);
      if (size() + text.length() <= most) {
        KeptFile.write(folder.resolve(key + KeptFile.END), text);
      }
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

  /** Name of the study, which tells question and build of the solver. */
  private String study() {
    return String.valueOf(folder.getFileName());
  }

  private long size() throws IOException {
    long size = 0;
    for (Path file : KeptFile.in(folder)) {
      size += Files.size(file);
    }
    return size;
  }

  private static List<double[]> arrays(FlowState s) {
    return List.of(
        s.u, s.v, s.w, s.p, s.k, s.omega, s.nuTilde, s.eddyViscosity, s.flux, s.boundaryFlux);
  }

  private static byte[] bytes(FlowState state) {
    int length = 2 + arrays(state).stream().mapToInt(a -> a.length).sum();
    ByteBuffer buffer = ByteBuffer.allocate(length * Double.BYTES);
    buffer.putDouble(state.outletPressure).putDouble(state.inletFlow);
    for (double[] array : arrays(state)) {
      for (double value : array) {
        buffer.putDouble(value);
      }
    }
    return buffer.array();
  }

  /** False when the bytes are not those of a flow of this size. */
  private static boolean fill(FlowState state, byte[] bytes) {
    int length = 2 + arrays(state).stream().mapToInt(a -> a.length).sum();
    if (bytes.length != length * Double.BYTES) {
      return false;
    }
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    state.outletPressure = buffer.getDouble();
    state.inletFlow = buffer.getDouble();
    for (double[] array : arrays(state)) {
      buffer.asDoubleBuffer().get(array);
      buffer.position(buffer.position() + array.length * Double.BYTES);
    }
    return true;
  }
}
