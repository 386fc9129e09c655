package hemline.viewer.app;

import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.Palette;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.model.Setting;
import hemline.viewer.model.Workbench;
import hemline.viewer.project.UserChoices;
import hemline.viewer.screen.BenchScreen;
import hemline.viewer.screen.GuideScreen;
import hemline.viewer.screen.NoticeStrip;
import hemline.viewer.screen.Screen;
import hemline.viewer.screen.ShownUnit;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javafx.application.Platform;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.Toggle;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;

/** Lays out the window: menus and pages above, the chosen page below. */
public final class HemlineWindow {
  private final Workbench bench;
  private final Examples examples;
  private final BenchScreen benchScreen;
  private final List<Screen> screens;
  private final BorderPane root = new BorderPane();
  private final DrawingMenu drawings;
  private final NoticeStrip strip = new NoticeStrip();
  private final @Nullable ProjectPages pages;
  private final Set<Screen> made = new HashSet<>();
  private final ToggleGroup group = new ToggleGroup();
  private final ObjectProperty<Screen> front;
  private boolean dark;

  /** A window with the bench alone. */
  public HemlineWindow(Workbench bench, Examples examples) {
    this(bench, examples, null, null);
  }

  /** A window with the bench alone that asks for files in its own way. */
  HemlineWindow(Workbench bench, Examples examples, FileAsk ask) {
    this(bench, examples, null, ask);
  }

  /** A window on a project. */
  public HemlineWindow(Project project, Examples examples, FileAsk ask) {
    this(project.bench(), examples, project, ask);
  }

  private HemlineWindow(
      Workbench bench, Examples examples, @Nullable Project project, @Nullable FileAsk ask) {
    this.bench = bench;
    this.examples = examples;
    this.benchScreen = new BenchScreen(bench);
    this.front = new SimpleObjectProperty<>(benchScreen);
    FileAsk dialogs = ask == null ? new ChooserAsk(this::owner) : ask;
    this.drawings =
        new DrawingMenu(
            bench,
            benchScreen,
            strip,
            dialogs,
            () -> project == null ? Path.of("") : project.folder().path());
    this.pages =
        project == null || ask == null
            ? null
            : new ProjectPages(
                project,
                benchScreen,
                strip,
                ask,
                (lip, setting) ->
                    project.shelf().drawing(lip, drawing -> showFlow(drawing, setting)));
    if (pages != null) {
      drawings.openLipFilesBy(pages.files()::openGuarded);
    }
    List<Screen> all = new ArrayList<>(List.of(benchScreen));
    if (pages != null) {
      all.addAll(pages.screens());
    }
    this.screens = List.copyOf(all);
  }

  private void showFlow(LipDrawing lip, Setting setting) {
    group.getToggles().get(0).setSelected(true);
    benchScreen.run(lip, setting);
  }

  private @Nullable Window owner() {
    return root.getScene() == null ? null : root.getScene().getWindow();
  }

  /** Pages of the project; null for a window with the bench alone. */
  public @Nullable ProjectPages pages() {
    return pages;
  }

  /** Makes the whole content. */
  public Parent createContent() {
    root.getStyleClass().add("window");
    root.getStylesheets()
        .add(
            Objects.requireNonNull(HemlineWindow.class.getResource("window.css")).toExternalForm());
    StackPane pages = new StackPane();
    HBox tabs = new HBox(2);
    tabs.setAlignment(Pos.CENTER_LEFT);
    for (Screen screen : screens) {
      ToggleButton tab = new ToggleButton(screen.title());
      tab.setId("tab-" + screen.title().toLowerCase(java.util.Locale.ROOT));
      tab.getStyleClass().add("page-tab");
      tab.setToggleGroup(group);
      tab.setOnAction(e -> tab.setSelected(true));
      tab.selectedProperty()
          .subscribe(
              on -> {
                if (on) {
                  show(screen, tab, pages);
                }
              });
      tabs.getChildren().add(tab);
    }
    group.getToggles().get(0).setSelected(true);
    MenuBar menus = menus();
    Node look = benchScreen.lookBar();
    // it belongs to the bench alone
    look.visibleProperty().bind(group.getToggles().get(0).selectedProperty());
    look.managedProperty().bind(look.visibleProperty());
    // where the window is narrow the look goes below; pages stay where they are
    FlowPane top = new FlowPane(16, 0, menus);
    if (screens.size() > 1) {
      top.getChildren().add(tabs);
    }
    top.getChildren().add(look);
    top.getStyleClass().add("top-bar");
    root.setTop(new VBox(top, strip));
    root.setCenter(pages);
    return root;
  }

  /** Brings a page to the front; it is made when it comes there first. */
  private void show(Screen screen, ToggleButton tab, StackPane stack) {
    if (made.add(screen)) {
      Node page = screen.createContent();
      page.visibleProperty().bind(tab.selectedProperty());
      stack.getChildren().add(page);
    }
    front.set(screen);
    screen.shown();
  }

  /** Scene of a usual size. */
  public Scene createScene() {
    return new Scene(createContent(), 1280, 800);
  }

  /** Puts a lip file or a drawing on the bench, as if it were dropped on the window. */
  public void bringIn(Path file) {
    drawings.bringIn(file);
  }

  public BenchScreen benchScreen() {
    return benchScreen;
  }

  /** Light or dark. */
  public void setDark(boolean on) {
    dark = on;
    root.getStyleClass().remove("dark");
    if (on) {
      root.getStyleClass().add("dark");
    }
    benchScreen.board().palette().set(on ? Palette.DARK : Palette.LIGHT);
    screens.forEach(screen -> screen.setDark(on));
  }

  /**
   * Remembers what the user chooses here for all projects.
   *
   * @param novice true for a user who has not done the first steps
   */
  void remember(UserChoices choices, boolean novice) {
    ShownUnit.property()
        .subscribe((before, now) -> remember(choices, UserChoices.UNITS, now.name()));
    if (novice) {
      benchScreen.teach(() -> remember(choices, UserChoices.STEPS, "done"));
    }
  }

  private static void remember(UserChoices choices, String name, String value) {
    Reading.beside(
        () -> {
          choices.put(name, value);
          return value;
        },
        done -> {});
  }

  private Menu help() {
    Menu help = new Menu("_Help");
    help.setId("menu-help");
    help.getItems().add(BenchMenus.item("First steps", null, () -> benchScreen.teach(() -> {})));
    if (pages != null) {
      for (String part : List.of(GuideScreen.STEPS, GuideScreen.KEYS, GuideScreen.FILES)) {
        KeyCombination key =
            part.equals(GuideScreen.KEYS) ? new KeyCodeCombination(KeyCode.F1) : null;
        help.getItems().add(BenchMenus.item(part, key, () -> guide(pages.guide(), part)));
      }
    }
    return help;
  }

  private void guide(GuideScreen guide, String part) {
    Toggle last = group.getToggles().get(screens.size() - 1);
    last.setSelected(true);
    Platform.runLater(() -> guide.go(part));
  }

  private static MenuItem unit(LengthUnit unit) {
    RadioMenuItem item =
        new RadioMenuItem("Lengths in " + (unit == LengthUnit.MM ? "millimetres" : "inches"));
    item.setId("units-" + unit.symbol());
    item.setOnAction(e -> ShownUnit.use(unit));
    item.setSelected(ShownUnit.property().get() == unit);
    ShownUnit.property().subscribe((before, now) -> item.setSelected(now == unit));
    return item;
  }

  private MenuBar menus() {
    List<Menu> menus = new ArrayList<>(new BenchMenus(bench, benchScreen, examples, front).menus());
    drawings.acceptDrops(root);
    menus.add(1, drawings.menu());
    if (pages != null) {
      menus.add(0, pages.file());
    }
    Menu look =
        new Menu(
            "_View",
            null,
            BenchMenus.item("Whole lip", null, () -> benchScreen.board().fit()),
            BenchMenus.item("Light or dark", BenchMenus.shortcut(KeyCode.D), () -> setDark(!dark)));
    look.getItems().addAll(new SeparatorMenuItem(), unit(LengthUnit.MM), unit(LengthUnit.INCH));
    if (screens.size() > 1) {
      look.getItems().add(new SeparatorMenuItem());
      for (int k = 0; k < screens.size(); k++) {
        Toggle tab = group.getToggles().get(k);
        look.getItems()
            .add(
                BenchMenus.item(
                    screens.get(k).title(),
                    BenchMenus.shortcut(KeyCode.valueOf("DIGIT" + (k + 1))),
                    () -> tab.setSelected(true)));
      }
    }
    menus.add(look);
    menus.add(help());
    return new MenuBar(menus.toArray(Menu[]::new));
  }
}
