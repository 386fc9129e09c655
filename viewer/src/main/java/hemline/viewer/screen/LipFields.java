package hemline.viewer.screen;

import hemline.shared.profile.LipDrawing;
import hemline.viewer.edit.LipShape;
import hemline.viewer.edit.Parts;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Workbench;
import java.util.List;
import javafx.beans.property.DoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** Name, size and place of the whole lip, with the grid it is drawn on and its test coupon. */
final class LipFields {
  private final Workbench bench;
  private final DoubleProperty gridStep;
  private final DoubleProperty couponLength;
  private final Label title = Controls.text("Lip", "slip-title");
  private final Label size = Controls.text("", "quiet");
  private final TextField name = new TextField();
  private final ValueField shiftX;
  private final ValueField shiftY;
  private final ValueField scaled;
  private final ValueField grid;
  private final ValueField coupon;
  private final ToggleButton more = new ToggleButton("size, place, grid, coupon");
  private final VBox change = new VBox(6);

  LipFields(Workbench bench, DoubleProperty gridStep, DoubleProperty couponLength) {
    this.bench = bench;
    this.gridStep = gridStep;
    this.couponLength = couponLength;
    shiftX =
        new ValueField("lip-shift-x", "shift", "moves the whole lip along x", Measure.LENGTH)
            .showing(0)
            .taking(v -> shifted(v, 0));
    shiftY =
        new ValueField("lip-shift-y", "up", "moves the whole lip upwards", Measure.LENGTH)
            .showing(0)
            .taking(v -> shifted(0, v));
    scaled =
        new ValueField(
                "lip-width", "scale to width", "scales the whole lip to this width", Measure.EXTENT)
            .taking(this::widened);
    grid =
        new ValueField(
                "grid-step", "drawing grid", "step that corners snap to; 0 for none", Measure.STEP)
            .taking(gridStep::set);
    coupon =
        new ValueField(
                "coupon-length", "test coupon", "length of a test coupon to print", Measure.COUPON)
            .taking(couponLength::set);
    name.setId("lip-name");
    name.setAccessibleText("name of the lip");
    name.setOnAction(e -> rename());
    name.focusedProperty()
        .subscribe(
            on -> {
              if (!on) {
                rename();
              }
            });
    more.setId("lip-more");
    change
        .getChildren()
        .addAll(
            scaled.line(), new HBox(8, shiftX.line(), shiftY.line()), grid.line(), coupon.line());
    change.visibleProperty().bind(more.selectedProperty());
    change.managedProperty().bind(more.selectedProperty());
  }

  /** All that is shown, from top to bottom. */
  Node[] nodes() {
    return new Node[] {title, name, size, more, change};
  }

  /** Those that take numbers. */
  List<ValueField> fields() {
    return List.of(shiftX, shiftY, scaled, grid, coupon);
  }

  /** Shows the lip on the bench. */
  void fill() {
    LipDrawing d = bench.drawing().get();
    double[] lip = LipShape.box(d);
    if (!name.isFocused() || !name.getText().equals(d.name())) {
      name.setText(d.name());
    }
    size.setText(
        LengthUnit.text(lip[1] - lip[0], 4)
            + " wide, "
            + LengthUnit.text(lip[3] - lip[2], 4)
            + " high, "
            + Parts.corners(d).size()
            + " corners");
    scaled.set(lip[1] - lip[0]);
    grid.set(gridStep.get());
    coupon.set(couponLength.get());
  }

  private void rename() {
    String text = name.getText().strip();
    if (!text.isEmpty() && !text.equals(bench.drawing().get().name())) {
      bench.edit(d -> LipShape.named(d, text));
    }
  }

  private void shifted(double dx, double dy) {
    bench.edit(d -> LipShape.shift(d, dx, dy));
    shiftX.set(0);
    shiftY.set(0);
  }

  private void widened(double metres) {
    double[] lip = LipShape.box(bench.drawing().get());
    if (metres > 0 && lip[1] > lip[0]) {
      bench.edit(d -> LipShape.scale(d, metres / (lip[1] - lip[0])));
    }
  }
}
