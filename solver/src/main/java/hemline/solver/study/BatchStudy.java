package hemline.solver.study;

import hemline.shared.result.LeakOrigin;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/**
 * Solves many sections for one table, each once and never twice: what the store has is taken from
 * there, and each result is kept as soon as it is there. A batch that was stopped, in whatever way,
 * goes on where it was.
 *
 * <p>Every section starts cold, so that a result does not depend on what else was asked.
 */
public final class BatchStudy {
  private final BatchRunner runner;
  private final ResultStore<SectionResult> store;

  public BatchStudy(BatchRunner runner, ResultStore<SectionResult> store) {
    this.runner = runner;
    this.store = store;
  }

  /** Rough measure of the effort that a section takes, for the order and the parts of a batch. */
  public static double cost(SealSection section) {
    return Question.work(section);
  }

  /** Numbers of the sections, the one that takes the most effort first. */
  public static List<Integer> longestFirst(List<SealSection> sections) {
    return IntStream.range(0, sections.size())
        .boxed()
        .sorted(Comparator.comparingDouble((Integer i) -> -cost(sections.get(i))))
        .toList();
  }

  /** Solves what is not kept; a section asked twice is solved once. */
  public BatchAnswer run(
      List<SealSection> sections,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    List<LeakOrigin> asked = sections.stream().map(s -> LeakKey.of(s, options)).toList();
    Map<LeakOrigin, SectionResult> known = new ConcurrentHashMap<>();
    Map<LeakOrigin, SealSection> open = new LinkedHashMap<>();
    for (int i = 0; i < asked.size(); i++) {
      LeakOrigin origin = asked.get(i);
      if (!known.containsKey(origin) && !open.containsKey(origin)) {
        SectionResult kept = store.find(origin);
        if (kept == null) {
          open.put(origin, sections.get(i));
        } else {
          known.put(origin, kept);
        }
      }
    }
    int found = known.size();
    if (!open.isEmpty()) {
      List<LeakOrigin> keys = List.copyOf(open.keySet());
      runner.solve(
          List.copyOf(open.values()),
          options,
          cancel,
          progress,
          (i, result) -> {
            store.keep(keys.get(i), result);
            known.put(keys.get(i), result);
          });
    }
    List<SectionResult> results = new ArrayList<>();
    for (int i = 0; i < asked.size(); i++) {
      SectionResult result = known.get(asked.get(i));
      if (result != null) {
        // the name of the lip that asks: its outline may have been solved under another
        results.add(result.named(sections.get(i).profile().name()));
      }
    }
    return new BatchAnswer(results, results.size() == asked.size(), found, known.size() - found);
  }
}
