package hemline.viewer.picture;

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
        FanChart,
        CompareChart,
        BalanceChart {
  /** Pixels per sheet unit of a PNG, for sharp print. */
  private static final double PNG_SCALE = 2;

  /** Width, sheet units. */
  public abstract double width();

  /** Height, sheet units. */
  public abstract double height();

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
