package hemline.validation.run;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import hemline.validation.reference.CaseSetup;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;

/** Runs cases on a fixed number of threads; answers do not depend on it. */
public final class CheckStudy {
  private final CaseRunner runner;

  /**
   * Prepares a check.
   *
   * @param family solves the sections
   */
  public CheckStudy(SectionFamily family) {
    runner = new CaseRunner(family);
  }

  /**
   * Runs cases and answers in their order; those not reached before a cancel say so. Cases that a
   * ratio compares are solved once, and also when they are not asked for.
   *
   * @param threads cases running at once, 1 or more
   */
  public List<CaseResult> run(
      List<ReferenceCase> cases, int threads, CancelToken cancel, ProgressListener progress) {
    Map<String, ReferenceCase> needed = new LinkedHashMap<>();
    for (ReferenceCase one : cases) {
      if (one.setup() instanceof CaseSetup.Ratio ratio) {
        needed.computeIfAbsent(ratio.of(), ReferenceCases::named);
        needed.computeIfAbsent(ratio.to(), ReferenceCases::named);
      } else {
        needed.put(one.name(), one);
      }
    }
    Map<String, CaseResult> solved = new HashMap<>();
    for (CaseResult result : solve(List.copyOf(needed.values()), threads, cancel, progress)) {
      solved.put(result.one().name(), result);
    }
    return cases.stream().map(one -> answer(one, solved)).toList();
  }

  private static CaseResult answer(ReferenceCase one, Map<String, CaseResult> solved) {
    if (!(one.setup() instanceof CaseSetup.Ratio ratio)) {
      return Objects.requireNonNull(solved.get(one.name()));
    }
    CaseResult upper = Objects.requireNonNull(solved.get(ratio.of()));
    CaseResult lower = Objects.requireNonNull(solved.get(ratio.to()));
    boolean stopped =
        upper.status() == SolveStatus.CANCELLED || lower.status() == SolveStatus.CANCELLED;
    return stopped ? cancelled(one) : CaseRatio.of(one, upper, lower);
  }

  private List<CaseResult> solve(
      List<ReferenceCase> cases, int threads, CancelToken cancel, ProgressListener progress) {
    int workers = Math.max(1, Math.min(threads, cases.size()));
    Progress sum = new Progress(cases.size(), progress);
    ExecutorService pool = Executors.newFixedThreadPool(workers, caseThreads());
    try {
      List<Future<CaseResult>> futures = new ArrayList<>();
      for (int i = 0; i < cases.size(); i++) {
        int index = i;
        futures.add(pool.submit(() -> one(cases.get(index), index, cancel, sum)));
      }
      List<CaseResult> results = new ArrayList<>();
      for (Future<CaseResult> future : futures) {
        results.add(await(future, cancel));
      }
      return results;
    } finally {
      pool.shutdown();
    }
  }

  private CaseResult one(ReferenceCase one, int index, CancelToken cancel, Progress sum) {
    if (cancel.isCancelled()) {
      return cancelled(one);
    }
    CaseResult result = runner.run(one, cancel, (share, what) -> sum.report(index, share, one));
    sum.report(index, 1, one);
    return cancel.isCancelled() && result.status() != SolveStatus.CONVERGED
        ? cancelled(one)
        : result;
  }

  private static CaseResult cancelled(ReferenceCase one) {
    return new CaseResult(
        one,
        SolveStatus.CANCELLED,
        "",
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(),
        List.of());
  }

  private static CaseResult await(Future<CaseResult> future, CancelToken cancel) {
    boolean interrupted = false;
    try {
      while (true) {
        try {
          return future.get();
        } catch (InterruptedException e) {
          interrupted = true;
          cancel.cancel();
        } catch (ExecutionException e) {
          cancel.cancel();
          throw new IllegalStateException("a case broke down", e.getCause());
        }
      }
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static ThreadFactory caseThreads() {
    AtomicInteger count = new AtomicInteger();
    return work -> {
      Thread thread = new Thread(work, "hemline-case-" + count.incrementAndGet());
      thread.setDaemon(true);
      return thread;
    };
  }

  /** Mean progress of all cases, never falling, one call at a time. */
  private static final class Progress {
    private final double[] done;
    private final ProgressListener listener;

    Progress(int cases, ProgressListener listener) {
      done = new double[cases];
      this.listener = listener;
    }

    synchronized void report(int index, double share, ReferenceCase one) {
      done[index] = Math.max(done[index], Math.min(1, share));
      double sum = 0;
      for (double d : done) {
        sum += d;
      }
      listener.progress(sum / done.length, one.name());
    }
  }
}
