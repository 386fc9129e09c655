package hemline.solver.rig;

import hemline.shared.fluid.Air;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Calibration;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import hemline.solver.study.LeakKey;
import hemline.solver.study.RunOptions;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Calibrations by lip, applied to solved leaks. Leak, discharge coefficient and effective gap
 * change; forces do not, because a rig for leaks does not measure them. Every result names the
 * calibration that it holds.
 */
public final class Calibrations {
  /** None at all. */
  public static final Calibrations NONE = new Calibrations(List.of());

  private final Map<String, Calibration> byOutline = new LinkedHashMap<>();

  public Calibrations(List<Calibration> all) {
    all.forEach(c -> byOutline.put(c.outline(), c));
  }

  /** Digest of a lip's resolved outline. */
  public static String outline(LipProfile lip) {
    SealSection any =
        new SealSection(lip, 1e-3, 1, new GroundMotion(0, 0), Air.STANDARD, List.of());
    return LeakKey.of(any, RunOptions.DEFAULT).lip();
  }

  /** The calibration of a lip; null for none. */
  public @Nullable Calibration of(LipProfile lip) {
    return byOutline.isEmpty() ? null : byOutline.get(outline(lip));
  }

  public boolean isEmpty() {
    return byOutline.isEmpty();
  }

  /** A result of a lip with its calibration, if it has one. */
  public SectionResult applied(SectionResult r, LipProfile lip) {
    Calibration c = of(lip);
    Estimate discharge = r.figures().get(Figure.DISCHARGE_COEFFICIENT);
    if (c == null || discharge == null || !(discharge.value() > 0)) {
      return r;
    }
    Estimate now = c.of(discharge, c.covers(r.conditions()));
    Map<Figure, Estimate> figures = new EnumMap<>(r.figures().scalars());
    figures.put(Figure.DISCHARGE_COEFFICIENT, now);
    for (Figure f : List.of(Figure.LEAK_FLOW, Figure.EFFECTIVE_GAP)) {
      Estimate before = r.figures().get(f);
      if (before != null) {
        figures.put(f, now.times(before.value() / discharge.value()));
      }
    }
    List<Notice> notices = new ArrayList<>(r.notices());
    notices.add(notice(c, r.conditions()));
    return new SectionResult(
        r.name(),
        r.conditions(),
        r.status(),
        r.regime(),
        r.closure(),
        new SectionFigures(
            figures,
            r.figures().stageShares(),
            r.figures().carryOver(),
            r.figures().trappedVortices()),
        notices,
        r.grids());
  }

  /**
   * A leak relative to a lip that is not calibrated, with the calibration of the lip above the
   * line.
   *
   * @param ratio null where there is none
   * @param r result of the lip without its calibration
   */
  public @Nullable Estimate appliedTo(@Nullable Estimate ratio, SectionResult r, LipProfile lip) {
    Calibration c = of(lip);
    Estimate discharge = r.figures().get(Figure.DISCHARGE_COEFFICIENT);
    if (c == null || ratio == null || discharge == null || !(discharge.value() > 0)) {
      return ratio;
    }
    Estimate now = c.of(discharge, true);
    Estimate scaled = ratio.times(now.value() / discharge.value());
    return scaled.with(scaled.value() * now.model() / now.value());
  }

  /**
   * Leak points with the calibrations of their lips; one that stands twice stays one object.
   *
   * @param sections of the points, in their order
   */
  public List<LeakPoint> applied(List<LeakPoint> points, List<SealSection> sections) {
    if (isEmpty()) {
      return points;
    }
    Map<LeakPoint, LeakPoint> done = new IdentityHashMap<>();
    Map<LipProfile, String> outlines = new IdentityHashMap<>();
    List<LeakPoint> all = new ArrayList<>();
    for (int k = 0; k < points.size(); k++) {
      LipProfile lip = sections.get(k).profile();
      String outline = outlines.computeIfAbsent(lip, Calibrations::outline);
      Calibration c = byOutline.get(outline);
      LeakPoint p = points.get(k);
      all.add(c == null || !p.usable() ? p : done.computeIfAbsent(p, one -> applied(one, c)));
    }
    return all;
  }

  private static LeakPoint applied(LeakPoint p, Calibration c) {
    double before = p.discharge().value();
    if (!(before > 0)) {
      return p;
    }
    Estimate now = c.of(p.discharge(), c.covers(p.conditions()));
    double times = now.value() / before;
    List<Notice> notices = new ArrayList<>(p.notices());
    notices.add(notice(c, p.conditions()));
    return new LeakPoint(
        p.lip(),
        p.conditions(),
        p.status(),
        p.regime(),
        now,
        p.lift(),
        notices,
        new LeakGrids(grids(p.grids().own(), times), grids(p.grids().otherModel(), times)));
  }

  private static List<GridLeak> grids(List<GridLeak> grids, double times) {
    return grids.stream()
        .map(
            g ->
                new GridLeak(
                    g.place(), g.cells(), g.discharge() * times, g.spread() * times, g.lift()))
        .toList();
  }

  private static Notice notice(Calibration c, SectionConditions at) {
    return c.notice(c.covers(at) ? NoticeKind.CALIBRATION_USED : NoticeKind.CALIBRATION_BEYOND);
  }
}
