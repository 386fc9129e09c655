package hemline.viewer.screen;

import javafx.scene.Parent;

/** One page of the window. */
public interface Screen {

  /** Name on the tab. */
  String title();

  /** Makes the controls; called once. */
  Parent createContent();

  /** Turns what is painted, not styled, to light or dark. */
  default void setDark(boolean on) {}

  /** Takes back the last change on this page; nothing where there is none. */
  default void undo() {}

  /** Makes again what was taken back. */
  default void redo() {}

  /** Called whenever the page comes to the front. */
  default void shown() {}
}
