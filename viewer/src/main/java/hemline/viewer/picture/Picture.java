package hemline.viewer.picture;

import hemline.viewer.picture.Sheet.Lettering;
import java.io.IOException;

/** A picture of fixed size that paints itself on any sheet. */
public abstract sealed class Picture
    permits SectionPicture,
        SweepChart,
        RankingChart,
        GapChart,
        CheckPlot,
        TrustChart,
        ConvergenceChart,
        MeshPicture,
        MachinePlan,
        CompareChart,
        ImproveChart,
        CornerPicture,
        BalanceChart {
  /** Pixels per sheet unit of a PNG, for sharp print. */
  private static final double PNG_SCALE = 2;

  private static final double MARGIN = 26;

  private final double width;
  private final double height;

  /**
   * A picture of a size, sheet units.
   *
   * @param width of the sheet
   * @param height of the sheet
   */
  Picture(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** Width, sheet units. */
  public final double width() {
    return width;
  }

  /** Height, sheet units. */
  public final double height() {
    return height;
  }

  /** What the picture is about and under which conditions, at its top. */
  final void heading(Sheet sheet, String title, String conditions) {
    String fitted = TextWidth.fitted(title, 22, width - 60);
    sheet.text(MARGIN, 38, fitted, Lettering.of(22, Ink.TEXT).heavy());
    sheet.text(MARGIN, 60, conditions, Lettering.of(13, Ink.TEXT));
  }

  /** An explanation of signs. */
  static void signs(Sheet sheet, double x, double y, String text) {
    sheet.text(x, y, text, Lettering.of(11.5, Ink.QUIET));
  }

  /** Paints the whole picture with its upper left corner at the origin of the sheet. */
  public abstract void paint(Sheet sheet);

  /** The picture as the bytes of a PNG file. */
  public final byte[] png() throws IOException {
    RasterSheet sheet = new RasterSheet(width(), height(), PNG_SCALE);
    paint(sheet);
    return sheet.png();
  }

  /** The picture as the text of an SVG file; the same picture gives the same text. */
  public final String svg() {
    SvgSheet sheet = new SvgSheet(width(), height());
    paint(sheet);
    return sheet.text();
  }
}
