package hemline.solver.grid;

import hemline.shared.geometry.Ring;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * Builds the mesh of a rectangle minus solids on given grid lines.
 *
 * <p>Solids may touch or overlap each other and stick out of the rectangle. Surface that lies
 * inside another solid vanishes; where surfaces of two solids coincide the first one keeps them. A
 * rectangle that a thin solid splits becomes separate cells, never linked through the solid; {@link
 * Mesh#cellAt} then names the largest, and a grid edge may hold several faces. Openings shorter
 * than {@link #SLIVER} of their grid edge are closed by wall.
 */
public final class MeshBuilder {
  /** Coordinates closer than this share of the domain's size are the same. */
  static final double SAME = 1e-9;

  /** An opening shorter than this share of its grid edge is closed. */
  static final double SLIVER = 1e-4;

  private final GridLines lines;
  private final CellParts parts;
  private final PartLinks links;
  private final int[] rootOf;
  private final int[] cellOf;
  private int cells;
  private final Mesh mesh;

  private MeshBuilder(
      GridLines lines, List<Ring> solids, Set<Integer> openPatches, Runnable checkpoint) {
    this.lines = lines;
    double tolerance = tolerance(lines);
    LineSnap snapX = new LineSnap(lines.x(), tolerance);
    LineSnap snapY = new LineSnap(lines.y(), tolerance);
    FluidOutline outline = new FluidOutline(lines, solids, snapX, snapY);
    checkpoint.run();
    CutNetwork network = new CutNetwork(lines, outline, snapX, snapY, tolerance);
    GridEdges across = new GridEdges(network, true, checkpoint);
    GridEdges up = new GridEdges(network, false, checkpoint);
    parts = CellCutter.cut(network, across, up, checkpoint);
    links = new PartLinks(network, across, up, parts, checkpoint);
    checkpoint.run();
    rootOf = PartJoin.join(lines, parts, links);
    checkpoint.run();
    boolean[] linked = closeSlivers();
    cellOf = numberCells(linked, openPatches);
    checkpoint.run();
    mesh = assemble(linked);
  }

  /**
   * Builds the mesh of the fluid that touches the left or right side.
   *
   * @see #build(GridLines, List, Set)
   */
  public static Mesh build(GridLines lines, List<Ring> solids) {
    return build(lines, solids, Set.of(Patch.LEFT, Patch.RIGHT));
  }

  /**
   * Builds the mesh of the fluid that touches an open side; fluid sealed off from all of them is
   * left out.
   *
   * @param lines grid lines; the outermost ones bound the domain
   * @param solids simple polygons, counter-clockwise; solid k is patch {@code Patch.FIRST_SOLID +
   *     k}
   * @param openPatches sides of the domain ({@link Patch#LEFT} to {@link Patch#TOP}) that fluid
   *     must reach; empty for a closed cavity, of which the largest connected fluid is kept
   * @throws IllegalArgumentException if no fluid is left
   */
  public static Mesh build(GridLines lines, List<Ring> solids, Set<Integer> openPatches) {
    return build(lines, solids, openPatches, () -> {});
  }

  /**
   * Builds a mesh unless it is stopped.
   *
   * @param checkpoint run again and again; what it throws ends the work
   * @see #build(GridLines, List, Set)
   */
  public static Mesh build(
      GridLines lines, List<Ring> solids, Set<Integer> openPatches, Runnable checkpoint) {
    return new MeshBuilder(lines, solids, openPatches, checkpoint).mesh;
  }

  /** Distance below which coordinates are the same, m. */
  static double tolerance(GridLines lines) {
    double size =
        Math.max(lines.x()[lines.nx()] - lines.x()[0], lines.y()[lines.ny()] - lines.y()[0]);
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < lines.nx(); i++) {
      smallest = Math.min(smallest, lines.x()[i + 1] - lines.x()[i]);
    }
    for (int j = 0; j < lines.ny(); j++) {
      smallest = Math.min(smallest, lines.y()[j + 1] - lines.y()[j]);
    }
    return Math.min(SAME * size, 1e-3 * smallest);
  }

  /** Closes short openings between different cells; tells which links stay open. */
  private boolean[] closeSlivers() {
    boolean[] linked = new boolean[links.size()];
    int nx = lines.nx();
    for (int l = 0; l < linked.length; l++) {
      linked[l] = true;
      if (links.fromNode.get(l) < 0 || rootOf[links.low.get(l)] == rootOf[links.high.get(l)]) {
        continue;
      }
      int rect = parts.rectangle.get(links.low.get(l));
      boolean vertical = links.vertical.get(l) != 0;
      double edge =
          vertical
              ? lines.y()[rect / nx + 1] - lines.y()[rect / nx]
              : lines.x()[rect % nx + 1] - lines.x()[rect % nx];
      if (links.length.get(l) < SLIVER * edge) {
        linked[l] = false;
        links.close(
            links.low.get(l),
            links.high.get(l),
            vertical,
            links.fromNode.get(l),
            links.toNode.get(l));
      }
    }
    return linked;
  }

  /** Number of the cell of every part, -1 for sealed ones; counts the cells. */
  private int[] numberCells(boolean[] linked, Set<Integer> openPatches) {
    int n = parts.area.size();
    int[] region = new int[n];
    for (int p = 0; p < n; p++) {
      region[p] = rootOf[p];
    }
    for (int l = 0; l < linked.length; l++) {
      if (linked[l]) {
        int a = top(region, links.low.get(l));
        int b = top(region, links.high.get(l));
        region[Math.max(a, b)] = Math.min(a, b);
      }
    }
    boolean[] kept = new boolean[n];
    if (openPatches.isEmpty()) {
      double[] volume = new double[n];
      int largest = -1;
      for (int p = 0; p < n; p++) {
        int r = top(region, p);
        volume[r] += parts.area.get(p);
        largest = largest < 0 || volume[r] > volume[largest] ? r : largest;
      }
      if (largest >= 0) {
        kept[largest] = true;
      }
    } else {
      for (int s = 0; s < parts.sPart.size(); s++) {
        if (openPatches.contains(parts.sPatch.get(s))) {
          kept[top(region, parts.sPart.get(s))] = true;
        }
      }
    }
    int[] number = new int[n];
    int[] cellOfRoot = new int[n];
    Arrays.fill(cellOfRoot, -1);
    for (int p = 0; p < n; p++) {
      if (!kept[top(region, p)]) {
        number[p] = -1;
        continue;
      }
      if (cellOfRoot[rootOf[p]] < 0) {
        cellOfRoot[rootOf[p]] = cells++;
      }
      number[p] = cellOfRoot[rootOf[p]];
    }
    if (cells == 0) {
      throw new IllegalArgumentException("no fluid reaches an open side of the domain");
    }
    return number;
  }

  private static int top(int[] region, int part) {
    int r = part;
    while (region[r] != r) {
      region[r] = region[region[r]];
      r = region[r];
    }
    return r;
  }

  private Mesh assemble(boolean[] linked) {
    double[] volume = new double[cells];
    double[] cx = new double[cells];
    double[] cy = new double[cells];
    for (int p = 0; p < cellOf.length; p++) {
      int c = cellOf[p];
      if (c >= 0) {
        double a = parts.area.get(p);
        volume[c] += a;
        // weighted mean, exact for a cell of one part
        cx[c] += (parts.cx.get(p) - cx[c]) * (a / volume[c]);
        cy[c] += (parts.cy.get(p) - cy[c]) * (a / volume[c]);
      }
    }
    int[] order = facesByOwner(linked);
    int faces = order.length;
    int[] owner = new int[faces];
    int[] neighbour = new int[faces];
    boolean[] vertical = new boolean[faces];
    double[] area = new double[faces];
    double[] fx = new double[faces];
    double[] fy = new double[faces];
    int[] gridFace = new int[faces];
    int nx = lines.nx();
    for (int f = 0; f < faces; f++) {
      int l = order[f];
      owner[f] = cellOf[links.low.get(l)];
      neighbour[f] = cellOf[links.high.get(l)];
      vertical[f] = links.vertical.get(l) != 0;
      area[f] = links.length.get(l);
      gridFace[f] = links.gridFace.get(l);
      double line = vertical[f] ? lines.x()[gridFace[f] % (nx + 1)] : lines.y()[gridFace[f] / nx];
      fx[f] = vertical[f] ? line : links.middle.get(l);
      fy[f] = vertical[f] ? links.middle.get(l) : line;
    }
    int[] surfaces = surfacesByCell();
    int boundaryFaces = surfaces.length;
    int[] bCell = new int[boundaryFaces];
    int[] bPatch = new int[boundaryFaces];
    double[] bnx = new double[boundaryFaces];
    double[] bny = new double[boundaryFaces];
    double[] bx = new double[boundaryFaces];
    double[] by = new double[boundaryFaces];
    int[] bGridFace = new int[boundaryFaces];
    for (int b = 0; b < boundaryFaces; b++) {
      int s = surfaces[b];
      bCell[b] = cellOf[parts.sPart.get(s)];
      bPatch[b] = parts.sPatch.get(s);
      bnx[b] = parts.snx.get(s);
      bny[b] = parts.sny.get(s);
      bx[b] = parts.sx.get(s);
      by[b] = parts.sy.get(s);
      bGridFace[b] = parts.sGridFace.get(s);
    }
    return new Mesh(
        lines,
        cellsOfRectangles(),
        volume,
        cx,
        cy,
        owner,
        neighbour,
        vertical,
        area,
        fx,
        fy,
        gridFace,
        bCell,
        bPatch,
        bnx,
        bny,
        bx,
        by,
        bGridFace);
  }

  private int[] cellsOfRectangles() {
    int[] cellAt = new int[lines.nx() * lines.ny()];
    for (int rect = 0; rect < cellAt.length; rect++) {
      cellAt[rect] = -1;
      double largest = 0;
      for (int p = parts.start[rect]; p < parts.start[rect + 1]; p++) {
        if (cellOf[p] >= 0 && parts.area.get(p) > largest) {
          largest = parts.area.get(p);
          cellAt[rect] = cellOf[p];
        }
      }
    }
    return cellAt;
  }

  /** Open links between different cells, by owner. */
  private int[] facesByOwner(boolean[] linked) {
    int[] key = new int[links.size()];
    for (int l = 0; l < key.length; l++) {
      int a = cellOf[links.low.get(l)];
      boolean face = linked[l] && a >= 0 && a != cellOf[links.high.get(l)];
      key[l] = face ? a : -1;
    }
    return byKey(key);
  }

  private int[] surfacesByCell() {
    int[] key = new int[parts.sPart.size()];
    for (int s = 0; s < key.length; s++) {
      key[s] = cellOf[parts.sPart.get(s)];
    }
    return byKey(key);
  }

  /** Entries with a cell number, in order of cells, otherwise in the order they came. */
  private int[] byKey(int[] key) {
    int[] start = new int[cells + 1];
    for (int k : key) {
      if (k >= 0) {
        start[k + 1]++;
      }
    }
    for (int c = 0; c < cells; c++) {
      start[c + 1] += start[c];
    }
    int[] order = new int[start[cells]];
    for (int e = 0; e < key.length; e++) {
      if (key[e] >= 0) {
        order[start[key[e]]++] = e;
      }
    }
    return order;
  }
}
