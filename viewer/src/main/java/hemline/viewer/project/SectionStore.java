package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.TextFiles;
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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Sections that a study has solved before its end, one file each: their figures by grid, and the
 * flow on the coarsest grid, which others start from, to the last bit.
 *
 * <p>Every file appears whole or not at all. A file that cannot be read counts as missing, and a
 * folder that is full or cannot be written keeps nothing more: then only time is lost.
 */
public final class SectionStore {
  private static final String SCHEMA = "hemline.section/1";
  private static final String END = ".json";

  /** Most bytes of one study, some hundred medium sections. */
  private static final long MOST = 200L << 20;

  private final Path folder;
  private final long most;
  private final ObjectMapper json = new ObjectMapper();

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
    Path file = folder.resolve(key + END);
    if (!Files.isRegularFile(file)) {
      return null;
    }
    try {
      JsonNode document = json.readTree(TextFiles.read(file));
      if (!document.path("schema").asText().equals(SCHEMA)) {
        return null;
      }
      Closure closure = Closure.valueOf(document.path("closure").asText());
      List<GridSolution> grids = new ArrayList<>();
      for (JsonNode run : document.path("runs")) {
        grids.add(new GridSolution(json.treeToValue(run, GridRun.class)));
      }
      JsonNode flow = document.get("flow");
      SolvedSection start = null;
      if (flow != null) {
        start = FamilySolver.unfilled(section, level, closure);
        if (!fill(start.state(), flow.binaryValue())) {
          return null;
        }
      }
      return new GridFamily(closure, grids, start);
    } catch (IOException | InputException | IllegalArgumentException e) {
      return null;
    }
  }

  /** Keeps a section under a name. */
  public synchronized void keep(String key, GridFamily family) {
    ObjectNode document = json.createObjectNode();
    document.put("schema", SCHEMA);
    document.put("closure", family.closure().name());
    ArrayNode runs = document.putArray("runs");
    family.runs().forEach(run -> runs.add(json.<JsonNode>valueToTree(run)));
    if (family.start() != null) {
      document.put("flow", bytes(family.start().state()));
    }
    try {
      String text = json.writeValueAsString(document);
      if (size() + text.length() <= most) {
        Files.createDirectories(folder);
        TextFiles.write(folder.resolve(key + END), text);
      }
    } catch (IOException | InputException e) {
      // nothing is kept; the section is solved again when it is needed
    }
  }

  /** Forgets all sections. */
  public void clear() {
    try {
      for (Path file : files()) {
        Files.deleteIfExists(file);
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      // what stays does no harm
    }
  }

  private List<Path> files() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(END)).toList();
    }
  }

  private long size() throws IOException {
    long size = 0;
    for (Path file : files()) {
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
