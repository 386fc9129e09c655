package hemline.shared.file;

import static hemline.shared.units.QuantityKind.LENGTH;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.OutlineChecks;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.shared.units.NumberText;
import hemline.shared.vehicle.FloorOutline;
import hemline.shared.vehicle.SealEdge;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads the floor of a machine file: its outline, and lip and gap of each edge. */
final class FloorReader {
  private static final double SMALLEST_AREA = 1e-5;
  private static final double LARGEST_AREA = 100;
  private static final int MOST_EDGES = 200;

  private final Path folder;
  private final List<Problem> problems;
  private final Map<String, LipProfile> lips = new HashMap<>();

  FloorReader(Path folder, List<Problem> problems) {
    this.folder = folder;
    this.problems = problems;
  }

  /** The floor, or null after a problem. */
  @Nullable FloorOutline read(@Nullable JsonKeys floor) {
    if (floor == null) {
      return null;
    }
    int before = problems.size();
    floor.allow("lengthUnit", "outline", "ceilingHeight", "lip", "gap", "edges");
    FileUnit unit = SchemaKey.lengthUnit(floor);
    int undrawn = problems.size();
    List<Vertex> vertices = OutlineKeys.vertices(floor, "outline", unit);
    if (problems.size() == undrawn) {
      checkOutline(floor, vertices);
    }
    boolean drawn = problems.size() == undrawn;
    double ceiling = QuantityKeys.needed(floor, "ceilingHeight", LENGTH, "1mm", "2m");
    int n = vertices.size();
    @Nullable LipProfile[] lip = new LipProfile[n];
    double[] gap = new double[n];
    Arrays.fill(gap, Double.NaN);
    boolean[] named = new boolean[n];
    edges(floor, lip, gap, named);
    boolean allLips = allSet(named, lip);
    if (floor.has("lip")) {
      @Nullable LipProfile usual = lip(floor, "lip");
      for (int i = 0; i < n; i++) {
        lip[i] = lip[i] == null ? usual : lip[i];
      }
    } else if (drawn && !allLips) {
      floor.missing("lip", "the lip file of the edges that name none");
    }
    fillGaps(floor, gap, drawn);
    checkCeiling(floor, gap, ceiling);
    if (problems.size() > before) {
      return null;
    }
    List<SealEdge> edges = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      LipProfile one = lip[i];
      if (one == null) {
        return null;
      }
      edges.add(new SealEdge(one, gap[i]));
    }
    return outline(vertices, edges, ceiling);
  }

  private static boolean allSet(boolean[] named, @Nullable LipProfile[] lip) {
    for (int i = 0; i < named.length; i++) {
      if (!named[i] || lip[i] == null) {
        return false;
      }
    }
    return true;
  }

  private static void fillGaps(JsonKeys floor, double[] gap, boolean drawn) {
    boolean all = Arrays.stream(gap).noneMatch(Double::isNaN);
    if (!floor.has("gap")) {
      if (drawn && !all) {
        floor.missing("gap", "the gap of the edges that give none, such as \"2mm\"");
      }
      return;
    }
    double usual = gap(floor);
    for (int i = 0; i < gap.length; i++) {
      gap[i] = Double.isNaN(gap[i]) ? usual : gap[i];
    }
  }

  private static void checkCeiling(JsonKeys floor, double[] gap, double ceiling) {
    double widest = Arrays.stream(gap).filter(Double::isFinite).max().orElse(0);
    if (ceiling <= widest) {
      floor.fault(
          "machine.ceiling",
          "ceilingHeight",
          "is "
              + NumberText.significant(1000 * ceiling, 4)
              + " mm, no more than the gap of "
              + NumberText.significant(1000 * widest, 4)
              + " mm under a lip; give the height of the floor above the ground");
    }
  }

  private void checkOutline(JsonKeys floor, List<Vertex> vertices) {
    List<Problem> faults = OutlineChecks.check(new DrawnOutline(vertices), "floor.outline");
    faults.forEach(p -> floor.fault(p.code(), "outline", p.text()));
    if (vertices.size() > MOST_EDGES) {
      floor.fault(
          "machine.edges",
          "outline",
          "has more than " + MOST_EDGES + " edges; draw curves as arcs");
    }
    if (!faults.isEmpty()) {
      return;
    }
    double area = Math.abs(Polygons.signedArea(vertices));
    if (area < SMALLEST_AREA || area > LARGEST_AREA) {
      floor.fault(
          "machine.range",
          "outline",
          "encloses "
              + (area < 1
                  ? NumberText.significant(1e4 * area, 3) + " cm²"
                  : NumberText.significant(area, 3) + " m²")
              + ", but a floor has between 0.1 cm² and 100 m²; check its lengthUnit");
    }
  }

  private void edges(JsonKeys floor, @Nullable LipProfile[] lip, double[] gap, boolean[] named) {
    List<JsonItem> items = floor.list("edges");
    for (int k = 0; k < items.size(); k++) {
      JsonKeys one = floor.group(items.get(k), floor.pathOf("edges[" + k + "]"));
      if (one == null) {
        continue;
      }
      one.allow("edge", "lip", "gap");
      int edge = one.index("edge", "the number of an edge, from 0");
      if (edge < 0) {
        continue;
      }
      if (edge >= named.length) {
        if (named.length > 0) {
          one.fault(
              "machine.edges",
              "edge",
              "there is no edge " + edge + "; they run from 0 to " + (named.length - 1));
        }
        continue;
      }
      if (named[edge]) {
        one.fault("machine.edges", "edge", "edge " + edge + " is described twice; keep one");
        continue;
      }
      named[edge] = true;
      if (one.has("lip")) {
        lip[edge] = lip(one, "lip");
      }
      if (one.has("gap")) {
        gap[edge] = gap(one);
      }
    }
  }

  private static double gap(JsonKeys keys) {
    return QuantityKeys.needed(keys, "gap", LENGTH, "0.05mm", "100mm");
  }

  private @Nullable LipProfile lip(JsonKeys keys, String key) {
    String name = keys.text(key, "plain-flat-8.json");
    if (name.isEmpty()) {
      return null;
    }
    LipProfile known = lips.get(name);
    if (known != null) {
      return known;
    }
    try {
      LipProfile lip = LipFile.load(folder.resolve(name)).profile();
      for (LipProfile other : lips.values()) {
        if (other.name().equals(lip.name()) && !other.equals(lip)) {
          keys.fault(
              "lip.name",
              key,
              "two lip files carry the name \"" + lip.name() + "\"; give each lip its own name");
        }
      }
      lips.put(name, lip);
      return lip;
    } catch (InputException e) {
      keys.fault(key, folder.resolve(name), e);
    } catch (InvalidPathException e) {
      keys.fault("file.read", key, "is no file name here");
    }
    return null;
  }

  /** The outline counter-clockwise, whichever way it was drawn; seals go with their edges. */
  private static FloorOutline outline(List<Vertex> vertices, List<SealEdge> edges, double ceiling) {
    if (Polygons.signedArea(vertices) > 0) {
      return new FloorOutline(vertices, edges, ceiling);
    }
    List<SealEdge> turned = new ArrayList<>(edges);
    Collections.reverse(turned);
    // edge i becomes edge n - 2 - i (modulo n): reversing gives n - 1 - i
    Collections.rotate(turned, -1);
    return new FloorOutline(Polygons.reversed(new Outline(vertices)).vertices(), turned, ceiling);
  }
}
