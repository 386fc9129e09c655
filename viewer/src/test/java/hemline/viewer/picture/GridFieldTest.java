package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class GridFieldTest {

  @Test
  void fluidKeepsItsValuesAndSolidsContinueThem() {
    GridField field = GridField.of(InventedChannel.field());
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
    double[] range = GridField.of(InventedChannel.field()).pressureRange(0);
    assertThat(range[0]).isCloseTo(-78.75, within(1e-9));
    assertThat(range[1]).isCloseTo(-1.25, within(1e-9));
    double[] without = GridField.of(InventedChannel.field()).pressureRange(0.1);
    assertThat(without[0]).isBetween(-74.0, -70.0);
    assertThat(without[1]).isBetween(-10.0, -6.0);
  }

  @Test
  void windowKeepsOneNodeAroundItself() {
    GridField part =
        GridField.of(InventedChannel.field()).around(new SectionWindow(2.1, 5.9, 0.3, 2.2));
    assertThat(part.sx()[0]).isEqualTo(2.0);
    assertThat(part.sx()[part.sx().length - 1]).isEqualTo(6.0);
    assertThat(part.sy()[0]).isEqualTo(0.25);
    assertThat(part.streamfunction()).hasSize(part.sx().length * part.sy().length);
    assertThat(part.px()[0]).isLessThanOrEqualTo(2.1);
  }

  @Test
  void wallGivesTheLeak() {
    assertThat(GridField.of(InventedChannel.field()).streamfunctionIn(3, 5, 1)).isEqualTo(2);
  }
}
