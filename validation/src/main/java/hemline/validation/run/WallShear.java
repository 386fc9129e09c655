package hemline.validation.run;

import hemline.solver.flow.FlowSolution;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.Patch;
import hemline.solver.refine.GridSolution;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/** Shear along the ground or the ceiling of a section, by place. */
final class WallShear {
  private final double[] x;
  private final double[] shear;
  private final double density;

  private WallShear(double[] x, double[] shear, double density) {
    this.x = x;
    this.shear = shear;
    this.density = density;
  }

  /** Reads the shear on one grid. */
  static WallShear of(GridSolution grid, boolean ground) {
    FlowSolution flow = grid.flow();
    if (flow == null) {
      return new WallShear(new double[0], new double[0], 1);
    }
    Mesh mesh = flow.problem().geometry().mesh;
    int patch = ground ? Patch.BOTTOM : Patch.TOP;
    int[] faces =
        IntStream.range(0, mesh.boundaryFaces)
            .filter(b -> mesh.bPatch[b] == patch)
            .boxed()
            .sorted(Comparator.comparingDouble(b -> mesh.bx[b]))
            .mapToInt(Integer::intValue)
            .toArray();
    return new WallShear(
        Arrays.stream(faces).mapToDouble(b -> mesh.bx[b]).toArray(),
        Arrays.stream(faces).mapToDouble(b -> flow.shearX()[b] / Math.abs(mesh.bny[b])).toArray(),
        density(grid, flow));
  }

  /** Density from pressures in physical units and over density: the one is a shift of the other. */
  private static double density(GridSolution grid, FlowSolution flow) {
    double[] p = grid.field().p();
    double[] k = flow.state().p;
    int low = 0;
    int high = 0;
    for (int c = 1; c < k.length; c++) {
      low = k[c] < k[low] ? c : low;
      high = k[c] > k[high] ? c : high;
    }
    return k[high] > k[low] ? (p[high] - p[low]) / (k[high] - k[low]) : 1;
  }

  /** Place of the n-th change of sign beyond a place; not a number when there are fewer. */
  double zero(int n, double beyond) {
    int found = 0;
    for (int k = 1; k < x.length; k++) {
      if (x[k - 1] >= beyond && shear[k - 1] * shear[k] < 0 && ++found == n) {
        return x[k - 1] + (x[k] - x[k - 1]) * shear[k - 1] / (shear[k - 1] - shear[k]);
      }
    }
    return Double.NaN;
  }

  /** Force on the wall over its area at a place, Pa; not a number beyond the ends. */
  double at(double place) {
    int k = Arrays.binarySearch(x, place);
    if (k >= 0) {
      return density * shear[k];
    }
    int next = -k - 1;
    if (next == 0 || next == x.length) {
      return Double.NaN;
    }
    double share = (place - x[next - 1]) / (x[next] - x[next - 1]);
    return density * (shear[next - 1] + share * (shear[next] - shear[next - 1]));
  }

  /** Density of the fluid, kg/m³. */
  double density() {
    return density;
  }
}
