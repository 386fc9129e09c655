package hemline.viewer.screen;

import hemline.viewer.format.LengthUnit;
import javafx.beans.InvalidationListener;
import javafx.beans.WeakInvalidationListener;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.Node;

/** The unit of lengths in the window; all that is on show follows it. */
public final class ShownUnit {
  private static final ReadOnlyObjectWrapper<LengthUnit> UNIT =
      new ReadOnlyObjectWrapper<>(LengthUnit.now());

  private ShownUnit() {}

  /** The unit in use. */
  public static ReadOnlyObjectProperty<LengthUnit> property() {
    return UNIT.getReadOnlyProperty();
  }

  /** Chooses the unit. */
  public static void use(LengthUnit unit) {
    LengthUnit.use(unit);
    UNIT.set(unit);
  }

  /** Tells a node of each other unit for as long as it lives. */
  static void follow(Node node, Runnable change) {
    // reading the value makes the property tell of the next change
    InvalidationListener listener =
        o -> {
          UNIT.get();
          change.run();
        };
    node.getProperties().put(listener, listener);
    UNIT.addListener(new WeakInvalidationListener(listener));
  }
}
