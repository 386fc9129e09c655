package hemline.viewer.screen;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import java.util.List;
import javafx.scene.control.TextField;

/** A field for a quantity with its unit, such as "2 mm"; what is wrong is gathered, not thrown. */
final class QuantityField extends TextField {
  private static final String BAD = "bad";
  private final QuantityKind kind;
  private final String place;

  QuantityField(String id, String place, QuantityKind kind, String text) {
    super(text);
    this.kind = kind;
    this.place = place;
    setId(id);
    setPrefColumnCount(6);
    setAccessibleText(place);
  }

  /** The quantity, SI; a problem is added to the list and the field marked. */
  double read(List<Problem> problems) {
    getStyleClass().removeAll(BAD);
    try {
      return Quantities.read(kind, place, getText());
    } catch (InputException e) {
      getStyleClass().add(BAD);
      problems.addAll(e.problems());
      return Double.NaN;
    }
  }

  /** Marks the field with a problem of its own. */
  void fault(String text, List<Problem> problems) {
    getStyleClass().add(BAD);
    problems.add(new Problem("study.field", place, text));
  }
}
