package hemline.viewer.screen;

import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.section.SectionLimits;
import hemline.shared.units.Quantities;
import hemline.shared.units.QuantityKind;
import hemline.viewer.format.Digits;
import hemline.viewer.format.Wording;
import hemline.viewer.model.Setting;
import hemline.viewer.model.Workbench;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One sentence of conditions below the board, each number with a slider, and Run at its end. */
final class SettingBar {
  /** 0 \u00b0C, K. */
  private static final double ICE = 273.15;

  private final Workbench bench;
  private boolean updating;

  SettingBar(Workbench bench) {
    this.bench = bench;
  }

  /** Reads a quantity with its unit. */
  private interface Reader {
    double read(String place, String text) throws InputException;
  }

  Region content() {
    HBox bar = new HBox(18);
    bar.setAlignment(Pos.CENTER_LEFT);
    bar.getStyleClass().add("setting-bar");
    bar.getChildren()
        .addAll(
            quantity(
                "gap",
                "gap",
                within(Quantities::length, SectionLimits::gap),
                v -> Digits.plain(1000 * v, 4) + " mm",
                Setting::gap,
                (s, v) -> s.withGap(Math.max(5e-5, v)),
                0.2e-3,
                8e-3),
            quantity(
                "suction",
                "suction",
                within(Quantities::pressure, SectionLimits::suction),
                v -> Digits.plain(v, 4) + " Pa",
                Setting::suction,
                Setting::withSuction,
                0,
                3000),
            quantity(
                "ground",
                "ground",
                within(Quantities::speed, SectionLimits::speed),
                v -> Digits.plain(v, 3) + " m/s",
                Setting::groundSpeed,
                Setting::withGroundSpeed,
                -15,
                15),
            quantity(
                "spanwise",
                "along the seal",
                within(Quantities::speed, SectionLimits::speed),
                v -> Digits.plain(v, 3) + " m/s",
                Setting::spanwiseSpeed,
                Setting::withSpanwiseSpeed,
                -15,
                15),
            quantity(
                "temperature",
                "air",
                SettingBar::celsius,
                v -> Wording.temperature(v + ICE),
                s -> s.temperature() - ICE,
                (s, v) -> s.withTemperature(v + ICE),
                -20,
                50));
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    ProgressBar progress = new ProgressBar(0);
    progress.progressProperty().bind(bench.progress());
    progress.visibleProperty().bind(bench.running());
    progress.setPrefWidth(110);
    Button run = new Button("Run");
    run.setId("run");
    run.setDefaultButton(false);
    run.getStyleClass().add("run");
    run.setMinWidth(Region.USE_PREF_SIZE);
    run.setTooltip(new Tooltip("Solve this section on three grids (F5)"));
    bench.running().subscribe(on -> run.setText(on ? "Stop" : "Run"));
    run.setOnAction(
        e -> {
          if (bench.running().get()) {
            bench.stop();
          } else {
            bench.run();
          }
        });
    bar.getChildren().addAll(space, progress, run);
    return bar;
  }

  /**
   * Refuses what the command line refuses.
   *
   * @param right what would be right for a value out of range; empty for one within
   */
  private static Reader within(Reader reader, DoubleFunction<String> right) {
    return (place, text) -> {
      double value = reader.read(place, text);
      String wrong = right.apply(value);
      if (!wrong.isEmpty()) {
        throw new InputException("setting.range", place, wrong + "; \"" + text + "\" is outside");
      }
      return value;
    };
  }

  /** A temperature, degrees Celsius. */
  private static double celsius(String place, String text) throws InputException {
    double kelvin = Quantities.read(QuantityKind.TEMPERATURE, place, text);
    if (kelvin < Air.COLDEST || kelvin > Air.HOTTEST) {
      throw new InputException(
          "setting.temperature",
          place,
          "air is known here from -73degC to 227degC; \"" + text + "\" is outside");
    }
    return kelvin - ICE;
  }

  /** Answers a setting with another value. */
  private interface Changed {
    Setting of(Setting setting, double value);
  }

  private Region quantity(
      String id,
      String name,
      Reader reader,
      DoubleFunction<String> writer,
      ToDoubleFunction<Setting> value,
      Changed change,
      double low,
      double high) {
    Label label = new Label(name);
    TextField field = new TextField();
    field.setId(id);
    field.setPrefColumnCount(7);
    Slider slider = new Slider(low, high, value.applyAsDouble(bench.setting().get()));
    slider.setId(id + "-slider");
    slider.setBlockIncrement((high - low) / 100);
    slider.setPrefWidth(150);
    bench
        .setting()
        .subscribe(
            s -> {
              updating = true;
              field.setText(writer.apply(value.applyAsDouble(s)));
              field.getStyleClass().removeAll("bad");
              slider.setValue(value.applyAsDouble(s));
              updating = false;
            });
    slider
        .valueProperty()
        .subscribe(
            v -> {
              if (!updating) {
                double rounded = rounded(v.doubleValue(), (high - low) / 500);
                bench.set(change.of(bench.setting().get(), rounded));
              }
            });
    slider
        .valueChangingProperty()
        .subscribe(
            on -> {
              if (on) {
                bench.beginDrag();
              } else {
                bench.endDrag();
              }
            });
    field.setOnAction(
        e -> {
          try {
            bench.set(change.of(bench.setting().get(), reader.read(name, field.getText())));
            field.setText(writer.apply(value.applyAsDouble(bench.setting().get())));
            field.setTooltip(null);
            field.getStyleClass().removeAll("bad");
          } catch (InputException fault) {
            field.getStyleClass().add("bad");
            field.setTooltip(new Tooltip(fault.problems().get(0).text()));
          }
        });
    HBox line = new HBox(6, label, field);
    line.setAlignment(Pos.CENTER_LEFT);
    return new VBox(2, line, slider);
  }

  /** Rounded to one or two digits of a step. */
  private static double rounded(double value, double step) {
    double ten = Math.pow(10, Math.floor(Math.log10(step)));
    return Math.rint(value / ten) * ten;
  }
}
