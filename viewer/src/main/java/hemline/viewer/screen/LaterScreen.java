package hemline.viewer.screen;

import java.util.function.Supplier;
import javafx.scene.Parent;
import org.jspecify.annotations.Nullable;

/** A page that is made when it is first shown, so that the window need not wait for it. */
public final class LaterScreen implements Screen {
  private final String title;
  private final Supplier<Screen> maker;
  private @Nullable Screen screen;
  private boolean dark;

  /**
   * A page to come.
   *
   * @param title name on the tab
   * @param maker makes the page; called once
   */
  public LaterScreen(String title, Supplier<Screen> maker) {
    this.title = title;
    this.maker = maker;
  }

  @Override
  public String title() {
    return title;
  }

  @Override
  public Parent createContent() {
    Screen made = maker.get();
    screen = made;
    Parent content = made.createContent();
    made.setDark(dark);
    return content;
  }

  @Override
  public void setDark(boolean on) {
    dark = on;
    if (screen != null) {
      screen.setDark(on);
    }
  }

  @Override
  public void undo() {
    if (screen != null) {
      screen.undo();
    }
  }

  @Override
  public void redo() {
    if (screen != null) {
      screen.redo();
    }
  }

  @Override
  public void shown() {
    if (screen != null) {
      screen.shown();
    }
  }
}
