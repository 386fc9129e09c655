package hemline.viewer.picture;

import hemline.solver.improve.Evaluation;
import hemline.solver.improve.Goal;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.LeakGoal;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Figure of each lip that a search tried over that of the start, and the best so far. */
public final class ImproveChart extends Picture {
  private static final double WIDTH = 860;
  private static final double HEIGHT = 420;
  private static final double LEFT = 84;
  private static final double TOP = 76;
  private static final double RIGHT = 30;

  /** Lips that leak far more squeeze the scale; it ends here. */
  private static final double MOST = 1.6;

  /** Evaluations that the axis has room for at least, so that it counts in whole ones. */
  private static final int FEWEST = 8;

  private final String title;
  private final List<Evaluation> usable;
  private final int count;
  private final String figure;

  private ImproveChart(String start, Goal goal, List<Evaluation> history) {
    super(WIDTH, HEIGHT);
    title = "Search from " + start;
    usable = history.stream().filter(e -> Double.isFinite(e.score())).toList();
    count = history.size();
    figure =
        goal instanceof LeakGoal
            ? "leak over that of the start, coarse grids"
            : "downforce of the start over that of the lip, coarse grids";
  }

  /** Chart of a search with at least one evaluation. */
  public static ImproveChart of(Improvement found) {
    return of(found.asked().start().name(), found.asked().goal(), found.history());
  }

  /** Chart of a search that may still run. */
  public static ImproveChart of(String start, Goal goal, List<Evaluation> history) {
    return new ImproveChart(start, goal, history);
  }

  @Override
  public void paint(Sheet sheet) {
    double low = 1;
    double high = 1;
    for (Evaluation e : usable) {
      low = Math.min(low, e.score());
      high = Math.max(high, Math.min(MOST, e.score()));
    }
    Rectangle2D box = new Rectangle2D.Double(LEFT, TOP, WIDTH - LEFT - RIGHT, HEIGHT - TOP - 70);
    ChartPanel panel =
        new ChartPanel(
            box,
            PlotScale.linear(0, Math.max(FEWEST, count)),
            PlotScale.linear(low - 0.02, high + 0.02));
    panel.paintFrame(sheet, title, "evaluation", figure, 8, 6);
    sheet.stroke(
        new Line2D.Double(box.getMinX(), panel.y(1), box.getMaxX(), panel.y(1)),
        new Pen(Ink.TEXT, 1, 1.1));
    List<double[]> best = new ArrayList<>();
    double least = Double.POSITIVE_INFINITY;
    for (Evaluation e : usable) {
      if (Double.isFinite(least)) {
        best.add(new double[] {e.number(), least});
      }
      if (e.doubt() == null) {
        least = Math.min(least, e.score());
      }
      if (Double.isFinite(least)) {
        best.add(new double[] {e.number(), least});
      }
    }
    panel.paintLine(sheet, best, new Pen(Ink.SERIES, 1, 1.8));
    for (Evaluation e : usable) {
      if (panel.up().holds(e.score())) {
        ChartPanel.dot(
            sheet, panel.x(e.number()), panel.y(e.score()), Ink.SERIES, e.doubt() == null);
      }
    }
    signs(
        sheet,
        LEFT,
        HEIGHT - 16,
        "line: best so far; hollow points: doubtful flow; points above " + MOST + " are left out");
  }
}
