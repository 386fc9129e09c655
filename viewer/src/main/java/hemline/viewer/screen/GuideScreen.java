package hemline.viewer.screen;

import hemline.shared.result.Figure;
import hemline.shared.result.MachineFigure;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.FigureHelp;
import hemline.viewer.format.FigureName;
import hemline.viewer.format.Libraries;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.format.Version;
import hemline.viewer.page.Page;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.page.PageTable;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import javafx.scene.Parent;
import javafx.scene.layout.BorderPane;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** What the figures mean, what to mind, and what the program is made of. */
public final class GuideScreen implements Screen {
  public static final String STEPS = "Three steps";
  public static final String KEYS = "Keys of the bench";
  public static final String FILES = "Files";

  private final PageView view = new PageView("guide", "");

  @Override
  public String title() {
    return "Guide";
  }

  @Override
  public Parent createContent() {
    view.show(page());
    ShownUnit.follow(view.content(), () -> view.show(page()));
    BorderPane pane = new BorderPane(view.content());
    pane.getStyleClass().add("page");
    pane.getStylesheets()
        .add(Objects.requireNonNull(GuideScreen.class.getResource("pages.css")).toExternalForm());
    return pane;
  }

  /** Brings a part of the guide to the top: one of the headings. */
  public void go(String heading) {
    view.go(heading);
  }

  /** A table of words that lies beside the program. */
  private static PageTable table(String name) {
    try (Reader in =
            new InputStreamReader(
                Objects.requireNonNull(GuideScreen.class.getResourceAsStream(name)),
                StandardCharsets.UTF_8);
        var records = CSVFormat.RFC4180.parse(in)) {
      List<CSVRecord> all = records.getRecords();
      PageTable table = PageTable.of(all.get(0).values());
      all.stream().skip(1).forEach(one -> table.row(one.values()));
      return table;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Page page() {
    Page page = new Page("Before you build").plain("Hemline computes air, not safety.");
    page.texts(Cautions.all(), Tone.CAUTION).heading(STEPS);
    page.plain(
        "1 Draw: drag the corners of a lip, type their places, or begin with a shape or a lip of"
            + " the menu Lips.");
    page.plain(
        "2 Run: set gap, suction and the ground's speed below the board and press Run. The leak"
            + " and its band stand on the right.");
    page.plain(
        "3 Compare: set the lip as B and change it; a ranking on the page Studies compares many"
            + " lips at many gaps; the page Machine tells what a leak means for a machine.");
    page.heading(KEYS).table(table("guide-keys.csv"));
    page.heading(FILES).table(table("guide-files.csv"));
    page.heading("Figures of a section");
    page.plain(
        "Each section is solved on three grids. The band beside a figure holds the numerical error"
            + " judged from them, what iteration left open and, where it applies, the spread"
            + " between flow models. Of two lips one counts as better only where the band of the"
            + " ratio of their leaks excludes 1.");
    for (Figure figure : Figure.values()) {
      FigureHelp help = FigureHelp.of(figure);
      page.text(FigureName.of(figure).strip(), Tone.FINDING);
      page.plain(help.definition() + " Unit: " + help.unit() + ".").quiet(help.judgement());
    }
    PageTable machine = PageTable.of("", "", "", "");
    for (MachineFigure f : MachineFigure.values()) {
      machine.row(f.title(), f.symbol(), TradeUnit.of(f).unit(), f.meaning());
    }
    page.heading("Figures of a machine").table(machine);
    page.heading("About Hemline " + Version.TEXT);
    page.plain(
        "A bench for the seal lips of machines that hold on by suction. Licence Apache-2.0."
            + " Demonstration lips and machines are invented. How far the figures can be trusted"
            + " is measured by the command check and told in the README.");
    PageTable libraries = PageTable.of("library", "version", "licence", "used for");
    for (Libraries.Library one : Libraries.all()) {
      libraries.row(one.name(), one.version(), one.licence(), one.use());
    }
    return page.heading("Libraries and their licences").table(libraries);
  }
}
