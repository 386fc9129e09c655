package hemline.solver.study;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.refine.SectionFamily;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;

/**
 * Solves questions on a fixed number of threads, some of them from the flow of another.
 *
 * <p>Which question starts from which is fixed beforehand, so answers are the same bits for any
 * number of threads and any order of work. The longest are started first, to keep the threads busy
 * to the end. A cancelled study still answers every question: those not solved say so.
 */
final class SolvePool {
  private final List<Question> questions;
  private final int[] parent;
  private final SectionFamily family;
  private final RunOptions options;
  private final CancelToken cancel;
  private final ProgressSum sum;
  private final ExecutorService pool;
  private final List<CompletableFuture<Solved>> answers = new ArrayList<>();
  private final boolean flows;
  private final BiConsumer<Integer, Solved> taker;

  private SolvePool(
      List<Question> questions,
      int[] parent,
      SectionFamily family,
      RunOptions options,
      CancelToken cancel,
      ProgressSum sum,
      ExecutorService pool,
      boolean flows,
      BiConsumer<Integer, Solved> taker) {
    this.questions = questions;
    this.parent = parent;
    this.family = family;
    this.options = options;
    this.cancel = cancel;
    this.sum = sum;
    this.pool = pool;
    this.flows = flows;
    this.taker = taker;
    questions.forEach(question -> answers.add(new CompletableFuture<>()));
  }

  /**
   * Solves all questions from cold starts and answers in their order.
   *
   * @param taker is given each answer with its number as soon as it is there, on the solving thread
   */
  static List<Solved> solve(
      List<Question> questions,
      SectionFamily family,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress,
      BiConsumer<Integer, Solved> taker) {
    int[] cold = WarmOrder.cold(questions.size());
    return solve(questions, cold, family, options, cancel, progress, true, taker);
  }

  /**
   * Solves all questions and answers in their order.
   *
   * <p>If the calling thread is interrupted the study is cancelled and the interrupt kept.
   *
   * @param parent question that each starts from, -1 for a cold start; not modified
   * @param flows true to keep the flows in the answers
   * @param taker is given each answer with its number as soon as it is there, on the solving thread
   */
  static List<Solved> solve(
      List<Question> questions,
      int[] parent,
      SectionFamily family,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress,
      boolean flows,
      BiConsumer<Integer, Solved> taker) {
    double[] work = questions.stream().mapToDouble(Question::work).toArray();
    int threads = Math.max(1, Math.min(options.threads(), questions.size()));
    ExecutorService pool = Executors.newFixedThreadPool(threads, SolveThreads.factory());
    try {
      SolvePool run =
          new SolvePool(
              questions,
              parent,
              family,
              options,
              cancel,
              new ProgressSum(work, progress),
              pool,
              flows,
              taker);
      IntStream.range(0, work.length)
          .filter(i -> parent[i] < 0)
          .boxed()
          .sorted(Comparator.comparingDouble((Integer i) -> -work[i]))
          .forEach(i -> pool.execute(() -> run.work(i, List.of())));
      return run.answers.stream().map(answer -> SolveThreads.await(answer, cancel)).toList();
    } finally {
      pool.shutdown();
    }
  }

  /** Solves one question, then hands its flow to those that start from it. */
  private void work(int i, List<SolvedSection> before) {
    try {
      SolveTask task = new SolveTask(questions.get(i), family, options, before, cancel, sum.of(i));
      Solved solved = task.run();
      taker.accept(i, solved);
      children(i).forEach(child -> pool.execute(() -> work(child, task.starts())));
      answers.get(i).complete(flows ? solved : solved.withoutFlow());
    } catch (Throwable e) {
      breakDown(i, e);
    }
  }

  private void breakDown(int i, Throwable e) {
    answers.get(i).completeExceptionally(e);
    children(i).forEach(child -> breakDown(child, e));
  }

  private IntStream children(int i) {
    return IntStream.range(0, parent.length).filter(child -> parent[child] == i);
  }
}
