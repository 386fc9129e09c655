package hemline.viewer.screen;

import javafx.scene.Parent;

/** One page of the window. */
public interface Screen {

  /** Name on the tab. */
  String title();

  /** Makes the controls; called once. */
  Parent createContent();
}
