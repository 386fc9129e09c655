package hemline.viewer.project;

import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Solves only the sections that a store does not have, and keeps those that were solved to their
 * end.
 *
 * <p>An answer depends on the request alone, the flows to start from among it; only the same
 * request finds it again, so a kept answer has the bits of a fresh one.
 */
final class KeptFamily implements SectionFamily {
  private final SectionFamily family;
  private final SectionStore store;
  private final boolean fields;

  /**
   * Names of the sections whose flows others may start from, by the flow itself; forgotten with it.
   */
  private final Map<FlowState, String> names = new WeakHashMap<>();

  /**
   * Remembers answers of a family.
   *
   * @param family solves what is not kept
   * @param fields true to keep the finest flow too and to solve again where it is not kept
   */
  KeptFamily(SectionFamily family, SectionStore store, boolean fields) {
    this.family = family;
    this.store = store;
    this.fields = fields;
  }

  @Override
  public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
    List<String> starts = names(request.before());
    if (starts == null) {
      return family.solve(request, cancel, progress);
    }
    GridFamily answer = store.find(request, starts, fields);
    if (answer == null) {
      answer = family.solve(request, cancel, progress);
      if (!cancel.isCancelled() && !answer.cancelled()) {
        store.keep(request, starts, answer, fields);
      }
    }
    if (answer.start() != null) {
      synchronized (names) {
        names.put(answer.start().state(), store.name(request, starts));
      }
    }
    return answer;
  }

  /** Names of flows to start from; null when one of them was not solved here. */
  private @Nullable List<String> names(List<SolvedSection> before) {
    List<String> found = new ArrayList<>();
    synchronized (names) {
      for (SolvedSection start : before) {
        String name = names.get(start.state());
        if (name == null) {
          return null;
        }
        found.add(start.compared() ? name + " compared" : name);
      }
    }
    return found;
  }
}
