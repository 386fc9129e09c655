package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import hemline.solver.flow.FlowField;
import hemline.solver.grid.GridLines;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

final class GridFieldTest {

  /** A channel 8 by 4 with a block from x 3 to 5 hanging down to y 1. */
  static FlowField channel() {
    double[] x = new double[33];
    double[] y = new double[17];
    for (int k = 0; k < x.length; k++) {
      x[k] = 0.25 * k;
    }
    for (int k = 0; k < y.length; k++) {
      y[k] = 0.25 * k;
    }
    Ring block = new Ring(new double[] {3, 5, 5, 3}, new double[] {1, 1, 4, 4});
    Mesh mesh = MeshBuilder.build(new GridLines(x, y), List.of(block));
    double[] u = new double[mesh.cells];
    double[] p = new double[mesh.cells];
    for (int c = 0; c < mesh.cells; c++) {
      u[c] = mesh.cy[c];
      p[c] = -10 * mesh.cx[c];
    }
    double[] psi = new double[x.length * y.length];
    for (int j = 0; j < y.length; j++) {
      for (int i = 0; i < x.length; i++) {
        boolean solid = x[i] >= 3 && x[i] <= 5 && y[j] >= 1;
        psi[j * x.length + i] = solid ? 2 : 0.5 * y[j];
      }
    }
    return new FlowField(
        mesh,
        u,
        new double[mesh.cells],
        new double[mesh.cells],
        p,
        new double[mesh.cells],
        new double[mesh.faces],
        new double[mesh.boundaryFaces],
        psi);
  }

  @Test
  void fluidKeepsItsValuesAndSolidsContinueThem() {
    GridField field = GridField.of(channel());
    int width = field.px().length;
    for (int j = 0; j < field.py().length; j++) {
      for (int i = 0; i < width; i++) {
        int k = j * width + i;
        boolean inBlock = field.px()[i] > 3 && field.px()[i] < 5 && field.py()[j] > 1;
        assertThat(field.wet()[k]).isEqualTo(!inBlock);
        if (!inBlock && i > 0 && i + 1 < width) {
          assertThat(field.pressure()[k]).isCloseTo(-10 * field.px()[i], within(1e-12));
        } else {
          assertThat(field.pressure()[k]).isBetween(-80.0, 0.0);
        }
      }
    }
  }

  @Test
  void rangeIsThatOfTheFluidAlone() {
    double[] range = GridField.of(channel()).pressureRange();
    assertThat(range[0]).isCloseTo(-78.75, within(1e-9));
    assertThat(range[1]).isCloseTo(-1.25, within(1e-9));
  }

  @Test
  void windowKeepsOneNodeAroundItself() {
    GridField part = GridField.of(channel()).around(new SectionWindow(2.1, 5.9, 0.3, 2.2));
    assertThat(part.sx()[0]).isEqualTo(2.0);
    assertThat(part.sx()[part.sx().length - 1]).isEqualTo(6.0);
    assertThat(part.sy()[0]).isEqualTo(0.25);
    assertThat(part.streamfunction()).hasSize(part.sx().length * part.sy().length);
    assertThat(part.px()[0]).isLessThanOrEqualTo(2.1);
  }

  @Test
  void wallGivesTheLeak() {
    assertThat(GridField.of(channel()).streamfunctionIn(3, 5, 1)).isEqualTo(2);
  }
}
