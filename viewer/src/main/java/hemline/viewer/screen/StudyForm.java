package hemline.viewer.screen;

import hemline.shared.fluid.Air;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SectionLimits;
import hemline.shared.units.QuantityKind;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.Swept;
import hemline.viewer.format.Wording;
import hemline.viewer.model.Setting;
import hemline.viewer.project.StudyQuestion;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Asks for a study: what to find out, for which lips, under which conditions. */
final class StudyForm {
  private static final int MOST_POINTS = 60;
  private static final int USUAL_CANDIDATES = 4;
  private static final String USUAL_BASELINE = "plain flat 8";

  private final VBox box = new VBox(7);
  private final ToggleGroup aim = new ToggleGroup();
  private final RadioButton overGap = aim("over-gap", "one lip as its gap changes");
  private final RadioButton overSuction = aim("over-suction", "one lip as the suction changes");
  private final RadioButton overGround = aim("over-ground", "one lip as the ground moves");
  private final RadioButton ranking = aim("ranking", "several lips against each other");
  private final ComboBox<LipProfile> lip = lips("study-lip");
  private final ComboBox<LipProfile> baseline = lips("study-baseline");
  private final Map<String, CheckBox> candidates = new LinkedHashMap<>();
  private final VBox candidateBox = new VBox(3);
  private final CheckBox relative = new CheckBox("against a plain flat lip as wide");
  private final QuantityField gap =
      new QuantityField("study-gap", "gap", QuantityKind.LENGTH, "2 mm");
  private final QuantityField gapTo =
      new QuantityField("study-gap-to", "last gap", QuantityKind.LENGTH, "4 mm");
  private final QuantityField suction =
      new QuantityField("study-suction", "suction", QuantityKind.PRESSURE, "600 Pa");
  private final QuantityField suctionTo =
      new QuantityField("study-suction-to", "last suction", QuantityKind.PRESSURE, "2 kPa");
  private final QuantityField ground =
      new QuantityField("study-ground", "ground speed", QuantityKind.SPEED, "0 m/s");
  private final QuantityField groundTo =
      new QuantityField("study-ground-to", "last ground speed", QuantityKind.SPEED, "5 m/s");
  private final QuantityField spanwise =
      new QuantityField("study-spanwise", "speed along the seal", QuantityKind.SPEED, "0 m/s");
  private final QuantityField temperature =
      new QuantityField("study-temperature", "temperature", QuantityKind.TEMPERATURE, "15 \u00b0C");
  private final CheckBox spread = new CheckBox("second flow model on all grids");
  private final TextField points = new TextField("6");
  private final ComboBox<MeshLevel> mesh =
      new ComboBox<>(FXCollections.observableArrayList(MeshLevel.values()));
  private List<LipProfile> known = List.of();

  StudyForm() {
    points.setId("study-points");
    points.setPrefColumnCount(3);
    relative.setId("study-relative");
    relative.setSelected(true);
    spread.setId("study-model-spread");
    spread.setTooltip(
        new HelpTip(
            "Solves the second turbulence model, which else is compared on the coarsest grid, on"
                + " all grids. Takes twice as long."));
    mesh.setId("study-mesh");
    mesh.setValue(MeshLevel.MEDIUM);
    mesh.setConverter(Controls.names(MeshLevel::key));
    aim.selectToggle(overGap);
    aim.selectedToggleProperty().subscribe(t -> layOut());
  }

  VBox content() {
    return box;
  }

  private RadioButton aim(String id, String text) {
    RadioButton button = new RadioButton(text);
    button.setId(id);
    button.setToggleGroup(aim);
    button.setOnAction(e -> usualRange());
    return button;
  }

  private static ComboBox<LipProfile> lips(String id) {
    ComboBox<LipProfile> box = new ComboBox<>();
    box.setId(id);
    box.setMaxWidth(Double.MAX_VALUE);
    box.setConverter(Controls.names(LipProfile::name));
    return box;
  }

  private @Nullable Swept swept() {
    var chosen = aim.getSelectedToggle();
    return chosen == ranking
        ? null
        : chosen == overSuction
            ? Swept.SUCTION
            : chosen == overGround ? Swept.GROUND_SPEED : Swept.GAP;
  }

  /** Begins with the conditions of the bench. */
  void begin(Setting setting) {
    suction.setText(Wording.pressure(setting.suction()));
    ground.setText(Wording.value(Swept.GROUND_SPEED, setting.groundSpeed()));
    spanwise.setText(Wording.value(Swept.GROUND_SPEED, setting.spanwiseSpeed()));
    temperature.setText(Wording.temperature(setting.temperature()));
    usualRange();
  }

  /** Offers other lips; choices that are still there stay. */
  void offer(List<LipProfile> lips) {
    LipProfile before = lip.getValue();
    LipProfile base = baseline.getValue();
    known = List.copyOf(lips);
    lip.setItems(FXCollections.observableArrayList(known));
    baseline.setItems(FXCollections.observableArrayList(known));
    lip.setValue(named(before == null ? "" : before.name(), 0));
    baseline.setValue(named(base == null ? USUAL_BASELINE : base.name(), 0));
    Map<String, Boolean> chosen = new LinkedHashMap<>();
    candidates.forEach((name, one) -> chosen.put(name, one.isSelected()));
    candidates.clear();
    candidateBox.getChildren().clear();
    for (LipProfile one : known) {
      CheckBox check = new CheckBox(one.name());
      check.setId("candidate-" + one.name().replace(' ', '-'));
      check.setSelected(chosen.getOrDefault(one.name(), candidates.size() < USUAL_CANDIDATES));
      candidates.put(one.name(), check);
      candidateBox.getChildren().add(check);
    }
  }

  private @Nullable LipProfile named(String name, int otherwise) {
    return known.stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElse(known.isEmpty() ? null : known.get(otherwise));
  }

  /** Puts a usual range where only one value stood. */
  private void usualRange() {
    Swept swept = swept();
    if (swept == null || swept == Swept.GAP) {
      gap.setText("1 mm");
    } else if (gap.getText().equals("1 mm")) {
      gap.setText("2 mm");
    }
    if (swept == Swept.SUCTION) {
      suction.setText("200 Pa");
    } else if (suction.getText().equals("200 Pa")) {
      suction.setText("600 Pa");
    }
    if (swept == Swept.GROUND_SPEED) {
      ground.setText("\u22125 m/s");
    } else if (ground.getText().startsWith("\u2212")) {
      ground.setText("0 m/s");
    }
  }

  private void layOut() {
    Swept swept = swept();
    box.getChildren().setAll(heading("What to follow"), overGap, overSuction, overGround, ranking);
    if (swept == null) {
      ScrollPane list = new ScrollPane(candidateBox);
      list.setFitToWidth(true);
      list.setPrefHeight(170);
      list.setMinHeight(90);
      list.getStyleClass().add("candidates");
      VBox.setVgrow(list, Priority.SOMETIMES);
      Label lips = heading("Lips");
      HBox.setHgrow(lips, Priority.ALWAYS);
      lips.setMaxWidth(Double.MAX_VALUE);
      HBox head = new HBox(6, lips, choosing("all", true), choosing("none", false));
      head.setAlignment(Pos.BASELINE_LEFT);
      box.getChildren().addAll(head, list, row("measured against", grown(baseline)));
    } else {
      box.getChildren().addAll(heading("Lip"), lip, relative);
    }
    box.getChildren().add(heading("Conditions"));
    boolean gaps = swept == null || swept == Swept.GAP;
    box.getChildren().add(gaps ? range("gaps", gap, gapTo) : row("gap", gap));
    box.getChildren()
        .add(
            swept == Swept.SUCTION
                ? range("suctions", suction, suctionTo)
                : row("suction", suction));
    box.getChildren()
        .add(
            swept == Swept.GROUND_SPEED
                ? range("ground", ground, groundTo)
                : row("ground towards the plenum", ground));
    box.getChildren().add(row("ground along the seal", spanwise));
    box.getChildren().add(row("air at", temperature));
    box.getChildren().add(row("in", points, new Label("points"), new Label("   mesh"), mesh));
    box.getChildren().add(spread);
  }

  private Button choosing(String name, boolean on) {
    Button button =
        Controls.button(
            "candidates-" + name, name, e -> candidates.values().forEach(c -> c.setSelected(on)));
    button.getStyleClass().add("small");
    return button;
  }

  private static Label heading(String text) {
    return Controls.text(text, "page-heading");
  }

  private static Node grown(ComboBox<?> box) {
    HBox.setHgrow(box, Priority.ALWAYS);
    return box;
  }

  private static HBox row(String name, Node... nodes) {
    Label words = new Label(name);
    words.setMinWidth(Region.USE_PREF_SIZE);
    HBox row = new HBox(6, words);
    row.getChildren().addAll(nodes);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private static HBox range(String name, QuantityField from, QuantityField to) {
    return row(name, from, new Label("to"), to);
  }

  /** The study as the fields say; null when one of them is wrong. */
  @Nullable StudyQuestion read(List<Problem> problems) {
    Swept swept = swept();
    List<LipProfile> lips = new ArrayList<>();
    if (swept == null) {
      known.stream()
          .filter(
              one -> candidates.get(one.name()) != null && candidates.get(one.name()).isSelected())
          .forEach(lips::add);
    } else if (lip.getValue() != null) {
      lips.add(lip.getValue());
    }
    if (lips.isEmpty()) {
      problems.add(
          new Problem(
              "study.lips",
              "lips",
              known.isEmpty()
                  ? "are still being read; try again in a moment"
                  : "choose at least one lip"));
    }
    double atSuction = suction.read(problems);
    double atGround = ground.read(problems);
    double atSpanwise = spanwise.read(problems);
    double kelvin = temperature.read(problems);
    if (kelvin < Air.COLDEST || kelvin > Air.HOTTEST) {
      temperature.fault("air is known here from -73degC to 227degC, such as 15degC", problems);
    }
    double atGap = gap.read(problems);
    within(gap, atGap, SectionLimits::gap, problems);
    within(suction, atSuction, SectionLimits::suction, problems);
    within(ground, atGround, SectionLimits::speed, problems);
    within(spanwise, atSpanwise, SectionLimits::speed, problems);
    List<Double> values =
        swept == Swept.SUCTION
            ? values(atSuction, suctionTo, SectionLimits::suction, problems)
            : swept == Swept.GROUND_SPEED
                ? values(atGround, groundTo, SectionLimits::speed, problems)
                : values(atGap, gapTo, SectionLimits::gap, problems);
    if (!problems.isEmpty()) {
      return null;
    }
    LipProfile against =
        swept == null
            ? baseline.getValue()
            : relative.isSelected() ? PlainFlat.asWideAs(lips.get(0)) : null;
    return new StudyQuestion(
        swept,
        lips,
        against,
        values,
        atGap,
        swept == Swept.SUCTION ? values.get(0) : atSuction,
        new GroundMotion(swept == Swept.GROUND_SPEED ? 0 : atGround, atSpanwise),
        Air.at(kelvin, Air.STANDARD_PRESSURE),
        mesh.getValue(),
        Closure.AUTO,
        spread.isSelected());
  }

  /** Refuses what the command line refuses; a field that cannot be read is told already. */
  private static void within(
      QuantityField field, double value, DoubleFunction<String> right, List<Problem> problems) {
    if (!Double.isNaN(value) && !right.apply(value).isEmpty()) {
      field.fault(right.apply(value), problems);
    }
  }

  private List<Double> values(
      double from, QuantityField toField, DoubleFunction<String> right, List<Problem> problems) {
    double to = toField.read(problems);
    within(toField, to, right, problems);
    int count = count(problems);
    if (!problems.isEmpty()) {
      return List.of();
    }
    if (count > 1 && !(to > from)) {
      toField.fault("must be above the first value of the range", problems);
      return List.of();
    }
    List<Double> values = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      double value = count == 1 ? from : from + (to - from) * k / (count - 1);
      values.add(new BigDecimal(value).round(new MathContext(12)).doubleValue());
    }
    return values;
  }

  private int count(List<Problem> problems) {
    points.getStyleClass().remove("bad");
    try {
      int count = Integer.parseInt(points.getText().strip());
      if (count >= 1 && count <= MOST_POINTS) {
        return count;
      }
    } catch (NumberFormatException e) {
      // told below
    }
    points.getStyleClass().add("bad");
    problems.add(
        new Problem("study.points", "points", "a range takes 1 to " + MOST_POINTS + " points"));
    return 0;
  }
}
