package hemline.viewer.report;

import hemline.solver.flow.FlowField;
import hemline.solver.grid.Mesh;
import java.util.function.IntToDoubleFunction;

/**
 * The fields of a section as a VTK XML rectilinear grid with ASCII arrays (open file format), SI
 * units.
 *
 * <p>Cell data: velocity (with the spanwise part third), pressure over ambient, eddy viscosity, and
 * fluid, which is 1 where the cell holds fluid. Rectangles without fluid carry zeros. Point data:
 * streamfunction.
 */
public final class FieldFile {
  private static final int PER_LINE = 12;

  private FieldFile() {}

  /** The whole file as text. */
  public static String text(FlowField field) {
    Mesh mesh = field.mesh();
    int nx = mesh.lines.nx();
    int ny = mesh.lines.ny();
    int[] cell = mesh.cellAt;
    String extent = "0 " + nx + " 0 " + ny + " 0 0";
    StringBuilder out = new StringBuilder();
    out.append("<?xml version=\"1.0\"?>\n");
    out.append("<VTKFile type=\"RectilinearGrid\" version=\"0.1\" byte_order=\"LittleEndian\">\n");
    out.append("<RectilinearGrid WholeExtent=\"").append(extent).append("\">\n");
    out.append("<Piece Extent=\"").append(extent).append("\">\n");
    out.append("<PointData Scalars=\"streamfunction\">\n");
    doubles(out, "streamfunction", field.streamfunction());
    out.append("</PointData>\n<CellData Scalars=\"pressure\" Vectors=\"velocity\">\n");
    int cells = nx * ny;
    floats(
        out,
        "velocity",
        3,
        3 * cells,
        k -> at(k % 3 == 0 ? field.u() : k % 3 == 1 ? field.v() : field.w(), cell[k / 3]));
    floats(out, "pressure", 1, cells, k -> at(field.p(), cell[k]));
    floats(out, "eddyViscosity", 1, cells, k -> at(field.eddyViscosity(), cell[k]));
    out.append("<DataArray type=\"UInt8\" Name=\"fluid\" format=\"ascii\">\n");
    for (int k = 0; k < cells; k++) {
      out.append(cell[k] >= 0 ? '1' : '0').append(separator(k, cells));
    }
    out.append("</DataArray>\n</CellData>\n<Coordinates>\n");
    doubles(out, "x", mesh.lines.x());
    doubles(out, "y", mesh.lines.y());
    doubles(out, "z", new double[] {0});
    out.append("</Coordinates>\n</Piece>\n</RectilinearGrid>\n</VTKFile>\n");
    return out.toString();
  }

  private static double at(double[] values, int cell) {
    return cell >= 0 ? values[cell] : 0;
  }

  private static void doubles(StringBuilder out, String name, double[] values) {
    out.append("<DataArray type=\"Float64\" Name=\"").append(name).append("\" format=\"ascii\">\n");
    for (int k = 0; k < values.length; k++) {
      out.append(values[k]).append(separator(k, values.length));
    }
    out.append("</DataArray>\n");
  }

  private static void floats(
      StringBuilder out, String name, int components, int count, IntToDoubleFunction value) {
    out.append("<DataArray type=\"Float32\" Name=\"").append(name);
    out.append("\" NumberOfComponents=\"").append(components).append("\" format=\"ascii\">\n");
    for (int k = 0; k < count; k++) {
      out.append((float) value.applyAsDouble(k)).append(separator(k, count));
    }
    out.append("</DataArray>\n");
  }

  private static char separator(int k, int count) {
    return (k + 1) % PER_LINE == 0 || k + 1 == count ? '\n' : ' ';
  }
}
