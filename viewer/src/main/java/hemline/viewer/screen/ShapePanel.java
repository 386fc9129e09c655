package hemline.viewer.screen;

import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.edit.Corner;
import hemline.viewer.edit.LipEdit;
import hemline.viewer.edit.Parts;
import hemline.viewer.model.Selection;
import hemline.viewer.model.Sketch;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.DoubleProperty;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Numbers of what is chosen: a corner, an edge, the whole lip, or the next point of a sketch. */
final class ShapePanel {
  private final Workbench bench;
  private final Selection selection;
  private final Sketch sketch;
  private final SketchMouse hands;
  private final BoardActions actions;
  private final VBox box = new VBox(7);
  private final ValueField cornerX = length("corner-x", "x", "x in the drawing").taking(this::x);
  private final ValueField cornerY = length("corner-y", "y", "y in the drawing").taking(this::y);
  private final ComboBox<String> dress = new ComboBox<>();
  private final ValueField size =
      new ValueField("corner-size", "by", "radius, or length taken off each edge", Measure.EXTENT)
          .showing(0.5e-3)
          .taking(v -> dressed());
  private final ValueField length =
      new ValueField(
              "edge-length", "length", "from end to end; the later end moves", Measure.EXTENT)
          .taking(this::stretched);
  private final ValueField lift =
      length("edge-lift", "lift", "how far the middle leaves the straight").taking(this::lifted);
  private final ValueField nextX = length("next-x", "x", "x of the next corner").showing(0);
  private final ValueField nextY =
      length("next-y", "y", "y of the next corner; Enter adds it")
          .showing(0)
          .entered(this::addPoint);
  private final LipFields lip;
  private final VBox reasons = new VBox(2);
  private boolean filling;

  ShapePanel(
      Workbench bench,
      Selection selection,
      Sketch sketch,
      SketchMouse hands,
      BoardActions actions,
      DoubleProperty couponLength) {
    this.bench = bench;
    this.selection = selection;
    this.sketch = sketch;
    this.hands = hands;
    this.actions = actions;
    lip = new LipFields(bench, hands.step(), couponLength);
    box.getStyleClass().addAll("slip", "shape-slip");
    dress.setId("corner-dress");
    dress.setAccessibleText("sharp, round or chamfer");
    dress.getItems().addAll("sharp", "round", "chamfer");
    dress.setOnAction(e -> dressed());
    all().forEach(field -> reasons.getChildren().add(field.reason()));
    bench.drawing().subscribe(d -> fill());
    selection.corners().subscribe(c -> fill());
    sketch.active().subscribe(a -> fill());
    ShownUnit.follow(box, this::fill);
  }

  Region content() {
    return box;
  }

  private void fill() {
    filling = true;
    Corner corner = actions.corner();
    Corner edge = actions.edge();
    if (sketch.active().get()) {
      fillSketch();
    } else if (corner != null) {
      fillCorner(corner);
    } else if (edge != null) {
      fillEdge(edge);
    } else {
      lip.fill();
      show(lip.nodes());
    }
    filling = false;
  }

  private void show(Node... nodes) {
    List<Node> next = new ArrayList<>(List.of(nodes));
    next.add(reasons);
    if (!box.getChildren().equals(next)) {
      // what could not be taken belongs to what was chosen before
      all().forEach(ValueField::reset);
      box.getChildren().setAll(next);
    }
  }

  private List<ValueField> all() {
    List<ValueField> all =
        new ArrayList<>(List.of(cornerX, cornerY, size, length, lift, nextX, nextY));
    all.addAll(lip.fields());
    return all;
  }

  private static ValueField length(String id, String name, String meaning) {
    return new ValueField(id, name, meaning, Measure.LENGTH);
  }

  private final Label sketchTitle = title("A new lip");
  private final Label sketchHint = hint("");
  private final Button addPoint = button("sketch-add", "Add corner", this::addPoint);
  private final Button closeSketch = button("sketch-close", "Close outline", () -> closeSketch());
  private final HBox sketchXy = new HBox(8, nextX.line(), nextY.line());
  private final FlowPane sketchButtons = new FlowPane(6, 6, addPoint, closeSketch);

  private void fillSketch() {
    sketchTitle.setText(sketch.part() ? "A detached part" : "A new lip");
    sketchHint.setText(
        "Click its corners on the board"
            + (sketch.part() ? ", clear of the lip" : ", the top edge level")
            + ". A click on the first corner or Enter closes it, Backspace takes one back, Esc"
            + " gives up.");
    show(sketchTitle, sketchHint, sketchXy, sketchButtons);
  }

  private final Label cornerTitle = title("");
  private final HBox cornerXy = new HBox(8, cornerX.line(), cornerY.line());
  private final HBox cornerDress = new HBox(8, dress, size.line());
  private final FlowPane cornerButtons =
      new FlowPane(
          6,
          6,
          button("corner-delete", "Delete", () -> actions().delete()),
          button("corner-insert", "Add after", () -> actions().insert()));

  private BoardActions actions() {
    return actions;
  }

  private void closeSketch() {
    hands.close();
  }

  private void fillCorner(Corner corner) {
    LipDrawing d = bench.drawing().get();
    Vertex v = Parts.vertex(d, corner);
    cornerTitle.setText(
        "Corner " + corner.index() + (corner.part() == 0 ? "" : " of part " + corner.part()));
    cornerX.set(v.x());
    cornerY.set(v.y());
    Rounding rounding = rounding(d, corner);
    dress.setValue(
        rounding == null ? "sharp" : rounding.kind() == Rounding.Kind.ROUND ? "round" : "chamfer");
    if (rounding != null) {
      size.set(rounding.size());
    }
    show(cornerTitle, cornerXy, cornerDress, cornerButtons);
  }

  private static @Nullable Rounding rounding(LipDrawing d, Corner corner) {
    return Parts.of(d, corner.part()).roundings().stream()
        .filter(r -> r.vertex() == corner.index())
        .findFirst()
        .orElse(null);
  }

  private final Label edgeTitle = title("");
  private final HBox edgeNumbers = new HBox(8, length.line(), lift.line());
  private final FlowPane edgeButtons =
      new FlowPane(
          6,
          6,
          button("edge-bend", "Bend or straighten", () -> actions().bend()),
          button("edge-insert", "Add corner", () -> actions().insert()),
          button("edge-mount", "Fix to skirt", () -> actions().mount()));

  private void fillEdge(Corner edge) {
    LipDrawing d = bench.drawing().get();
    Vertex a = Parts.vertex(d, edge);
    Vertex b = Parts.vertex(d, Parts.next(d, edge));
    boolean mount = edge.part() == 0 && edge.index() == d.mountEdge();
    edgeTitle.setText("Edge " + edge.index() + (mount ? ", fixed to the skirt" : ""));
    double chord = Math.hypot(b.x() - a.x(), b.y() - a.y());
    length.set(chord);
    lift.set(0.5 * a.bulge() * chord);
    show(edgeTitle, edgeNumbers, edgeButtons);
  }

  private void x(double x) {
    Corner corner = actions.corner();
    if (corner != null) {
      bench.edit(d -> LipEdit.place(d, corner, x, Parts.vertex(d, corner).y()));
    }
  }

  private void y(double y) {
    Corner corner = actions.corner();
    if (corner != null) {
      bench.edit(d -> LipEdit.place(d, corner, Parts.vertex(d, corner).x(), y));
    }
  }

  private void stretched(double metres) {
    Corner edge = actions.edge();
    if (edge != null && metres > 0) {
      bench.edit(d -> LipEdit.length(d, edge, metres));
    }
  }

  private void lifted(double metres) {
    Corner edge = actions.edge();
    if (edge != null) {
      bench.edit(
          d -> {
            Vertex a = Parts.vertex(d, edge);
            Vertex b = Parts.vertex(d, Parts.next(d, edge));
            return LipEdit.bend(d, edge, 2 * metres / Math.hypot(b.x() - a.x(), b.y() - a.y()));
          });
    }
  }

  private void dressed() {
    if (filling || selection.get().isEmpty() || dress.getValue() == null) {
      return;
    }
    if (!size.commit()) {
      fill();
      return;
    }
    double by = dress.getValue().equals("sharp") ? 0 : size.value();
    actions.dress(
        dress.getValue().equals("chamfer") ? Rounding.Kind.CHAMFER : Rounding.Kind.ROUND, by);
  }

  private void addPoint() {
    if (nextX.commit() && nextY.commit()) {
      sketch.add(nextX.value(), nextY.value());
      nextX.requestFocus();
      nextX.selectAll();
    }
  }

  private static Label title(String text) {
    return Controls.text(text, "slip-title");
  }

  private static Label hint(String text) {
    return Controls.text(text, "quiet");
  }

  private static Button button(String id, String text, Runnable action) {
    return Controls.button(id, text, e -> action.run());
  }
}
