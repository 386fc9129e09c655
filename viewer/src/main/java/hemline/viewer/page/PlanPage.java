package hemline.viewer.page;

import hemline.solver.rig.PlannedPoint;
import hemline.viewer.format.CompareWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import java.util.ArrayList;
import java.util.List;

/** A plan for a test of two lips. */
public final class PlanPage {
  private PlanPage() {}

  /**
   * The page.
   *
   * @param rig whose instruments are used
   * @param repeats readings of each lip at each point
   * @param scatter of single readings as a share
   */
  public static Page of(
      String lip,
      String other,
      String rig,
      List<PlannedPoint> points,
      int repeats,
      double scatter) {
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "gap, " + LengthUnit.unit(),
            "suction, Pa",
            "leak ratio predicted",
            "measured within",
            "tells",
            "repeats needed"));
    for (PlannedPoint p : points) {
      table.add(
          List.of(
              LengthUnit.bare(p.gap(), 4),
              Digits.plain(p.suction(), 4),
              Digits.withBand(p.predicted(), 1),
              "\u00b1 " + Digits.plain(p.uncertainty(), 2),
              tells(p.tells()),
              p.repeats() == 0 ? "no number is enough" : Integer.toString(p.repeats())));
    }
    long told = points.stream().filter(p -> p.tells() != PlannedPoint.Tells.NO).count();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        told == 0
            ? "With these instruments no point tells "
                + lip
                + " from "
                + other
                + "; the gap set anew, the displays and scatter are too coarse."
            : told
                + " of "
                + points.size()
                + " points tell "
                + lip
                + " from "
                + other
                + " if the prediction holds.");
    sentences.add(
        "Both lips on one rig with the same instruments, "
            + repeats
            + (repeats == 1 ? " reading" : " readings")
            + " of each at each point, single readings scattering by "
            + CompareWords.percent(scatter)
            + ". Half-widths at 95 %.");
    Page page =
        new Page("Plan: %s against %s with the instruments of %s".formatted(lip, other, rig));
    ComparePage.part(page, "Where a test tells two lips apart", table, sentences);
    return page.heading("At the rig").texts(CompareWords.CAUTIONS, Page.Tone.CAUTION);
  }

  private static String tells(PlannedPoint.Tells tells) {
    return switch (tells) {
      case YES -> "yes";
      case AS_PREDICTED -> "if as predicted";
      case NO -> "no";
    };
  }
}
