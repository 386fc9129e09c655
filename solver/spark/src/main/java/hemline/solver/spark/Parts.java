package hemline.solver.spark;

import hemline.shared.section.SealSection;
import hemline.solver.study.BatchStudy;
import java.util.ArrayList;
import java.util.List;

/**
 * Parts a batch by expected cost: the longest sections first, and so many together that no part is
 * expected to take more than its share of the whole, if it holds more than one section.
 */
final class Parts {
  /** Most parts: each costs the engine some ten milliseconds, and what it lost is solved again. */
  static final int MOST = 4000;

  private Parts() {}

  /** Numbers of the sections of each part. */
  static List<List<Integer>> of(List<SealSection> sections) {
    double whole = sections.stream().mapToDouble(BatchStudy::cost).sum();
    double share = whole / Math.min(sections.size(), MOST);
    List<List<Integer>> parts = new ArrayList<>();
    List<Integer> part = new ArrayList<>();
    double cost = 0;
    for (int i : BatchStudy.longestFirst(sections)) {
      double more = BatchStudy.cost(sections.get(i));
      if (!part.isEmpty() && (sections.size() <= MOST || cost + more > 2 * share)) {
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
}
