package hemline.solver.grid;

/** Parts of the fluid within grid rectangles, and their solid surfaces and domain sides. */
final class CellParts {
  /** Index of the first part of each rectangle; one more entry than rectangles. */
  final int[] start;

  /** True for rectangles without any boundary of the fluid inside or on their sides. */
  final boolean[] whole;

  // ---- parts
  final IntList rectangle = new IntList();
  final DoubleList area = new DoubleList();
  final DoubleList cx = new DoubleList();
  final DoubleList cy = new DoubleList();

  // ---- surfaces: outward area vector, centroid, patch, domain side's grid face or -1
  final IntList sPart = new IntList();
  final IntList sPatch = new IntList();
  final DoubleList snx = new DoubleList();
  final DoubleList sny = new DoubleList();
  final DoubleList sx = new DoubleList();
  final DoubleList sy = new DoubleList();
  final IntList sGridFace = new IntList();

  CellParts(int rectangles) {
    start = new int[rectangles + 1];
    whole = new boolean[rectangles];
  }

  int addPart(int rect, double a, double x, double y) {
    rectangle.add(rect);
    cx.add(x);
    cy.add(y);
    return area.add(a);
  }

  void addSurface(int part, int patch, double nx, double ny, double x, double y, int gridFace) {
    sPart.add(part);
    sPatch.add(patch);
    snx.add(nx);
    sny.add(ny);
    sx.add(x);
    sy.add(y);
    sGridFace.add(gridFace);
  }
}
