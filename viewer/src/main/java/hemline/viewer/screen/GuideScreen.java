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
import java.util.Objects;
import javafx.scene.Parent;
import javafx.scene.layout.BorderPane;

/** What the figures mean, what to mind, and what the program is made of. */
public final class GuideScreen implements Screen {
  @Override
  public String title() {
    return "Guide";
  }

  @Override
  public Parent createContent() {
    PageView view = new PageView("guide", "");
    view.show(page());
    ShownUnit.follow(view.content(), () -> view.show(page()));
    BorderPane pane = new BorderPane(view.content());
    pane.getStyleClass().add("page");
    pane.getStylesheets()
        .add(Objects.requireNonNull(GuideScreen.class.getResource("pages.css")).toExternalForm());
    return pane;
  }

  private static Page page() {
    Page page = new Page("Before you build").plain("Hemline computes air, not safety.");
    page.texts(Cautions.all(), Tone.CAUTION).heading("Figures of a section");
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
