package hemline.viewer.picture;

import hemline.validation.reference.ProfileReference;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.ProfileCurve;
import hemline.viewer.format.CheckWords;
import hemline.viewer.picture.Sheet.Lettering;
import hemline.viewer.picture.Sheet.Pen;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Plots of a check: a profile beside its reference, or errors by grid. */
public final class CheckPlot extends Picture {
  private static final double WIDTH = 430;
  private static final double HEIGHT = 330;
  private static final double LEFT = 66;
  private static final double RIGHT = 20;
  private static final double TOP = 48;
  private static final double PANEL = 210;
  private static final double LEGEND = 17;
  private static final int MOST_LINES = 5;

  /** Smaller errors are round-off and have no order. */
  private static final double ROUND_OFF = 1e-9;

  private static final int[] COLOURS = {
    Ink.SERIES, Ink.VORTEX, Ink.LIP_EDGE, Ink.THROUGH, Ink.QUIET
  };
  private static final double[][] DASHES = {{}, {7, 4}, {2, 4}, {10, 3, 2, 3}, {4, 4}};

  private final Consumer<Sheet> content;

  private CheckPlot(double height, Consumer<Sheet> content) {
    super(WIDTH, height);
    this.content = content;
  }

  @Override
  public void paint(Sheet sheet) {
    content.accept(sheet);
  }

  private static Rectangle2D box() {
    return new Rectangle2D.Double(LEFT, TOP, WIDTH - LEFT - RIGHT, PANEL);
  }

  /** A computed profile as a line, the published one as circles. */
  public static CheckPlot profile(ProfileCurve curve) {
    return new CheckPlot(HEIGHT, sheet -> paintProfile(sheet, curve));
  }

  private static void paintProfile(Sheet sheet, ProfileCurve curve) {
    List<double[]> computed = points(curve.computed(), curve.alongY());
    List<double[]> published = points(curve.reference().points(), curve.alongY());
    List<double[]> all = new ArrayList<>(computed);
    all.addAll(published);
    ChartPanel frame = new ChartPanel(box(), range(all, 0), range(all, 1));
    String unit = CheckWords.unit(curve.component());
    String value = unit.equals("1") ? curve.component() : curve.component() + ", " + unit;
    String place = curve.alongY() ? "y, m" : "x, m";
    frame.paintFrame(
        sheet,
        curve.reference().line(),
        curve.alongY() ? value : place,
        curve.alongY() ? place : value,
        6,
        5);
    frame.paintLine(sheet, computed, new Pen(Ink.SERIES, 1, 1.8));
    for (double[] p : published) {
      ChartPanel.dot(sheet, frame.x(p[0]), frame.y(p[1]), Ink.VORTEX, false);
    }
    double y = TOP + PANEL + 56;
    sheet.stroke(new Line2D.Double(LEFT, y, LEFT + 22, y), new Pen(Ink.SERIES, 1, 1.8));
    sheet.text(LEFT + 30, y + 4, "computed, finest grid", Lettering.of(11.5, Ink.TEXT));
    ChartPanel.dot(sheet, LEFT + 190, y, Ink.VORTEX, false);
    sheet.text(
        LEFT + 202,
        y + 4,
        TextWidth.fitted(curve.reference().source(), 11.5, WIDTH - LEFT - 206),
        Lettering.of(11.5, Ink.TEXT));
  }

  private static List<double[]> points(List<ProfileReference.Point> points, boolean alongY) {
    return points.stream()
        .map(
            p -> alongY ? new double[] {p.value(), p.place()} : new double[] {p.place(), p.value()})
        .toList();
  }

  private static PlotScale range(List<double[]> points, int axis) {
    double low = points.stream().mapToDouble(p -> p[axis]).min().orElse(0);
    double high = points.stream().mapToDouble(p -> p[axis]).max().orElse(1);
    return PlotScale.linear(low, high);
  }

  /** One line of a plot of errors: cell size over the finest, error over the scale in per cent. */
  private record ErrorLine(String name, List<double[]> points) {}

  /** True when there is an error on two grids or more to plot. */
  public static boolean hasErrors(CaseResult result) {
    return !lines(result).isEmpty();
  }

  /** Distance to the reference on each grid, with the slopes of first and second order. */
  public static CheckPlot errors(CaseResult result) {
    List<ErrorLine> lines = lines(result);
    return new CheckPlot(
        TOP + PANEL + 50 + LEGEND * (lines.size() + 1), sheet -> paintErrors(sheet, lines));
  }

  private static List<ErrorLine> lines(CaseResult result) {
    List<ErrorLine> lines = new ArrayList<>();
    for (CheckRow row : result.rows()) {
      boolean order = row.expected().quantity().startsWith("order of ");
      String name = row.expected().quantity().replaceFirst("^order of ", "");
      boolean known = lines.stream().anyMatch(line -> line.name().equals(name));
      if (row.grids().size() < 2 || known || lines.size() == MOST_LINES) {
        continue;
      }
      int finest = row.grids().get(row.grids().size() - 1).cells();
      double reference = order ? 0 : row.expected().reference().value();
      double scale = order ? 1 : row.expected().tolerance().scale();
      List<double[]> points = new ArrayList<>();
      for (var grid : row.grids()) {
        double error = Math.abs(grid.value() - reference) / scale;
        if (error > ROUND_OFF) {
          points.add(new double[] {Math.sqrt((double) finest / grid.cells()), 100 * error});
        }
      }
      if (points.size() >= 2) {
        lines.add(new ErrorLine(name, points));
      }
    }
    return lines;
  }

  private static void paintErrors(Sheet sheet, List<ErrorLine> lines) {
    double low = Double.MAX_VALUE;
    double high = 0;
    double coarsest = 1;
    for (ErrorLine line : lines) {
      for (double[] p : line.points()) {
        coarsest = Math.max(coarsest, p[0]);
        low = Math.min(low, p[1]);
        high = Math.max(high, p[1]);
      }
    }
    ChartPanel frame =
        new ChartPanel(
            box(),
            new PlotScale(0.93, 1.08 * coarsest, true),
            PlotScale.decades(0.8 * low, 1.2 * high));
    frame.paintFrame(
        sheet,
        "distance to the reference by grid",
        "cell size over that of the finest grid",
        "per cent of the scale of the tolerance",
        5,
        5);
    double middle = Math.sqrt(frame.up().low() * frame.up().high());
    for (int order = 1; order <= 2; order++) {
      List<double[]> guide = new ArrayList<>();
      for (double s : new double[] {1, coarsest}) {
        guide.add(new double[] {s, middle * Math.pow(s / Math.sqrt(coarsest), order)});
      }
      frame.paintLine(sheet, guide, new Pen(Ink.FAINT, 1, order));
    }
    double y = TOP + PANEL + 54;
    for (int k = 0; k < lines.size(); k++) {
      Pen pen = new Pen(COLOURS[k], 1, 1.7, DASHES[k]);
      frame.paintLine(sheet, lines.get(k).points(), pen);
      for (double[] p : lines.get(k).points()) {
        ChartPanel.dot(sheet, frame.x(p[0]), frame.y(p[1]), COLOURS[k], true);
      }
      sheet.stroke(new Line2D.Double(LEFT, y, LEFT + 30, y), pen);
      sheet.text(LEFT + 38, y + 4, lines.get(k).name(), Lettering.of(11.5, Ink.TEXT));
      y += LEGEND;
    }
    sheet.text(
        LEFT, y + 4, "faint: slopes of first (thin) and second order", Lettering.of(11, Ink.QUIET));
  }
}
