package hemline.validation.run;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.ProgressSum;
import hemline.solver.study.SolveThreads;
import hemline.validation.reference.CaseSetup;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
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
    double[] work = new double[cases.size()];
    Arrays.fill(work, 1);
    ProgressSum sum = new ProgressSum(work, progress);
    CaseResult[] results = new CaseResult[work.length];
    AtomicInteger next = new AtomicInteger();
    SolveThreads.run(
        Math.max(1, Math.min(threads, work.length)),
        cancel,
        () -> {
          for (int i = next.getAndIncrement(); i < work.length; i = next.getAndIncrement()) {
            results[i] = one(cases.get(i), cancel, sum.of(i));
          }
        });
    return List.of(results);
  }

  private CaseResult one(ReferenceCase one, CancelToken cancel, ProgressListener progress) {
    if (cancel.isCancelled()) {
      return cancelled(one);
    }
    CaseResult result =
        runner.run(one, cancel, (share, what) -> progress.progress(share, one.name()));
    progress.progress(1, one.name());
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
}
