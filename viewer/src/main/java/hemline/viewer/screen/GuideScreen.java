package hemline.viewer.screen;

import hemline.shared.result.Figure;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.FigureHelp;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.Libraries;
import hemline.viewer.format.Version;
import java.util.Objects;
import javafx.geometry.VPos;
import javafx.scene.Parent;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the figures mean, what to mind, and what the program is made of. */
public final class GuideScreen implements Screen {
  private static final double WIDTH = 820;

  @Override
  public String title() {
    return "Guide";
  }

  @Override
  public Parent createContent() {
    VBox page = new VBox(8);
    page.getStyleClass().add("page-text");
    page.setMaxWidth(WIDTH + 60);
    page.getChildren()
        .addAll(
            text("Before you build", "page-title"),
            text("Hemline computes air, not safety.", "plain"));
    Cautions.all().forEach(caution -> page.getChildren().add(text(caution, "safety")));
    page.getChildren()
        .addAll(
            text("Figures", "page-title"),
            text(
                "Each section is solved on three grids. The band beside a figure holds the numerical"
                    + " error judged from them, what iteration left open and, where it applies, the"
                    + " spread between flow models. Of two lips one counts as better only where the"
                    + " band of the ratio of their leaks excludes 1.",
                "plain"));
    for (Figure figure : Figure.values()) {
      FigureHelp help = FigureHelp.of(figure);
      page.getChildren()
          .addAll(
              text(FigureName.of(figure).strip(), "page-heading"),
              text(help.definition() + " Unit: " + help.unit() + ".", "plain"),
              text(help.judgement(), "quiet"));
    }
    page.getChildren()
        .addAll(
            text("About Hemline " + Version.TEXT, "page-title"),
            text(
                "A bench for the seal lips of machines that hold on by suction. Licence Apache-2.0."
                    + " Demonstration lips and machines are invented. How far the figures can be"
                    + " trusted is measured by the command check and told in the README.",
                "plain"),
            text("Libraries and their licences", "page-heading"),
            libraries());
    ScrollPane scroll = new ScrollPane(page);
    scroll.setId("guide");
    scroll.setFitToWidth(true);
    scroll.getStyleClass().add("page-scroll");
    BorderPane pane = new BorderPane(scroll);
    pane.getStyleClass().add("page");
    pane.getStylesheets()
        .add(Objects.requireNonNull(GuideScreen.class.getResource("pages.css")).toExternalForm());
    return pane;
  }

  private static GridPane libraries() {
    GridPane grid = new GridPane(18, 4);
    int row = 0;
    for (Libraries.Library one : Libraries.all()) {
      String[] cells = {one.name(), one.version(), one.licence(), one.use()};
      for (int c = 0; c < cells.length; c++) {
        Label cell = new Label(cells[c]);
        cell.setMinWidth(Region.USE_PREF_SIZE);
        if (c == 3) {
          cell.getStyleClass().add("quiet");
        }
        GridPane.setValignment(cell, VPos.TOP);
        grid.add(cell, c, row);
      }
      row++;
    }
    return grid;
  }

  private static Label text(String words, String style) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMaxWidth(WIDTH);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }
}
