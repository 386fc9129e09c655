package hemline.viewer.screen;

import hemline.viewer.draw.PictureCanvas;
import hemline.viewer.format.BalancePage;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.model.MachineDesk.Balanced;
import hemline.viewer.picture.DownforceChart;
import hemline.viewer.picture.FanChart;
import hemline.viewer.picture.HoldChart;
import hemline.viewer.picture.Picture;
import hemline.viewer.picture.TradeChart;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A machine's balance, part by part, each caution beside the figures it belongs to. */
final class MachineResults {
  private static final double BAR = 16;
  private final VBox lines = new VBox(8);
  private final ScrollPane pane = new ScrollPane(lines);
  private final List<PictureCanvas> canvases = new ArrayList<>();
  private boolean dark;

  MachineResults() {
    lines.getStyleClass().add("study-sheet");
    pane.setFitToWidth(true);
    pane.getStyleClass().add("page-scroll");
    pane.setId("machine-sheet");
  }

  Region content() {
    return pane;
  }

  void setDark(boolean on) {
    dark = on;
    canvases.forEach(canvas -> canvas.setDark(on));
  }

  void show(@Nullable Balanced found, Node save) {
    lines.getChildren().clear();
    canvases.clear();
    if (found == null) {
      Label hint =
          text(
              "Choose a machine and press Start: the leaks of all edges are solved, set against the"
                  + " fan's curve, and tell suction, downforce, ride height, hold and grip."
                  + " Sections solved once are kept, so the next balance is quick.",
              "hint");
      hint.setMaxWidth(560);
      lines.getChildren().add(hint);
      return;
    }
    Label title = text(BalancePage.title(found.balance().machine()), "study-title");
    title.setId("machine-title");
    lines
        .getChildren()
        .addAll(title, text(BalanceWords.conditions(found.balance().machine()), "quiet"), save);
    for (BalancePage.Block block : BalancePage.of(found.balance())) {
      part(found, block);
    }
    lines
        .getChildren()
        .add(
            text(
                found.balance().leakPoints().size()
                    + " sections on "
                    + found.mesh()
                    + " grids, "
                    + Digits.plain(found.seconds(), 2)
                    + " s. Every figure carries the band that the bands of the leaks leave it.",
                "quiet"));
    pane.setVvalue(0);
  }

  private void part(Balanced found, BalancePage.Block block) {
    lines.getChildren().add(text(block.title(), "page-heading"));
    for (String caution : block.cautions()) {
      Label label = text(caution, "safety");
      label.setMaxWidth(880);
      lines.getChildren().add(label);
    }
    if (!block.table().isEmpty()) {
      GridPane table = table(block.table());
      ScrollPane wide = new ScrollPane(table);
      // room for the bar below, which must not cover a row
      wide.minViewportHeightProperty().bind(table.heightProperty().add(BAR));
      wide.setVbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
      wide.getStyleClass().add("page-scroll");
      lines.getChildren().add(wide);
    }
    block.sentences().forEach(s -> lines.getChildren().add(text(s, "plain")));
    switch (block.topic()) {
      case POINTS -> picture(FanChart.of(found.balance()));
      case FIGURES -> picture(DownforceChart.of(found.balance()));
      case HOLDS -> picture(HoldChart.of(found.balance()));
      case TRADES -> picture(TradeChart.of(found.balance()));
      default -> {}
    }
  }

  private void picture(Picture picture) {
    PictureCanvas canvas = new PictureCanvas(picture, dark);
    canvases.add(canvas);
    lines.getChildren().add(canvas);
  }

  private static GridPane table(List<List<String>> rows) {
    GridPane grid = new GridPane(18, 4);
    for (int r = 0; r < rows.size(); r++) {
      List<String> cells = rows.get(r);
      for (int c = 0; c < cells.size(); c++) {
        Label cell = new Label(cells.get(c));
        cell.setMinWidth(Region.USE_PREF_SIZE);
        if (r == 0) {
          cell.getStyleClass().add("quiet");
        }
        boolean number = c > 0 && rows.size() > 1 && startsWithDigit(rows.get(1), c);
        GridPane.setHalignment(cell, number ? HPos.RIGHT : HPos.LEFT);
        grid.add(cell, c, r);
      }
    }
    return grid;
  }

  private static boolean startsWithDigit(List<String> cells, int c) {
    return c < cells.size()
        && !cells.get(c).isEmpty()
        && (Character.isDigit(cells.get(c).charAt(0)) || cells.get(c).charAt(0) == '\u2212');
  }

  private static Label text(String words, String style) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }
}
