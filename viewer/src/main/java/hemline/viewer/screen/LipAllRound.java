package hemline.viewer.screen;

import hemline.shared.vehicle.Machine;
import hemline.viewer.model.MachineSheet;
import hemline.viewer.model.MachineSheet.State;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;

/** Another lip all round the floor of a machine, by its name, as one step. */
final class LipAllRound {
  private final MachineSheet sheet;
  private final ComboBox<String> names = new ComboBox<>();
  private Map<String, Path> files = Map.of();
  private boolean filling;

  LipAllRound(MachineSheet sheet) {
    this.sheet = sheet;
    names.setId("machine-lip");
    names.setAccessibleText("lip all round the floor");
    names.setMaxWidth(Double.MAX_VALUE);
    names.setPromptText("several lips");
    names.setTooltip(new Tooltip("another lip for all edges; the balance follows"));
    names.setOnAction(e -> chosen(names.getValue()));
    sheet.state().subscribe(this::show);
  }

  HBox content() {
    Label label = new Label("lip all round");
    label.setLabelFor(names);
    HBox.setHgrow(names, Priority.ALWAYS);
    return Controls.row(6, label, names);
  }

  /** Offers lips by their files. */
  void offer(Map<String, Path> lips) {
    files = Map.copyOf(lips);
    show(sheet.state().get());
  }

  private void show(@Nullable State state) {
    Machine machine = state == null ? null : state.machine();
    if (machine == null) {
      return;
    }
    List<String> own =
        machine.floor().edges().stream().map(edge -> edge.lip().name()).distinct().toList();
    filling = true;
    names.getItems().setAll(files.keySet().stream().sorted().toList());
    own.stream().filter(name -> !files.containsKey(name)).forEach(names.getItems()::add);
    names.setValue(own.size() == 1 ? own.get(0) : null);
    filling = false;
  }

  private void chosen(@Nullable String name) {
    State state = sheet.state().get();
    Path file = name == null ? null : files.get(name);
    if (filling || state == null || file == null) {
      return;
    }
    Map<String, String> values = new LinkedHashMap<>();
    values.put("floor.lip", file.toString());
    for (String key : state.written().keySet()) {
      if (key.matches("floor\\.edges\\.\\d+\\.lip")) {
        values.put(key, file.toString());
      }
    }
    sheet.set(values);
  }
}
