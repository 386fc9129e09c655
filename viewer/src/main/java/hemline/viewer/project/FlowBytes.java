package hemline.viewer.project;

import hemline.solver.field.FlowState;
import hemline.solver.flow.FlowField;
import hemline.solver.grid.Mesh;
import java.nio.ByteBuffer;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Flows as bytes, to the last bit of every number. */
final class FlowBytes {
  private FlowBytes() {}

  private static List<double[]> arrays(FlowState s) {
    return List.of(
        s.u, s.v, s.w, s.p, s.k, s.omega, s.nuTilde, s.eddyViscosity, s.flux, s.boundaryFlux);
  }

  private static List<double[]> arrays(FlowField f) {
    return List.of(
        f.u(),
        f.v(),
        f.w(),
        f.p(),
        f.eddyViscosity(),
        f.flux().interior(),
        f.flux().boundary(),
        f.streamfunction());
  }

  static byte[] of(FlowState state) {
    ByteBuffer buffer = ByteBuffer.allocate((2 + length(arrays(state))) * Double.BYTES);
    buffer.putDouble(state.outletPressure).putDouble(state.inletFlow);
    put(buffer, arrays(state));
    return buffer.array();
  }

  static byte[] of(FlowField field) {
    ByteBuffer buffer = ByteBuffer.allocate(length(arrays(field)) * Double.BYTES);
    put(buffer, arrays(field));
    return buffer.array();
  }

  /** Fills a flow; false when the bytes are not those of a flow of this size. */
  static boolean fill(FlowState state, byte[] bytes) {
    if (bytes.length != (2 + length(arrays(state))) * Double.BYTES) {
      return false;
    }
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    state.outletPressure = buffer.getDouble();
    state.inletFlow = buffer.getDouble();
    get(buffer, arrays(state));
    return true;
  }

  /** The fields on a mesh; null when the bytes are not those of fields of this size. */
  static @Nullable FlowField field(Mesh mesh, byte[] bytes) {
    int n = mesh.cells;
    FlowField field =
        new FlowField(
            mesh,
            new double[n],
            new double[n],
            new double[n],
            new double[n],
            new double[n],
            new FlowField.Flux(new double[mesh.faces], new double[mesh.boundaryFaces]),
            new double[mesh.lines.x().length * mesh.lines.y().length]);
    if (bytes.length != length(arrays(field)) * Double.BYTES) {
      return null;
    }
    get(ByteBuffer.wrap(bytes), arrays(field));
    return field;
  }

  private static int length(List<double[]> arrays) {
    return arrays.stream().mapToInt(a -> a.length).sum();
  }

  private static void put(ByteBuffer buffer, List<double[]> arrays) {
    for (double[] array : arrays) {
      buffer.asDoubleBuffer().put(array);
      buffer.position(buffer.position() + array.length * Double.BYTES);
    }
  }

  private static void get(ByteBuffer buffer, List<double[]> arrays) {
    for (double[] array : arrays) {
      buffer.asDoubleBuffer().get(array);
      buffer.position(buffer.position() + array.length * Double.BYTES);
    }
  }
}
