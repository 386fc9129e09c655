package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.units.Quantities;
import hemline.viewer.format.Digits;
import java.util.function.DoubleConsumer;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** A length with its name; a bare number counts as millimetres. */
final class NumberField {
  private final String name;
  private final TextField field = new TextField();
  private final HBox line;

  /**
   * A field.
   *
   * @param id for tests and styles
   * @param meaning told on hover
   * @param taken hears the length, m, when the user confirms it
   */
  NumberField(String id, String name, String meaning, DoubleConsumer taken) {
    this.name = name;
    field.setId(id);
    field.setPrefColumnCount(5);
    field.setTooltip(new Tooltip(meaning));
    field.setAccessibleText(meaning);
    field.setOnAction(
        e -> {
          try {
            double value = read();
            field.getStyleClass().removeAll("bad");
            field.setTooltip(new Tooltip(meaning));
            taken.accept(value);
          } catch (InputException fault) {
            field.getStyleClass().add("bad");
            field.setTooltip(new Tooltip(fault.problems().get(0).text()));
          }
        });
    Label label = new Label(name);
    label.setLabelFor(field);
    label.getStyleClass().add("field-name");
    label.setMinWidth(Region.USE_PREF_SIZE);
    line = new HBox(6, label, field);
    line.setAlignment(Pos.CENTER_LEFT);
  }

  private double read() throws InputException {
    String text = field.getText().strip().replace('\u2212', '-');
    boolean bare = text.matches("[-+]?[0-9]*[.,]?[0-9]+");
    return Quantities.length(name, bare ? text.replace(',', '.') + "mm" : text);
  }

  /** The length in the field, m, or another where it cannot be read. */
  double value(double otherwise) {
    try {
      return read();
    } catch (InputException e) {
      field.getStyleClass().add("bad");
      return otherwise;
    }
  }

  HBox line() {
    return line;
  }

  TextField field() {
    return field;
  }

  /** Shows a length, m. */
  void set(double metres) {
    String text = Digits.plain(1000 * metres, 6) + " mm";
    if (!field.getText().equals(text)) {
      field.setText(text);
    }
    field.getStyleClass().removeAll("bad");
  }
}
