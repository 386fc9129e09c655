package hemline.viewer.page;

import hemline.shared.profile.LipDrawing;
import hemline.shared.result.Estimate;
import hemline.solver.improve.CornerEffect;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.CornerPicture;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What moving the corners of a lip does, as a part of its page. */
public final class CornerBlocks {
  private CornerBlocks() {}

  /** Adds the part; nothing without effects. */
  public static Page add(Page page, LipDrawing lip, List<CornerEffect> effects) {
    if (effects.isEmpty()) {
      return page;
    }
    page.everywhere().heading("What 0.1 mm at a corner does to the leak");
    PageTable table =
        PageTable.of(
            "corner",
            "x, " + LengthUnit.unit(),
            "y, " + LengthUnit.unit(),
            "towards the plenum, %",
            "upwards, %");
    for (CornerEffect e : effects) {
      table.row(
          List.of(
              Integer.toString(e.corner()),
              LengthUnit.bare(e.x(), 4),
              LengthUnit.bare(e.y(), 4),
              percent(e.dx()),
              percent(e.dy())),
          false);
    }
    page.table(table);
    page.text(
        "By differences on coarse grids, where errors that both moved lips share cancel; the gap"
            + " stays that below the lowest point, so lowest corners only move up.",
        Tone.QUIET);
    return page.plot(
        () -> CornerPicture.of(lip, effects), "arrows at the corners: the way to less leak");
  }

  private static String percent(@Nullable Estimate e) {
    return e == null ? "-" : Digits.withBand(e.times(100), 1);
  }
}
