package hemline.viewer.screen;

import hemline.shared.fluid.Air;
import hemline.shared.geometry.Box;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.SearchLimits;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.LeakGoal;
import hemline.solver.improve.LipFamily;
import hemline.solver.improve.SearchSpace;
import hemline.solver.improve.ShapeLimits;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.GroundSpeeds;
import hemline.solver.study.RunOptions;
import hemline.viewer.model.ImproveDesk.Question;
import hemline.viewer.model.Setting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Asks for a search: which lip to better, what may change, what can be built, how long. */
final class ImproveForm {
  private static final String CORNERS = "";
  private static final Map<String, String> AMONG =
      Map.of(CORNERS, "its corners moved", "flat", "flat lips", "nose", "noses", "hook", "hooks");
  private static final int MOST_EVALUATIONS = 2000;
  private static final int MOST_GAPS = 12;
  private static final long SEED = 1;

  private final VBox box = new VBox(7);
  private final VBox change = new VBox(7);
  private final ComboBox<LipProfile> start = new ComboBox<>();
  private final ComboBox<String> family = new ComboBox<>();
  private final CheckBox symmetric = new CheckBox("alike from both sides");
  private final ValueField number = count("improve-number", "teeth or pockets", 12, 3);
  private final ValueField reach = length("improve-reach", "each by", SearchSpace.USUAL_REACH);
  private final ValueField width = length("improve-width", "widest", 8e-3);
  private final ValueField height = length("improve-height", "highest", 10e-3);
  private final ValueField wall = length("improve-wall", "least wall", ShapeLimits.USUAL_WALL);
  private final ValueField slot = length("improve-slot", "least slot", ShapeLimits.USUAL_WALL);
  private final ValueField gap = field("improve-gap", "gap", Measure.GAP, 2e-3);
  private final ValueField gapTo = field("improve-gap-to", "last gap", Measure.GAP, 4e-3);
  private final ValueField gaps = count("improve-gaps", "gaps", MOST_GAPS, 1);
  private final ValueField suction = field("improve-suction", "suction", Measure.SUCTION, 600);
  private final ValueField ground = field("improve-ground", "ground speed", Measure.SPEED, 0);
  private final ValueField evaluations =
      count("improve-evaluations", "lips to try", MOST_EVALUATIONS, 60);
  private final ValueField minutes = count("improve-minutes", "minutes", 1440, 10);

  ImproveForm() {
    start.setId("improve-start-lip");
    start.setMaxWidth(Double.MAX_VALUE);
    start.setConverter(Controls.names(LipProfile::name));
    start.valueProperty().subscribe(this::measured);
    List<String> names = new ArrayList<>(List.of(CORNERS));
    Arrays.stream(LipFamily.values()).map(LipFamily::key).forEach(names::add);
    family.setId("improve-family");
    family.setItems(FXCollections.observableArrayList(names));
    family.setConverter(Controls.names(name -> AMONG.getOrDefault(name, name)));
    family.setValue(CORNERS);
    family.valueProperty().subscribe(v -> layOutChange());
    symmetric.setId("improve-symmetric");
    // one gap has no last one
    gapTo.disableProperty().bind(gaps.textProperty().map(n -> n.strip().equals("1")));
    layOut();
  }

  private static ValueField length(String id, String place, double first) {
    return field(id, place, Measure.EXTENT, first);
  }

  private static ValueField count(String id, String place, int most, int first) {
    return field(
        id,
        place,
        Measure.number(
            4,
            v ->
                v >= 1 && v <= most && v == Math.rint(v)
                    ? ""
                    : "a whole number from 1 to " + most + " is needed"),
        first);
  }

  private static ValueField field(String id, String place, Measure measure, double first) {
    ValueField field = new ValueField(id, place, place, measure).showing(first);
    field.setPrefColumnCount(5);
    return field;
  }

  VBox content() {
    return box;
  }

  /** Begins with the conditions of the bench. */
  void begin(Setting setting) {
    gap.set(setting.gap());
    suction.set(setting.suction());
    ground.set(setting.groundSpeed());
  }

  /** Offers other lips; a choice that is still there stays. */
  void offer(List<LipProfile> lips) {
    LipProfile before = start.getValue();
    start.getItems().setAll(lips);
    start.setValue(
        lips.stream()
            .filter(l -> before != null && l.name().equals(before.name()))
            .findFirst()
            .orElse(lips.isEmpty() ? null : lips.get(0)));
  }

  /** Lip to be better than; null for none. */
  @Nullable LipProfile start() {
    return start.getValue();
  }

  /** What can be built begins with the outline of the lip. */
  private void measured(@Nullable LipProfile lip) {
    if (lip != null) {
      Box around = Box.around(lip.bodies());
      width.set(around.width());
      height.set(around.top());
    }
  }

  private void layOut() {
    box.getChildren()
        .setAll(
            heading("Better than"),
            start,
            heading("What may change"),
            Controls.row(6, new Label("look among"), family),
            change,
            heading("What can be built"),
            pair(width, height),
            pair(wall, slot),
            heading("Conditions"),
            Controls.row(6, new Label("gaps"), gap, new Label("to"), gapTo),
            Controls.row(6, new Label("number of gaps"), gaps),
            suction.line(),
            Controls.row(6, new Label("ground speed to the plenum"), ground),
            heading("How long"),
            pair(evaluations, minutes));
    all().forEach(f -> box.getChildren().add(f.reason()));
    layOutChange();
  }

  private void layOutChange() {
    boolean corners = CORNERS.equals(family.getValue());
    boolean counted = List.of("teeth", "pockets").contains(family.getValue());
    change.getChildren().clear();
    if (corners) {
      change.getChildren().add(reach.line());
    } else if (counted) {
      change.getChildren().add(number.line());
    }
    change.getChildren().add(symmetric);
  }

  private static Node pair(ValueField one, ValueField other) {
    return Controls.row(12, one.line(), other.line());
  }

  private static Label heading(String text) {
    return Controls.text(text, "page-heading");
  }

  private List<ValueField> all() {
    return List.of(
        number,
        reach,
        width,
        height,
        wall,
        slot,
        gap,
        gapTo,
        gaps,
        suction,
        ground,
        evaluations,
        minutes);
  }

  /**
   * The search as the fields say; null when one of them is wrong.
   *
   * @param lip the lip to be better than, resolved
   * @param drawing the same as drawn
   */
  @Nullable Question read(LipProfile lip, LipDrawing drawing, int threads, List<Problem> problems) {
    all().forEach(f -> f.read(problems));
    List<Double> over = new ArrayList<>();
    int n = (int) gaps.value();
    for (int k = 0; k < n; k++) {
      over.add(n == 1 ? gap.value() : gap.value() + (gapTo.value() - gap.value()) * k / (n - 1));
    }
    if (n > 1 && !(gapTo.value() > gap.value())) {
      gapTo.fault("must be above the first gap", problems);
    }
    if (!problems.isEmpty()) {
      return null;
    }
    boolean corners = CORNERS.equals(family.getValue());
    SearchLimits said =
        new SearchLimits(
            new SearchLimits.Sizes(width.value(), height.value(), wall.value(), slot.value()),
            new SearchLimits.Family(
                corners ? null : family.getValue(), (int) number.value(), Map.of()),
            new SearchLimits.Corners(null, reach.value(), symmetric.isSelected()));
    SearchSpace space = SearchSpace.of(said, drawing, lip, problems);
    if (space == null) {
      return null;
    }
    LeakGoal goal =
        new LeakGoal(
            GapDistribution.even(over),
            GroundSpeeds.of(ground.value()),
            new SealSection(
                lip,
                over.get(0),
                suction.value(),
                new GroundMotion(ground.value(), 0),
                Air.STANDARD,
                List.of()));
    return new Question(
        new ImproveStudy.Asked(
            lip, space.space(), space.limits(), goal, Math.max(2, (int) evaluations.value()), SEED),
        new RunOptions(MeshLevel.MEDIUM, Closure.AUTO, false, threads),
        minutes.value());
  }
}
