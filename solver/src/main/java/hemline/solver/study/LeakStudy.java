package hemline.solver.study;

import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridLeak;
import hemline.shared.result.GridRun;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.LeakSeries;
import hemline.solver.refine.SectionFamily;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Solves many sections for their leak and lip force, each once and never twice: what the store has
 * is taken from there.
 *
 * <p>Every section starts cold, so that a point does not depend on what else was asked.
 */
public final class LeakStudy {
  private final SectionFamily family;
  private final ResultStore<LeakPoint> store;

  public LeakStudy(SectionFamily family, ResultStore<LeakPoint> store) {
    this.family = family;
    this.store = store;
  }

  /**
   * Points in the order of the sections, whose suction must not be 0. A section asked twice gets
   * the same object twice.
   *
   * <p>After {@link CancelToken#cancel} those not solved have the status CANCELLED; the others are
   * kept.
   */
  public List<LeakPoint> points(
      List<SealSection> sections,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    Map<String, LeakPoint> known = new LinkedHashMap<>();
    Map<String, SealSection> open = new LinkedHashMap<>();
    List<String> keys = new ArrayList<>();
    for (SealSection section : sections) {
      LeakOrigin asked = LeakKey.of(section, options);
      String key = asked.text();
      keys.add(key);
      LeakPoint found = known.containsKey(key) ? known.get(key) : store.find(asked);
      if (found == null) {
        open.put(key, section);
      } else {
        known.put(key, found);
      }
    }
    if (!open.isEmpty()) {
      List<Map.Entry<String, SealSection>> asked = List.copyOf(open.entrySet());
      List<Solved> answers =
          SolvePool.solve(
              asked.stream().map(entry -> Question.of(entry.getValue())).toList(),
              WarmOrder.cold(asked.size()),
              family,
              options,
              cancel,
              progress,
              false,
              (i, solved) -> {
                LeakPoint point = point(asked.get(i).getValue(), solved);
                if (point.status() != SolveStatus.CANCELLED) {
                  store.keep(LeakKey.of(asked.get(i).getValue(), options), point);
                }
              });
      for (int i = 0; i < asked.size(); i++) {
        known.put(asked.get(i).getKey(), point(asked.get(i).getValue(), answers.get(i)));
      }
    }
    Map<String, LeakPoint> named = new HashMap<>();
    List<LeakPoint> points = new ArrayList<>();
    for (int i = 0; i < keys.size(); i++) {
      LeakPoint point = known.get(keys.get(i));
      if (point == null) {
        throw new IllegalStateException("a section was neither known nor solved");
      }
      // the name of the lip that asks: a point may have been solved for one of the same outline
      String name = sections.get(i).profile().name();
      points.add(named.computeIfAbsent(keys.get(i) + name, k -> point.named(name)));
    }
    return points;
  }

  private static LeakPoint point(SealSection section, Solved solved) {
    SectionResult result = solved.answer().result();
    List<GridLeak> other =
        solved.leaks().keySet().stream()
            .filter(closure -> closure != solved.closure())
            .min(Comparator.comparing(closure -> closure != solved.closure().second()))
            .map(closure -> grids(section, solved, closure))
            .orElse(List.of());
    return LeakPoint.of(
            section,
            result.status(),
            result.regime(),
            result.figures().get(Figure.LEAK_FLOW),
            result.figures().scalars().getOrDefault(Figure.LIP_FORCE_Y, Estimate.exact(0)),
            result.notices())
        .byGrid(grids(section, solved, solved.closure()), other);
  }

  /** The leak on each usable grid under one flow model; the lift is that of the answer's model. */
  private static List<GridLeak> grids(SealSection section, Solved solved, Closure closure) {
    LeakSeries series = solved.leaks().get(closure);
    List<GridRun> runs = solved.answer().result().grids();
    double scale = LeakPoint.discharge(section);
    List<GridLeak> grids = new ArrayList<>();
    for (int k = 0; series != null && k < Math.min(series.places(), runs.size()); k++) {
      GridRun run = runs.get(k);
      double lift =
          run.figures().scalars().getOrDefault(Figure.LIP_FORCE_Y, 0.0) / section.suction();
      if (Double.isFinite(series.leak(k)) && Double.isFinite(lift)) {
        grids.add(
            new GridLeak(
                k, run.cells(), scale * series.leak(k), Math.abs(scale) * series.spread(k), lift));
      }
    }
    return grids;
  }
}
