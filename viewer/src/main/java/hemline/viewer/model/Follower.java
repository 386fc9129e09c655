package hemline.viewer.model;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.flow.SolvedSection;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.Estimates;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.GridSolution;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Solves the newest of a stream of sections on one coarse grid, each from the flow before.
 *
 * <p>While a solve runs only the newest section waits, older ones are dropped. A solve that takes
 * unusually long is stopped when something newer waits.
 */
public final class Follower {
  /** A solve older than this gives way to a newer section, ns. */
  private static final long PATIENCE = 400_000_000L;

  private final SectionFamily family;
  private final Executor background;
  private final LongSupplier clock;
  private final Consumer<Shown> listener;
  private final Runnable lost;
  private @Nullable Wanted waiting;
  private @Nullable CancelToken running;
  private long runningSince;
  private List<SolvedSection> before = List.of();

  /** A section to solve. */
  private record Wanted(SealSection section, Placement placement) {}

  /**
   * Prepares a follower.
   *
   * @param background runs one solve at a time
   * @param clock ns from any start
   * @param listener hears each finished flow, on the background thread
   * @param lost runs there when a section was solved without finding a flow
   */
  public Follower(
      SectionFamily family,
      Executor background,
      LongSupplier clock,
      Consumer<Shown> listener,
      Runnable lost) {
    this.family = family;
    this.background = background;
    this.clock = clock;
    this.listener = listener;
    this.lost = lost;
  }

  /** Asks for a section; returns at once. */
  public synchronized void follow(SealSection section, Placement placement) {
    waiting = new Wanted(section, placement);
    if (running == null) {
      start();
    } else if (clock.getAsLong() - runningSince > PATIENCE) {
      running.cancel();
    }
  }

  /** Drops what waits and stops what runs. */
  public synchronized void stop() {
    waiting = null;
    if (running != null) {
      running.cancel();
    }
  }

  private synchronized void start() {
    Wanted next = waiting;
    waiting = null;
    if (next == null) {
      running = null;
      return;
    }
    CancelToken token = new CancelToken();
    running = token;
    runningSince = clock.getAsLong();
    background.execute(() -> solve(next, token));
  }

  private void solve(Wanted wanted, CancelToken token) {
    try {
      GridFamily solved =
          family.solve(
              new SolveRequest(wanted.section(), MeshLevel.COARSE, 1, Closure.AUTO, before),
              token,
              ProgressListener.NONE);
      GridSolution grid = solved.finestUsable();
      if (solved.start() != null) {
        before = List.of(solved.start());
      }
      if (grid != null && !token.isCancelled()) {
        SectionResult result =
            Estimates.result(
                wanted.section(), MeshLevel.COARSE, solved, List.of(), List.of(), false);
        listener.accept(
            new Shown(wanted.section(), wanted.placement(), result, grid.field(), null));
      } else if (!token.isCancelled()) {
        lost.run();
      }
    } catch (RuntimeException e) {
      // a drawing that defeats the mesh shows no preview; the full solve tells why
      before = List.of();
      lost.run();
    } finally {
      start();
    }
  }
}
