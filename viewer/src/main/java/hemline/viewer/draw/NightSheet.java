package hemline.viewer.draw;

import hemline.viewer.picture.OkLab;
import hemline.viewer.picture.Sheet;
import java.awt.Shape;

/** Paints a picture meant for white paper light on dark: lightness is turned over, hues stay. */
public final class NightSheet implements Sheet {
  private static final double DARKEST = 0.27;
  private static final double LIGHTEST = 0.95;

  private final Sheet sheet;

  public NightSheet(Sheet sheet) {
    this.sheet = sheet;
  }

  /** The colour that stands for one of a light picture, 0xRRGGBB. */
  public static int night(int rgb) {
    OkLab day = OkLab.of(rgb);
    double light = Math.min(LIGHTEST, DARKEST + 0.93 * (1 - day.light()));
    // dark grounds lean to the blue of the window
    return new OkLab(light, day.a(), day.b() - 0.018 * (1 - light)).rgb();
  }

  @Override
  public void fill(Shape shape, int rgb, double opacity) {
    sheet.fill(shape, night(rgb), opacity);
  }

  @Override
  public void stroke(Shape shape, Pen pen) {
    sheet.stroke(shape, new Pen(night(pen.rgb()), pen.opacity(), pen.width(), pen.dash()));
  }

  @Override
  public void text(double x, double y, String text, Lettering l) {
    sheet.text(
        x,
        y,
        text,
        new Lettering(
            l.size(), l.bold(), l.anchor(), night(l.rgb()), l.angle(), l.halo(), l.subscripts()));
  }

  @Override
  public void clip(Shape shape) {
    sheet.clip(shape);
  }

  @Override
  public void unclip() {
    sheet.unclip();
  }
}
