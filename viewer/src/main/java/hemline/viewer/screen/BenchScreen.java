package hemline.viewer.screen;

import hemline.viewer.model.Selection;
import hemline.viewer.model.Workbench;
import javafx.scene.Parent;
import javafx.scene.layout.BorderPane;

/** Drawing board and result at once. */
public final class BenchScreen implements Screen {
  private final Workbench bench;
  private final Selection selection;
  private final SectionBoard board;

  public BenchScreen(Workbench bench) {
    this.bench = bench;
    this.selection = new Selection(bench);
    this.board = new SectionBoard(bench, selection);
    new BoardHands(board, bench, selection);
  }

  @Override
  public String title() {
    return "Bench";
  }

  /** The section itself. */
  public SectionBoard board() {
    return board;
  }

  public Selection selection() {
    return selection;
  }

  @Override
  public Parent createContent() {
    BorderPane pane = new BorderPane(board);
    pane.setRight(new FiguresSlip(bench).content());
    pane.setBottom(new SettingBar(bench).content());
    return pane;
  }
}
