package hemline.viewer.screen;

import hemline.shared.problem.Notice;
import hemline.shared.problem.Problem;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.viewer.format.Digits;
import hemline.viewer.format.FigureHelp;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Wording;
import hemline.viewer.model.Kept;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The slip beside the board: figures with their bands, notices, faults of the drawing. */
final class FiguresSlip {
  private static final List<Figure> FIRST =
      List.of(
          Figure.LEAK_FLOW,
          Figure.DISCHARGE_COEFFICIENT,
          Figure.EFFECTIVE_GAP,
          Figure.PRESSURE_RECOVERY,
          Figure.LIP_FORCE_X,
          Figure.LIP_FORCE_Y,
          Figure.LIP_MOMENT,
          Figure.GROUND_DRAG,
          Figure.GROUND_DRAG_SPANWISE,
          Figure.GROUND_POWER);

  private final Workbench bench;
  private final VBox lines = new VBox(8);

  FiguresSlip(Workbench bench) {
    this.bench = bench;
    lines.getStyleClass().add("slip");
    lines.setPadding(new Insets(14));
    bench.shown().subscribe(s -> fill());
    bench.stale().subscribe(s -> fill());
    bench.findings().subscribe(f -> fill());
    bench.failure().subscribe(f -> fill());
    bench.kept().subscribe(k -> fill());
  }

  Region content() {
    ScrollPane pane = new ScrollPane(lines);
    pane.setFitToWidth(true);
    pane.setPrefWidth(286);
    pane.setMinWidth(230);
    pane.getStyleClass().add("slip-pane");
    return pane;
  }

  private void fill() {
    lines.getChildren().clear();
    lines.setOpacity(bench.stale().get() ? 0.6 : 1);
    for (Problem problem : bench.findings().get().problems()) {
      add(problem.text(), "wrong");
    }
    for (Notice notice : bench.findings().get().notices()) {
      add(notice.text(), "caution");
    }
    SectionResult failure = bench.failure().get();
    if (failure != null) {
      failure.notices().forEach(n -> add(n.text(), "wrong"));
    }
    Shown shown = bench.shown().get();
    if (shown == null) {
      add("Press Run to see the air squeeze under this lip.", "hint");
      return;
    }
    SectionResult result = shown.result();
    add(
        shown.preview() ? "Preview on one coarse grid, without bands" : Wording.conditions(result),
        "quiet");
    for (Figure figure : FIRST) {
      Estimate estimate = result.figures().get(figure);
      if (estimate != null && applies(figure, shown)) {
        lines.getChildren().add(figure(figure, estimate, shown.preview(), kept(figure)));
      }
    }
    if (!shown.preview()) {
      add(Wording.verdict(result), "quiet");
      result.notices().forEach(n -> add(n.text(), "caution"));
    }
  }

  /** False for drag along the seal, and for power, where the ground does not move so. */
  private static boolean applies(Figure figure, Shown shown) {
    GroundMotion ground = shown.section().ground();
    return switch (figure) {
      case GROUND_DRAG_SPANWISE -> ground.spanwiseSpeed() != 0;
      case GROUND_POWER -> ground.speed() != 0 || ground.spanwiseSpeed() != 0;
      default -> true;
    };
  }

  private @Nullable Estimate kept(Figure figure) {
    Kept kept = bench.kept().get();
    return kept == null ? null : kept.shown().result().figures().get(figure);
  }

  private static VBox figure(
      Figure figure, Estimate estimate, boolean preview, @Nullable Estimate kept) {
    TradeUnit unit = TradeUnit.of(figure);
    Label name = new Label(FigureName.of(figure));
    name.getStyleClass().add("figure-name");
    String number =
        preview
            ? "\u2248 " + Digits.plain(estimate.value() * unit.factor(), 3)
            : Digits.withBand(estimate, unit.factor());
    Label value = new Label((number + " " + unit.unit()).strip());
    value.setId("figure-" + figure.key());
    value.getStyleClass().add(figure == Figure.LEAK_FLOW ? "figure-first" : "figure-value");
    VBox box = new VBox(0, name, value);
    if (kept != null) {
      Label beside = new Label("kept " + Digits.withBand(kept, unit.factor()));
      beside.setId("kept-" + figure.key());
      beside.getStyleClass().add("figure-name");
      box.getChildren().add(beside);
    }
    Tooltip.install(box, new HelpTip(FigureHelp.of(figure)));
    return box;
  }

  private void add(String text, String style) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.getStyleClass().add(style);
    lines.getChildren().add(label);
  }
}
