package hemline.shared.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StlFileTest {
  @TempDir Path folder;

  /** A corner as its three coordinates in the file. */
  private record Corner(float x, float y, float z) {}

  private record Edge(Corner from, Corner to) {}

  private static Corner[][] triangles(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    int count = in.position(80).getInt();
    assertThat(bytes).hasSize(84 + 50 * count);
    Corner[][] out = new Corner[count][3];
    for (Corner[] t : out) {
      float nx = in.getFloat();
      float ny = in.getFloat();
      float nz = in.getFloat();
      for (int k = 0; k < 3; k++) {
        t[k] = new Corner(in.getFloat(), in.getFloat(), in.getFloat());
      }
      in.getShort();
      assertThat(Math.sqrt(nx * nx + ny * ny + nz * nz)).isCloseTo(1, within(1e-5));
    }
    return out;
  }

  /** Each directed edge once, and its reverse once: closed, and all triangles face outwards. */
  private static void assertWatertight(String name, Corner[][] triangles) {
    Map<Edge, Integer> edges = new HashMap<>();
    for (Corner[] t : triangles) {
      for (int k = 0; k < 3; k++) {
        edges.merge(new Edge(t[k], t[(k + 1) % 3]), 1, Integer::sum);
      }
    }
    edges.forEach(
        (e, count) -> {
          assertThat(count).as("%s %s", name, e).isEqualTo(1);
          assertThat(edges).as(name).containsKey(new Edge(e.to(), e.from()));
        });
  }

  /** Volume by the divergence theorem, mm³. */
  private static double volume(Corner[][] triangles) {
    double six = 0;
    for (Corner[] t : triangles) {
      six +=
          t[0].x() * ((double) t[1].y() * t[2].z() - (double) t[1].z() * t[2].y())
              + t[0].y() * ((double) t[1].z() * t[2].x() - (double) t[1].x() * t[2].z())
              + t[0].z() * ((double) t[1].x() * t[2].y() - (double) t[1].y() * t[2].x());
    }
    return six / 6;
  }

  @Test
  void couponsOfAllProfilesAreClosedAndHaveTheirVolume() throws Exception {
    for (LoadedLip lip : LipFile.loadFolder(Path.of("..", "profiles"))) {
      String name = lip.profile().name();
      Path file = folder.resolve("coupon.stl");
      StlFile.write(file, lip.profile(), 0.03);
      Corner[][] triangles = triangles(Files.readAllBytes(file));
      assertWatertight(name, triangles);
      double area = 1e6 * Polygons.polygon(lip.profile().outline(), 1).getArea();
      assertThat(volume(triangles)).as(name).isCloseTo(30 * area, within(1e-5 * 30 * area));
      double exact = 1e6 * Polygons.signedArea(lip.profile().outline().vertices());
      assertThat(volume(triangles)).as(name).isCloseTo(30 * exact, within(1e-4 * 30 * exact));
    }
  }

  @Test
  void severalBodiesAndPointsOnStraightEdges() throws InputException {
    Outline flat =
        new Outline(
            List.of(
                new Vertex(0, 0),
                new Vertex(0.004, 0),
                new Vertex(0.008, 0),
                new Vertex(0.008, 0.01),
                new Vertex(0.003, 0.01),
                new Vertex(0, 0.01)));
    Outline disc = new Outline(List.of(new Vertex(-0.004, 0.002, 1), new Vertex(-0.002, 0.002, 1)));
    Corner[][] triangles = triangles(StlFile.bytes(List.of(flat, disc), 0.01));
    assertWatertight("two bodies", triangles);
    assertThat(volume(triangles)).isCloseTo(800 + 10 * Math.PI, within(2e-2));
  }

  @Test
  void refusesALengthThatIsNotPositive() {
    Outline disc = new Outline(List.of(new Vertex(-0.004, 0.002, 1), new Vertex(-0.002, 0.002, 1)));
    assertThatIllegalArgumentException().isThrownBy(() -> StlFile.bytes(List.of(disc), 0));
  }
}
