package hemline.viewer.model;

import hemline.shared.section.SealSection;
import hemline.solver.field.FlowState;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import hemline.viewer.project.SectionStore;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the lip sections of one study that were solved to their end, so that a study that was
 * stopped, or broken off by a crash, goes on where it was instead of from its beginning.
 *
 * <p>An answer depends on the arguments alone, the flows to start from among them; only the same
 * arguments find it again, so a study that goes on has the bits of one that was never stopped.
 */
final class RememberingFamily implements SectionFamily {
  private final SectionFamily family;
  private final SectionStore store;

  /** Names of the sections whose flows others may start from. */
  private final Map<FlowState, String> names = new IdentityHashMap<>();

  /**
   * Remembers answers of a family.
   *
   * @param family solves what is not kept
   */
  RememberingFamily(SectionFamily family, SectionStore store) {
    this.family = family;
    this.store = store;
  }

  @Override
  public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
    List<String> starts = names(request.before());
    if (starts == null || !(request.section() instanceof SealSection section)) {
      return family.solve(request, cancel, progress);
    }
    String key = store.key(section, request.level(), request.grids(), request.closure(), starts);
    GridFamily answer = store.find(key, section, request.level());
    if (answer == null) {
      answer = family.solve(request, cancel, progress);
      if (!cancel.isCancelled() && !answer.cancelled()) {
        store.keep(key, answer);
      }
    }
    if (answer.start() != null) {
      synchronized (names) {
        names.put(answer.start().state(), key);
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
