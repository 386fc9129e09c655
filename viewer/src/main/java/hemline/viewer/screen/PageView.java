package hemline.viewer.screen;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.viewer.draw.PictureCanvas;
import hemline.viewer.page.Page;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.page.PageTable;
import hemline.viewer.picture.Picture;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A page in the window. Its words come first; pictures are painted as they come into view. */
final class PageView implements Page.Face {
  /** Room for the bar below a wide table, which must not cover a row. */
  private static final double BAR = 16;

  private static final double READABLE = 880;
  private static final Map<Tone, String> STYLES =
      Map.of(
          Tone.QUIET, "quiet",
          Tone.PLAIN, "plain",
          Tone.FINDING, "finding",
          Tone.NOTICE, "caution",
          Tone.CAUTION, "safety");

  private final String id;
  private final String hint;
  private final VBox lines = new VBox(8);
  private final ScrollPane pane = new ScrollPane(lines);
  private final List<PictureCanvas> canvases = new ArrayList<>();
  private @Nullable Consumer<SectionResult> opener;
  private Function<SectionResult, Optional<LipProfile>> pictures = flow -> Optional.empty();
  private boolean dark;
  private boolean looking;

  /**
   * A view without a page.
   *
   * @param id begins the names of its parts
   * @param hint shown while there is no page
   */
  PageView(String id, String hint) {
    this.id = id;
    this.hint = hint;
    lines.getStyleClass().add("study-sheet");
    pane.setFitToWidth(true);
    pane.getStyleClass().add("page-scroll");
    pane.setId(id + "-sheet");
    pane.vvalueProperty().subscribe(v -> lookSoon());
    pane.viewportBoundsProperty().subscribe(v -> lookSoon());
    show(null);
  }

  /** Rows about a section lead to its flow from now on. */
  void opensFlowsBy(Consumer<SectionResult> flows) {
    opener = flows;
  }

  Region content() {
    return pane;
  }

  void setDark(boolean on) {
    dark = on;
    canvases.forEach(canvas -> canvas.setDark(on));
  }

  /**
   * Shows a page.
   *
   * @param page null for none
   * @param tools set below its title
   */
  void show(@Nullable Page page, Node... tools) {
    lines.getChildren().clear();
    canvases.clear();
    if (page == null) {
      Controls.add(lines, Controls.text(hint, "hint")).setMaxWidth(560);
      return;
    }
    Controls.add(lines, Controls.text(page.title(), "study-title")).setId(id + "-title");
    lines.getChildren().addAll(tools);
    page.show(this);
    pane.setVvalue(0);
  }

  /** Brings a heading to the top. */
  void go(String heading) {
    pane.applyCss();
    pane.layout();
    double hidden = lines.getHeight() - pane.getViewportBounds().getHeight();
    for (Node node : lines.getChildren()) {
      if (hidden > 0 && node instanceof Label label && label.getText().equals(heading)) {
        pane.setVvalue(Math.min(1, node.getBoundsInParent().getMinY() / hidden));
      }
    }
  }

  @Override
  public boolean roomy() {
    return true;
  }

  @Override
  public void heading(String text) {
    Controls.add(lines, Controls.text(text, "page-heading"));
  }

  @Override
  public void text(String text, Tone tone) {
    Label label = Controls.text(text, STYLES.getOrDefault(tone, "plain"));
    Controls.add(lines, label).setMaxWidth(READABLE);
  }

  @Override
  public void plot(Supplier<? extends Picture> picture, String description) {
    PictureCanvas canvas = new PictureCanvas(picture.get(), dark);
    canvas.setAccessibleText(description);
    canvases.add(canvas);
    lines.getChildren().add(canvas);
    canvas.boundsInParentProperty().subscribe(place -> lookSoon());
  }

  /** Looks for pictures in view when what is laid out now is on the screen. */
  private void lookSoon() {
    if (!looking) {
      looking = true;
      Platform.runLater(this::look);
    }
  }

  private void look() {
    looking = false;
    double height = pane.getViewportBounds().getHeight();
    double top = pane.getVvalue() * Math.max(0, lines.getHeight() - height);
    for (PictureCanvas canvas : canvases) {
      Bounds place = canvas.getBoundsInParent();
      if (place.getHeight() > 0 && place.getMaxY() > top && place.getMinY() < top + height) {
        canvas.see();
      }
    }
  }

  @Override
  public void table(PageTable table) {
    GridPane grid = new GridPane(18, 4);
    int r = 0;
    if (!table.head().isEmpty()) {
      row(grid, r++, table, table.head(), "quiet", "");
    }
    for (PageTable.Row row : table.rows()) {
      if (row.kind() == PageTable.Kind.GROUP) {
        grid.add(Controls.text(row.cells().get(0), "page-heading"), 0, r, table.columns(), 1);
      } else {
        boolean marked = row.kind() == PageTable.Kind.MARKED;
        row(grid, r, table, row.cells(), marked ? "wrong" : "plain", row.help());
        SectionResult flow = row.flow();
        if (flow != null && opener != null) {
          link(grid, r, flow, opener);
        }
      }
      r++;
    }
    ScrollPane wide = new ScrollPane(grid);
    wide.minViewportHeightProperty().bind(grid.heightProperty().add(BAR));
    wide.setVbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    wide.getStyleClass().add("page-scroll");
    lines.getChildren().add(wide);
  }

  /** Shows a small picture of the lip beside each link to a flow from now on. */
  void picturesLipsBy(Function<SectionResult, Optional<LipProfile>> lips) {
    pictures = lips;
  }

  /** Turns the first cell of a row into a link to its flow. */
  private void link(GridPane grid, int r, SectionResult flow, Consumer<SectionResult> to) {
    int last = grid.getChildren().size();
    for (int k = 0; k < last; k++) {
      Node node = grid.getChildren().get(k);
      if (GridPane.getRowIndex(node) == r
          && GridPane.getColumnIndex(node) == 0
          && node instanceof Label label) {
        Hyperlink link = new Hyperlink(label.getText());
        link.setId(id + "-flow-" + r);
        link.setMinWidth(Region.USE_PREF_SIZE);
        link.setTooltip(new Tooltip("Show this flow on the bench"));
        pictures.apply(flow).ifPresent(lip -> link.setGraphic(Thumbnail.of(lip)));
        link.setOnAction(e -> to.accept(flow));
        GridPane.setHalignment(link, GridPane.getHalignment(label));
        grid.getChildren().remove(label);
        grid.add(link, 0, r);
        return;
      }
    }
  }

  private static void row(
      GridPane grid, int r, PageTable table, List<String> cells, String style, String help) {
    for (int c = 0; c < cells.size(); c++) {
      Label cell = new Label(cells.get(c));
      cell.setMinWidth(Region.USE_PREF_SIZE);
      cell.getStyleClass().add(style);
      if (!help.isEmpty()) {
        cell.setTooltip(new Tooltip(help));
      }
      GridPane.setHalignment(cell, table.number(c) ? HPos.RIGHT : HPos.LEFT);
      grid.add(cell, c, r);
    }
  }
}
