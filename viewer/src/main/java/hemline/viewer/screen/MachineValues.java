package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.units.Quantities;
import hemline.viewer.model.MachineSheet;
import hemline.viewer.model.MachineSheet.State;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The values of a machine, each a field with its unit, what counts when it is left out, and help.
 */
final class MachineValues {
  private final MachineSheet sheet;
  private final VBox groups = new VBox(4);
  private final Map<String, ValueField> fields = new LinkedHashMap<>();
  private final List<MachineValue> known = MachineValue.all();
  private String layout = "";
  private @Nullable ValueField last;

  MachineValues(MachineSheet sheet) {
    this.sheet = sheet;
    sheet.state().subscribe(this::show);
  }

  Region content() {
    return groups;
  }

  private void show(@Nullable State state) {
    if (state == null) {
      return;
    }
    List<MachineValue> values = values(state);
    String wanted = values.stream().map(v -> v.path() + v.name()).toList().toString();
    if (!wanted.equals(layout)) {
      layout = wanted;
      layOut(values);
    }
    for (MachineValue value : values) {
      ValueField field = fields.get(value.path());
      String text = state.value(value.path());
      if (field != null && text.isEmpty()) {
        field.setEmpty(value.absent());
      } else if (field != null) {
        fill(field, value, text);
      }
    }
    if (!state.fault().isEmpty() && last != null) {
      last.refuse(state.fault());
    }
  }

  private static void fill(ValueField field, MachineValue value, String text) {
    try {
      Measure measure = value.measure();
      field.set(Quantities.typed(measure.kind(), measure.unit(), value.name(), text));
    } catch (InputException e) {
      field.refuse(e.problems().get(0).text());
    }
  }

  /** Those of the list for this machine: an axle's for each axle, a valve's where there is one. */
  private List<MachineValue> values(State state) {
    List<MachineValue> values = new ArrayList<>();
    for (MachineValue value : known) {
      if (!value.listed()) {
        boolean there = !value.group().equals("valve") || !state.value("valve.seatArea").isEmpty();
        if (there) {
          values.add(value);
        }
      } else if (values.stream().noneMatch(v -> v.group().equals(value.group()))) {
        String list = value.group();
        for (int k = 0; !state.value(list + "." + k + ".x").isEmpty(); k++) {
          String name = state.value(list + "." + k + ".name");
          for (MachineValue one : known) {
            if (one.listed() && one.group().equals(list)) {
              values.add(one.at(k, name.isEmpty() ? String.valueOf(k) : name));
            }
          }
        }
      }
    }
    return values;
  }

  private void layOut(List<MachineValue> values) {
    fields.clear();
    groups.getChildren().clear();
    Map<String, VBox> boxes = new LinkedHashMap<>();
    for (MachineValue value : values) {
      VBox box = boxes.computeIfAbsent(value.group(), g -> new VBox(5));
      ValueField field = field(value);
      fields.put(value.path(), field);
      box.getChildren().addAll(field.line(), field.reason());
    }
    boxes.forEach(
        (group, box) -> {
          TitledPane pane =
              new TitledPane(
                  group.substring(0, 1).toUpperCase(Locale.ROOT) + group.substring(1), box);
          pane.setId("values-" + group);
          pane.setAnimated(false);
          pane.setExpanded(groups.getChildren().size() < 3);
          groups.getChildren().add(pane);
        });
  }

  private ValueField field(MachineValue value) {
    String id = "value-" + value.path().replace('.', '-');
    String unit = value.measure().unit();
    String help =
        value.help()
            + (unit.isEmpty() ? "" : "; a bare number counts in " + unit)
            + (value.absent().isEmpty() ? "" : "; left out: " + value.absent());
    ValueField field = new ValueField(id, value.name(), help, value.measure());
    return field.taking(
        v -> {
          last = field;
          sheet.set(value.path(), field.typed());
        });
  }
}
