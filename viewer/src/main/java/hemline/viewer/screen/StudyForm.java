package hemline.viewer.screen;

import hemline.shared.fluid.Air;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.GroundMotion;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.PlainFlat;
import hemline.solver.study.Swept;
import hemline.viewer.model.Setting;
import hemline.viewer.project.StudyQuestion;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
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
  private final RadioButton ranking = aim("ranking", "ranking of several lips");
  private final ComboBox<LipProfile> lip = lips("study-lip");
  private final ComboBox<LipProfile> baseline = lips("study-baseline");
  private final LipChoice candidates = new LipChoice("candidate", USUAL_CANDIDATES);
  private final VBox reasons = new VBox(2);
  private final CheckBox relative = new CheckBox("against a plain flat lip as wide");
  private final ValueField gap = field("study-gap", "gap", Measure.GAP, 2e-3);
  private final ValueField gapTo = field("study-gap-to", "last gap", Measure.GAP, 4e-3);
  private final ValueField suction = field("study-suction", "suction", Measure.SUCTION, 600);
  private final ValueField suctionTo =
      field("study-suction-to", "last suction", Measure.SUCTION, 2000);
  private final ValueField ground = field("study-ground", "ground speed", Measure.SPEED, 0);
  private final ValueField groundTo =
      field("study-ground-to", "last ground speed", Measure.SPEED, 5);
  private final ValueField spanwise =
      field("study-spanwise", "ground speed along the seal", Measure.SPEED, 0);
  private final ValueField temperature =
      field("study-temperature", "temperature", Measure.TEMPERATURE, Air.STANDARD_TEMPERATURE);
  private final ValueField points =
      field("study-points", "points", Measure.number(3, StudyForm::count), 6);
  private final CheckBox spread = new CheckBox("second turbulence model on all grids");
  private final ComboBox<MeshLevel> mesh =
      new ComboBox<>(FXCollections.observableArrayList(MeshLevel.values()));
  private List<LipProfile> known = List.of();

  StudyForm() {
    points.setPrefColumnCount(3);
    all().forEach(field -> reasons.getChildren().add(field.reason()));
    relative.setId("study-relative");
    relative.setSelected(true);
    spread.setId("study-model-spread");
    spread.setTooltip(
        new HelpTip(
            "Solves the second turbulence model, which else is compared on the coarsest grid, on"
                + " all grids. Takes twice as long."));
    mesh.setId("study-mesh");
    mesh.setAccessibleText("mesh of the study");
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
    box.setAccessibleText(id.equals("study-lip") ? "lip to study" : "lip to measure against");
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
    suction.set(setting.suction());
    ground.set(setting.groundSpeed());
    spanwise.set(setting.spanwiseSpeed());
    temperature.set(setting.temperature());
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
    candidates.offer(known);
  }

  /** Asks for what a study asked for; lips that are not there any more are left out. */
  void take(StudyQuestion question) {
    Swept swept = question.swept();
    aim.selectToggle(
        swept == null
            ? ranking
            : swept == Swept.SUCTION
                ? overSuction
                : swept == Swept.GROUND_SPEED ? overGround : overGap);
    gap.set(question.held().gap());
    suction.set(question.held().suction());
    ground.set(question.held().ground().speed());
    double first = question.values().get(0);
    double last = question.values().get(question.values().size() - 1);
    boolean suctions = swept == Swept.SUCTION;
    boolean speeds = swept == Swept.GROUND_SPEED;
    (suctions ? suction : speeds ? ground : gap).set(first);
    (suctions ? suctionTo : speeds ? groundTo : gapTo).set(last);
    points.set(question.values().size());
    spanwise.set(question.held().ground().spanwiseSpeed());
    temperature.set(Setting.temperature(question.held().air()));
    mesh.setValue(question.solving().level());
    spread.setSelected(question.solving().modelSpread());
    relative.setSelected(question.baseline() != null);
    List<String> names = question.lips().stream().map(LipProfile::name).toList();
    known.stream().filter(l -> l.name().equals(names.get(0))).findFirst().ifPresent(lip::setValue);
    if (swept == null && question.baseline() != null) {
      baseline.setValue(named(question.baseline().name(), 0));
      candidates.choose(names);
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
      gap.set(1e-3);
    } else if (gap.value() == 1e-3) {
      gap.set(2e-3);
    }
    if (swept == Swept.SUCTION) {
      suction.set(200);
    } else if (suction.value() == 200) {
      suction.set(600);
    }
    if (swept == Swept.GROUND_SPEED) {
      ground.set(-5);
    } else if (ground.value() < 0) {
      ground.set(0);
    }
  }

  private void layOut() {
    Swept swept = swept();
    box.getChildren().setAll(heading("What to follow"), overGap, overSuction, overGround, ranking);
    if (swept == null) {
      VBox lips = candidates.content("Lips", "");
      VBox.setVgrow(lips, Priority.SOMETIMES);
      box.getChildren().addAll(lips, row("measured against", grown(baseline)));
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
                : row("ground speed to the plenum", ground));
    box.getChildren().add(row("ground speed along the seal", spanwise));
    box.getChildren().add(row("air at", temperature));
    box.getChildren().add(row("in", points, new Label("points"), new Label("   mesh"), mesh));
    box.getChildren().addAll(spread, reasons);
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

  private static HBox range(String name, ValueField from, ValueField to) {
    return row(name, from, new Label("to"), to);
  }

  /** The study as the fields say; null when one of them is wrong. */
  @Nullable StudyQuestion read(List<Problem> problems) {
    Swept swept = swept();
    List<LipProfile> lips = new ArrayList<>();
    if (swept == null) {
      lips.addAll(candidates.chosen());
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
    double atGap = gap.read(problems);
    List<Double> values =
        swept == Swept.SUCTION
            ? values(atSuction, suctionTo, problems)
            : swept == Swept.GROUND_SPEED
                ? values(atGround, groundTo, problems)
                : values(atGap, gapTo, problems);
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
        new StudyQuestion.Held(
            atGap,
            swept == Swept.SUCTION ? values.get(0) : atSuction,
            new GroundMotion(swept == Swept.GROUND_SPEED ? 0 : atGround, atSpanwise),
            Air.at(kelvin, Air.STANDARD_PRESSURE)),
        new StudyQuestion.Solving(mesh.getValue(), Closure.AUTO, spread.isSelected()));
  }

  private List<Double> values(double from, ValueField toField, List<Problem> problems) {
    double to = toField.read(problems);
    int count = (int) points.read(problems);
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

  /** Judges a number of points. */
  private static String count(double number) {
    return number == Math.rint(number) && number >= 1 && number <= MOST_POINTS
        ? ""
        : "a range takes 1 to " + MOST_POINTS + " points";
  }

  private static ValueField field(String id, String place, Measure measure, double first) {
    return new ValueField(id, place, place, measure).showing(first);
  }

  private List<ValueField> all() {
    return List.of(gap, gapTo, suction, suctionTo, ground, groundTo, spanwise, temperature, points);
  }
}
