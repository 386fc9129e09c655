package hemline.viewer.screen;

import hemline.viewer.format.FigureHelp;
import javafx.scene.control.Tooltip;
import javafx.util.Duration;

/** Explains a figure under the mouse: definition, unit, what is good. */
final class HelpTip extends Tooltip {
  private static final double WIDTH = 330;

  HelpTip(FigureHelp help) {
    this(help.text());
  }

  HelpTip(String text) {
    super(text);
    setWrapText(true);
    setMaxWidth(WIDTH);
    setShowDelay(Duration.millis(350));
    setShowDuration(Duration.minutes(2));
  }
}
