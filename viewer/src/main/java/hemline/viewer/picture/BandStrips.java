package hemline.viewer.picture;

import hemline.shared.result.Estimate;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckRow;
import hemline.validation.run.CheckSummary;
import hemline.viewer.picture.Sheet.Anchor;
import hemline.viewer.picture.Sheet.Lettering;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * How much of their bands the true errors use: a strip of bars for each class of flows, because a
 * class with many rows would hide the others.
 *
 * @param box on the sheet
 * @param results of a check
 */
record BandStrips(Rectangle2D box, List<CaseResult> results) {
  private static final double BIN = 0.125;
  private static final int BINS = 12;

  /** Height of the strip above its bars, for the name of the class and the numbers. */
  private static final double NAME = 28;

  void paint(Sheet sheet) {
    List<CheckSummary.Coverage> strips = CheckSummary.of(results).coverage();
    PlotScale across = new PlotScale(0, BIN * BINS, false);
    Lettering quiet = Lettering.of(11, Ink.QUIET);
    sheet.text(
        box.getMinX(),
        box.getMinY() - 26,
        "bands that hold the reference",
        Lettering.of(13, Ink.TEXT).heavy());
    for (PlotScale.Tick t : across.ticks(6)) {
      sheet.text(x(across, t.value()), box.getMaxY() + 16, t.text(), quiet.at(Anchor.MIDDLE));
    }
    sheet.text(box.getMaxX(), box.getMaxY() + 33, "true error over our band", quiet.at(Anchor.END));
    sheet.text(
        box.getMinX(),
        box.getMaxY() + 54,
        "rows by share used; last bar: all beyond, or a band as wide as the value",
        quiet);
    double height = box.getHeight() / Math.max(1, strips.size());
    for (int k = 0; k < strips.size(); k++) {
      double top = box.getMinY() + k * height;
      strip(sheet, strips.get(k), across, top, top + height);
    }
  }

  private void strip(
      Sheet sheet, CheckSummary.Coverage strip, PlotScale across, double top, double foot) {
    int[] count = counts(strip);
    int most = 1;
    for (int c : count) {
      most = Math.max(most, c);
    }
    sheet.text(
        box.getMinX(),
        top + 11,
        strip.flow().key() + ": " + strip.covered() + " of " + strip.bands(),
        Lettering.of(11, Ink.TEXT));
    for (int k = 0; k < BINS; k++) {
      double left = x(across, k * BIN) + 1.5;
      double width = x(across, (k + 1) * BIN) - left - 1.5;
      double tall = (foot - top - NAME) * count[k] / most;
      sheet.fill(new Rectangle2D.Double(left, foot - 1, width, 1), Ink.FAINT, 1);
      if (count[k] > 0) {
        sheet.fill(
            new Rectangle2D.Double(left, foot - tall, width, tall),
            (k + 0.5) * BIN > 1 ? Ink.VORTEX : Ink.SERIES,
            1);
        sheet.text(
            left + 0.5 * width,
            foot - tall - 3,
            String.valueOf(count[k]),
            Lettering.of(10, Ink.TEXT).at(Anchor.MIDDLE));
      }
    }
  }

  private int[] counts(CheckSummary.Coverage strip) {
    int[] count = new int[BINS];
    for (CaseResult result : results) {
      if (result.one().flow() == strip.flow()) {
        for (CheckRow row : result.rows()) {
          if (row.calibrates()) {
            count[row.insideBand() ? (int) Math.min(BINS - 1, used(row) / BIN) : over(row)]++;
          }
        }
      }
    }
    return count;
  }

  private static int over(CheckRow row) {
    double used = used(row);
    return used > 1 ? (int) Math.min(BINS - 1, used / BIN) : BINS - 1;
  }

  /** Error over the band and the uncertainty of the reference; 1 is the end of the band. */
  private static double used(CheckRow row) {
    Estimate computed = row.computed();
    if (computed == null) {
      return Double.NaN;
    }
    double d = row.expected().reference().value();
    double side =
        d > computed.value()
            ? computed.high() - computed.value()
            : computed.value() - computed.low();
    double room =
        side + row.expected().reference().uncertainty() + 1e-9 * row.expected().tolerance().scale();
    return Math.abs(computed.value() - d) / room;
  }

  private double x(PlotScale across, double value) {
    return box.getMinX() + across.share(value) * box.getWidth();
  }
}
