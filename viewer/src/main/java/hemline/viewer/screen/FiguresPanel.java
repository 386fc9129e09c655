package hemline.viewer.screen;

import hemline.shared.problem.Problem;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.ComparableAnswer;
import hemline.viewer.format.Digits;
import hemline.viewer.format.FigureHelp;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.LeakDifference;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Wording;
import hemline.viewer.model.Kept;
import hemline.viewer.model.Shown;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The slip beside the board: figures with their bands, notices, faults of the drawing. */
final class FiguresPanel {
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

  /** Paragraphs remembered: more than are ever shown at once. */
  private static final int MOST_PARAGRAPHS = 60;

  /** Notices that a finer mesh may end. */
  private static final Set<String> MESH_CURES =
      Set.of("grids.slow", "grids.diverging", "grids.incomplete", "solve.failed");

  private final Workbench bench;
  private final Hyperlink finerMesh = new Hyperlink();
  private final VBox lines = new VBox(8);
  private final Map<Figure, FigureLine> figures = new EnumMap<>(Figure.class);
  private final Map<String, Label> paragraphs =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Label> eldest) {
          return size() > MOST_PARAGRAPHS;
        }
      };

  FiguresPanel(Workbench bench) {
    this.bench = bench;
    finerMesh.setId("finer-mesh");
    lines.getStyleClass().add("slip");
    lines.setPadding(new Insets(14));
    bench.shown().subscribe(s -> fill());
    bench.behind().subscribe(s -> fill());
    bench.findings().subscribe(f -> fill());
    bench.failure().subscribe(f -> fill());
    bench.beside().subscribe(k -> fill());
    ShownUnit.follow(
        lines,
        () -> {
          figures.clear();
          fill();
        });
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
    List<Node> next = new ArrayList<>();
    for (Problem problem : bench.findings().get().problems()) {
      put(next, problem.text(), "wrong");
    }
    NoticeWords.of(bench.findings().get().notices()).forEach(t -> put(next, t, "caution"));
    SectionResult failure = bench.failure().get();
    if (failure != null) {
      NoticeWords.of(failure.notices()).forEach(t -> put(next, t, "wrong"));
      cure(next, failure);
    }
    // figures of another drawing are faded, not what is wrong with this one
    int own = next.size();
    Shown shown = bench.shown().get();
    if (shown == null) {
      put(next, "Press Run to see the air squeeze under this lip.", "hint");
    } else {
      fill(next, shown);
    }
    for (int k = 0; k < next.size(); k++) {
      next.get(k).setOpacity(k >= own && bench.behind().get() ? 0.6 : 1);
    }
    // nothing is laid out anew while numbers alone change
    if (!next.equals(lines.getChildren())) {
      lines.getChildren().setAll(next);
    }
  }

  private void fill(List<Node> next, Shown shown) {
    SectionResult result = shown.result();
    put(
        next,
        shown.preview() ? "Preview on one coarse grid, without bands" : conditions(shown),
        "quiet");
    for (Figure figure : FIRST) {
      Estimate estimate = result.figures().get(figure);
      if (estimate != null && applies(figure, shown)) {
        FigureLine line = figures.computeIfAbsent(figure, FigureLine::new);
        line.set(estimate, shown.preview(), beside(figure, shown));
        next.add(line.box);
      }
    }
    if (!shown.preview()) {
      put(next, Wording.verdict(result), "quiet");
      NoticeWords.of(result.notices()).forEach(t -> put(next, t, "caution"));
      cure(next, result);
    }
  }

  /** Where a notice advises a finer mesh, a way to it. */
  private void cure(List<Node> next, SectionResult result) {
    MeshLevel level = bench.options().get().level();
    boolean advised = result.notices().stream().anyMatch(n -> MESH_CURES.contains(n.code()));
    if (advised && level != MeshLevel.FINE) {
      MeshLevel finer = MeshLevel.values()[level.ordinal() + 1];
      finerMesh.setText("Run on the " + finer.key() + " mesh");
      finerMesh.setOnAction(e -> bench.useMesh(finer));
      next.add(finerMesh);
    }
  }

  private static String conditions(Shown shown) {
    String air = Wording.air(shown.section().fluid());
    return Wording.conditions(shown.result()) + (air.isEmpty() ? "" : " \u00b7 " + air);
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

  /** What the figure is of the lips set aside, a line each; the leak with its difference. */
  private String beside(Figure figure, Shown now) {
    StringBuilder text = new StringBuilder();
    List<Kept> all = bench.beside().get();
    for (int k = 0; k < all.size(); k++) {
      Shown flow = all.get(k).shown();
      Estimate estimate = flow == null ? null : flow.result().figures().get(figure);
      if (flow == null || estimate == null) {
        continue;
      }
      String letter = KeptBoard.LETTERS.substring(k, k + 1);
      text.append(text.isEmpty() ? "" : "\n").append(letter).append(' ');
      text.append(Digits.withBand(estimate, TradeUnit.of(figure).factor()));
      ComparableAnswer one = now.solved();
      ComparableAnswer other = flow.solved();
      Estimate ratio =
          figure != Figure.LEAK_FLOW || one == null || other == null ? null : one.leakOver(other);
      if (ratio != null && !bench.behind().get()) {
        text.append("\n").append(LeakDifference.of(ratio, letter));
      }
    }
    return text.toString();
  }

  /** One figure; its labels stay while its value changes. */
  private static final class FigureLine {
    private final TradeUnit unit;
    private final Label value = new Label();
    private final Label beside = new Label();
    private final VBox box;

    FigureLine(Figure figure) {
      unit = TradeUnit.of(figure);
      Label name = new Label(FigureName.of(figure));
      name.getStyleClass().add("figure-name");
      value.setId("figure-" + figure.key());
      value.getStyleClass().add(figure == Figure.LEAK_FLOW ? "figure-first" : "figure-value");
      beside.setId("kept-" + figure.key());
      beside.getStyleClass().add("figure-name");
      beside.setWrapText(true);
      beside.setMinHeight(Region.USE_PREF_SIZE);
      beside.managedProperty().bind(beside.visibleProperty());
      box = new VBox(0, name, value, beside);
      Tooltip.install(box, new HelpTip(FigureHelp.of(figure)));
    }

    void set(Estimate estimate, boolean preview, String others) {
      String number =
          preview
              ? "\u2248 " + Digits.plain(estimate.value() * unit.factor(), 3)
              : Digits.withBand(estimate, unit.factor());
      value.setText((number + " " + unit.unit()).strip());
      beside.setVisible(!others.isEmpty());
      beside.setText(others);
    }
  }

  /** Adds a paragraph, unless the same stands there already. */
  private void put(List<Node> next, String text, String style) {
    Label label = words(text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1), style);
    if (!next.contains(label)) {
      next.add(label);
    }
  }

  /** A paragraph; the same words in the same style are the same node. */
  private Label words(String text, String style) {
    return paragraphs.computeIfAbsent(
        style + text,
        key -> {
          Label label = new Label(text);
          label.setWrapText(true);
          label.setMinHeight(Region.USE_PREF_SIZE);
          label.getStyleClass().add(style);
          return label;
        });
  }
}
