package hemline.solver.turbulence;

import hemline.solver.grid.Mesh;
import hemline.solver.scheme.FaceGeometry;

/**
 * What makes ω ~ d⁻², its profile at a wall, exact on any spacing.
 *
 * @param destruction by cell, d⁴ times the mean of d⁻⁴ over it: exact destruction of ω
 * @param fluxRatio by face, exact over two-point flux of ω
 */
record NearWallWeights(double[] destruction, double[] fluxRatio) {
  /**
   * Weights of a mesh.
   *
   * @param wallDistance of cells, m
   */
  static NearWallWeights of(FaceGeometry geometry, double[] wallDistance) {
    Mesh mesh = geometry.mesh;
    double[] fluxRatio = new double[mesh.faces];
    for (int f = 0; f < mesh.faces; f++) {
      double a = wallDistance[mesh.owner[f]];
      double b = wallDistance[mesh.neighbour[f]];
      double r = 4 * a * b / ((a + b) * (a + b));
      fluxRatio[f] = r * r;
    }
    double[] destruction = new double[mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      // extent of the cell along the wall normal, judged by the spread of neighbours' distances
      double d = wallDistance[c];
      double near = d;
      double far = d;
      for (int e = geometry.pattern.rowStart[c]; e < geometry.pattern.rowStart[c + 1]; e++) {
        double other = wallDistance[geometry.pattern.column[e]];
        near = Math.min(near, 0.5 * (d + other));
        far = Math.max(far, 0.5 * (d + other));
      }
      double half = Math.min(0.5 * (far - near), 0.75 * d);
      double a = d - half;
      double b = d + half;
      destruction[c] =
          half > 1e-6 * d ? d * d * d * d * (1 / (a * a * a) - 1 / (b * b * b)) / (3 * (b - a)) : 1;
    }
    return new NearWallWeights(destruction, fluxRatio);
  }
}
