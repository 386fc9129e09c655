package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.Quantities;
import java.util.List;
import java.util.function.DoubleConsumer;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/**
 * A field for a number with its unit. What is typed is taken on Enter, when the cursor leaves the
 * field, and before anything is solved; what cannot be taken stays, marked, with its reason.
 */
final class ValueField extends TextField {
  private static final String BAD = "bad";
  private static final KeyCombination UNDO =
      new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN);
  private static final KeyCombination REDO =
      new KeyCodeCombination(KeyCode.Y, KeyCombination.SHORTCUT_DOWN);

  private final String place;
  private final Measure measure;
  private final Label reason;
  private DoubleConsumer taken = value -> {};
  private Runnable entered = () -> {};
  private String settled = "";
  private String entry = "";
  private double value = Double.NaN;

  /**
   * An empty field.
   *
   * @param id for tests and styles
   * @param place names the field in what is told
   * @param meaning told on hover
   */
  ValueField(String id, String place, String meaning, Measure measure) {
    this.place = place;
    this.measure = measure;
    setId(id);
    setPrefColumnCount(6);
    setAccessibleText(meaning);
    setTooltip(new Tooltip(meaning));
    reason = Controls.message(id + "-reason", "wrong");
    reason.visibleProperty().bind(reason.managedProperty());
    setOnAction(
        e -> {
          if (commit()) {
            entered.run();
          }
        });
    focusedProperty()
        .subscribe(
            on -> {
              if (!on) {
                commit();
              }
            });
    addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    ShownUnit.follow(this, this::again);
  }

  /** Hears each value that is taken, SI. */
  ValueField taking(DoubleConsumer consumer) {
    taken = consumer;
    return this;
  }

  /** Does something when a right entry is confirmed with Enter, changed or not. */
  ValueField entered(Runnable action) {
    entered = action;
    return this;
  }

  /** A field that shows a value from the first. */
  ValueField showing(double si) {
    set(si);
    return this;
  }

  /** Shows the value in another unit, unless something is being typed. */
  private void again() {
    if (getText().equals(settled) && !Double.isNaN(value)) {
      set(value);
    }
  }

  /** Says why the entry cannot be taken; takes no room while it can. */
  Label reason() {
    return reason;
  }

  /** The name of the field and the field. */
  HBox line() {
    Label label = new Label(place);
    label.setLabelFor(this);
    label.getStyleClass().add("field-name");
    label.setMinWidth(Region.USE_PREF_SIZE);
    return Controls.row(6, label, this);
  }

  /** Shows a value, SI, in place of what was typed. */
  void set(double si) {
    value = si;
    settled = measure.text(si);
    if (!getText().equals(settled)) {
      setText(settled);
    }
    right();
  }

  /** Shows no value, and faintly what counts then. */
  void setEmpty(String prompt) {
    value = Double.NaN;
    settled = "";
    setText("");
    setPromptText(prompt);
    right();
  }

  /** Marks what was taken as wrong after all, such as beside other values. */
  void refuse(String text) {
    wrong(text);
  }

  /** Shows the value last taken again. */
  void reset() {
    if (Double.isNaN(value)) {
      right();
    } else {
      set(value);
    }
  }

  /** The value last taken or shown, SI. */
  double value() {
    return value;
  }

  /** What was last taken as it was typed, with its unit. */
  String typed() {
    return entry;
  }

  /** Takes what is typed; false when it cannot be taken. */
  boolean commit() {
    if (getText().equals(settled)) {
      right();
      return true;
    }
    try {
      double typed = read();
      entry = Quantities.whole(measure.unit(), getText());
      set(typed);
      taken.accept(typed);
      return true;
    } catch (InputException e) {
      wrong(e.problems().get(0).text());
      return false;
    }
  }

  /** The value in the field, SI; a problem is added to the list and the field marked. */
  double read(List<Problem> problems) {
    if (!commit()) {
      problems.add(new Problem("field.value", place, getAccessibleHelp()));
      return Double.NaN;
    }
    return value;
  }

  /** Marks the field with a problem of its own. */
  void fault(String text, List<Problem> problems) {
    wrong(text);
    problems.add(new Problem("field.value", place, text));
  }

  private double read() throws InputException {
    double typed = Quantities.typed(measure.kind(), measure.unit(), place, getText());
    String wanted = measure.limits().apply(typed);
    if (!wanted.isEmpty()) {
      throw new InputException("field.range", place, wanted);
    }
    return typed;
  }

  private void wrong(String text) {
    if (!getStyleClass().contains(BAD)) {
      getStyleClass().add(BAD);
    }
    reason.setText(place + ": " + text);
    setAccessibleHelp(text);
  }

  private void right() {
    getStyleClass().removeAll(BAD);
    reason.setText("");
    setAccessibleHelp("");
  }

  /** Esc brings back what was shown; with nothing typed, undo and redo go to the page. */
  private void key(KeyEvent e) {
    if (e.getCode() == KeyCode.ESCAPE && !getText().equals(settled)) {
      setText(settled);
      right();
      selectAll();
      e.consume();
    } else if (getText().equals(settled)) {
      for (KeyCombination keys : List.of(UNDO, REDO)) {
        Runnable action = keys.match(e) ? getScene().getAccelerators().get(keys) : null;
        if (action != null) {
          action.run();
          e.consume();
        }
      }
    }
  }
}
