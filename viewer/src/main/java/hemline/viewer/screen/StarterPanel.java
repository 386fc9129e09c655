package hemline.viewer.screen;

import hemline.shared.profile.Starter;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Workbench;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.function.Supplier;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Shapes to begin with, each measure with a slider. */
public final class StarterPanel {
  private final Workbench bench;
  private final VBox box = new VBox(6);
  private final Runnable fit;
  private Measures open = new Measures();

  /**
   * A slip that is hidden until a shape is asked for.
   *
   * @param fit shows the whole lip
   */
  StarterPanel(Workbench bench, Runnable fit) {
    this.bench = bench;
    this.fit = fit;
    box.getStyleClass().addAll("slip", "shape-slip");
    hide();
    bench.measures().subscribe(places -> open.follow(places));
  }

  Region content() {
    return box;
  }

  void hide() {
    box.setVisible(false);
    box.setManaged(false);
  }

  /** Sliders for a flat lip. */
  public void flat() {
    Measures m = new Measures();
    Supplier<Double> width = m.length("width", 1, 30, 8);
    Supplier<Double> height = m.length("height", 3, 30, 10);
    open("Flat lip", m, () -> new Starter.Flat(width.get(), height.get()));
  }

  /** Sliders for a row of teeth. */
  public void teeth() {
    Measures m = new Measures();
    Supplier<Double> number = m.count("teeth", 1, 8, 3);
    Supplier<Double> pitch = m.length("pitch", 1.5, 12, 5);
    Supplier<Double> depth = m.length("depth", 0.5, 12, 5);
    Supplier<Double> tip = m.length("tip width", 0.4, 4, 1);
    Supplier<Double> lean = m.length("lean to plenum", -4, 4, 0);
    Supplier<Double> height = m.length("height", 3, 30, 10);
    open(
        "Teeth",
        m,
        () ->
            new Starter.Teeth(
                number.get().intValue(),
                pitch.get(),
                Math.min(depth.get(), height.get() - 1e-3),
                Math.min(tip.get(), 0.6 * pitch.get()),
                lean.get(),
                height.get()));
  }

  /** Sliders for a row of pockets. */
  public void pockets() {
    Measures m = new Measures();
    Supplier<Double> number = m.count("pockets", 1, 6, 2);
    Supplier<Double> opening = m.length("opening", 1, 12, 4);
    Supplier<Double> depth = m.length("depth", 0.5, 10, 3);
    Supplier<Double> land = m.length("land", 0.8, 6, 2);
    Supplier<Double> height = m.length("height", 3, 30, 10);
    open(
        "Pockets",
        m,
        () ->
            new Starter.Pockets(
                number.get().intValue(),
                opening.get(),
                Math.min(depth.get(), height.get() - 1e-3),
                land.get(),
                height.get()));
  }

  private void open(String title, Measures measures, Supplier<Starter> starter) {
    Label head = new Label(title);
    head.getStyleClass().add("slip-title");
    Button done = new Button("Done");
    done.setId("starter-done");
    done.setOnAction(e -> hide());
    box.getChildren().setAll(head);
    box.getChildren().addAll(measures.rows);
    box.getChildren().add(done);
    box.setVisible(true);
    box.setManaged(true);
    bench.open(starter.get().drawing(), measures.places());
    measures.changed = () -> bench.shape(starter.get().drawing(), measures.places());
    open = measures;
    fit.run();
  }

  /** The sliders of one shape. */
  private final class Measures {
    private final List<Region> rows = new ArrayList<>();
    private final Map<String, Slider> sliders = new LinkedHashMap<>();
    private Runnable changed = () -> {};
    private boolean following;

    private Map<String, Double> places() {
      Map<String, Double> places = new LinkedHashMap<>();
      sliders.forEach((name, slider) -> places.put(name, slider.getValue()));
      return places;
    }

    /** Goes where undo leads. */
    private void follow(Map<String, Double> places) {
      following = true;
      if (places.keySet().equals(sliders.keySet())) {
        sliders.forEach(
            (name, slider) -> slider.setValue(places.getOrDefault(name, slider.getValue())));
      }
      following = false;
    }

    private Supplier<Double> length(String name, double low, double high, double first) {
      Slider slider = slider(name, low, high, first, 0.1, mm -> LengthUnit.text(mm / 1000, 4));
      return () -> Math.rint(slider.getValue() * 10) / 1e4;
    }

    private Supplier<Double> count(String name, double low, double high, double first) {
      Slider slider = slider(name, low, high, first, 1, v -> Digits.plain(v, 4));
      return () -> Math.rint(slider.getValue());
    }

    private Slider slider(
        String title,
        double low,
        double high,
        double first,
        double step,
        DoubleFunction<String> writer) {
      Label label = new Label();
      Slider slider = new Slider(low, high, first);
      slider.setId("starter-" + title.replace(' ', '-'));
      slider.setBlockIncrement(step);
      slider.setAccessibleText(title);
      Runnable name =
          () ->
              label.setText(
                  title + "  " + writer.apply(Math.rint(slider.getValue() / step) * step));
      ShownUnit.follow(slider, name);
      slider
          .valueProperty()
          .subscribe(
              v -> {
                name.run();
                if (!following) {
                  changed.run();
                }
              });
      slider.valueChangingProperty().subscribe(bench::drag);
      sliders.put(title, slider);
      rows.add(new VBox(0, label, slider));
      return slider;
    }
  }
}
