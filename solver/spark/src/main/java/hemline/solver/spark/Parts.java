package hemline.solver.spark;

import hemline.shared.section.SealSection;
import hemline.solver.study.BatchStudy;
import java.util.ArrayList;
import java.util.List;

/**
 * Parts a batch by expected cost: the longest sections first, and so many together that no part is
 * expected to take more than twice its share of the whole, if it holds more than one section.
 */
final class Parts {
  /** Most parts: each costs the engine some ten milliseconds, and what it lost is solved again. */
  static final int MOST = 4000;

  /** So many parts keep the cores of a cluster busy; beyond them sections go {@link #TOGETHER}. */
  static final int ENOUGH = 400;

  /** Sections of a part on the average, unless there are too few or too many of them. */
  static final int TOGETHER = 5;

  private Parts() {}

  /** Numbers of the sections of each part. */
  static List<List<Integer>> of(List<SealSection> sections) {
    double whole = sections.stream().mapToDouble(BatchStudy::cost).sum();
    double share = whole / count(sections.size());
    boolean single = sections.size() <= ENOUGH;
    List<List<Integer>> parts = new ArrayList<>();
    List<Integer> part = new ArrayList<>();
    double cost = 0;
    for (int i : BatchStudy.longestFirst(sections)) {
      double more = BatchStudy.cost(sections.get(i));
      if (!part.isEmpty() && (single || cost + more > 2 * share)) {
        parts.add(part);
        part = new ArrayList<>();
        cost = 0;
      }
      part.add(i);
      cost += more;
    }
    parts.add(part);
    return parts;
  }

  private static int count(int sections) {
    return Math.min(Math.min(sections, MOST), Math.max(ENOUGH, sections / TOGETHER));
  }
}
