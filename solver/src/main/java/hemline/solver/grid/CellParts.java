package hemline.solver.grid;

/** Parts of the fluid within grid rectangles, and their solid surfaces and domain sides. */
final class CellParts {
  /** Index of the first part of each rectangle; one more entry than rectangles. */
  final int[] start;

  /** True for rectangles without any boundary of the fluid inside or on their sides. */
  final boolean[] whole;

  // ---- parts
  final Growing.Ints rectangle = new Growing.Ints();
  final Growing.Doubles area = new Growing.Doubles();
  final Growing.Doubles cx = new Growing.Doubles();
  final Growing.Doubles cy = new Growing.Doubles();

  // ---- surfaces: outward area vector, centroid, patch, domain side's grid face or -1
  final Growing.Ints sPart = new Growing.Ints();
  final Growing.Ints sPatch = new Growing.Ints();
  final Growing.Doubles snx = new Growing.Doubles();
  final Growing.Doubles sny = new Growing.Doubles();
  final Growing.Doubles sx = new Growing.Doubles();
  final Growing.Doubles sy = new Growing.Doubles();
  final Growing.Ints sGridFace = new Growing.Ints();

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
