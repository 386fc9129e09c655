package hemline.solver.study;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.GridRun;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.MadeUpGrids;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Function;

/** A family whose leak is a formula, for tests of study logic. */
public final class MadeUpFamily implements SectionFamily {
  static final FluidState AIR = new FluidState(1.225, 1.46e-5);
  static final double[] SIZES = {2, 4.0 / 3, 1};

  /** Leak flow of a section on the grid at a place. */
  @FunctionalInterface
  public interface Leak {
    double at(SealSection section, Closure closure, int place);
  }

  /** What happens before a section is solved. */
  @FunctionalInterface
  interface Before {
    void solve(SealSection section, Closure closure, CancelToken cancel);
  }

  private final Leak leak;
  private final Before before;
  Function<SealSection, Closure> auto = section -> Closure.SST;
  final Set<String> threads = Collections.synchronizedSet(new TreeSet<>());
  public final ConcurrentLinkedQueue<String> solves = new ConcurrentLinkedQueue<>();

  public MadeUpFamily(Leak leak) {
    this(leak, (section, closure, cancel) -> {});
  }

  MadeUpFamily(Leak leak, Before before) {
    this.leak = leak;
    this.before = before;
  }

  @Override
  public GridFamily solve(SolveRequest request, CancelToken cancel, ProgressListener progress) {
    threads.add(Thread.currentThread().getName());
    Closure closure = request.closure();
    if (!(request.section() instanceof SealSection section)) {
      Closure used = closure == Closure.AUTO ? Closure.LAMINAR : closure;
      solves.add(request.section().name() + " " + used.key());
      return MadeUpGrids.family(
          used,
          MadeUpGrids.leak(0, 1),
          MadeUpGrids.leak(1, 1),
          MadeUpGrids.run(2, SolveStatus.CONVERGED, MadeUpGrids.figures(1), 0));
    }
    Closure used = closure == Closure.AUTO ? auto.apply(section) : closure;
    solves.add(section.profile().name() + " " + used.key());
    before.solve(section, used, cancel);
    GridRun[] runs = new GridRun[request.grids()];
    for (int place = 0; place < runs.length; place++) {
      if (cancel.isCancelled()) {
        GridRun[] done = Arrays.copyOf(runs, place);
        return MadeUpGrids.family(used, done);
      }
      double q = leak.at(section, used, place);
      runs[place] = Double.isNaN(q) ? MadeUpGrids.failed(place) : MadeUpGrids.leak(place, q);
      progress.progress((place + 1.0) / runs.length, "grid " + place);
    }
    return MadeUpGrids.family(used, runs);
  }

  public static LipProfile lip(String name) {
    Outline box =
        new Outline(
            List.of(
                new Vertex(0, 0),
                new Vertex(8e-3, 0),
                new Vertex(8e-3, 20e-3),
                new Vertex(0, 20e-3)));
    return new LipProfile(name, "flat", "made up", box, 2, List.of());
  }

  public static SealSection section(LipProfile profile) {
    return new SealSection(profile, 2e-3, 600, GroundMotion.STILL, AIR, List.of());
  }

  /** Leak of a plain lip of the given discharge coefficient. */
  public static double jet(SealSection section, double coefficient) {
    return coefficient * section.gap() * Math.sqrt(2 * section.suction() / AIR.density());
  }

  /** Largest x of an outline. */
  public static double width(LipProfile lip) {
    return lip.outline().vertices().stream().mapToDouble(Vertex::x).max().orElseThrow();
  }

  /** Least leak at a width of 11 mm. */
  public static MadeUpFamily valley() {
    return new MadeUpFamily(
        (section, closure, place) -> {
          double off = (width(section.profile()) - 11e-3) / 10e-3;
          return jet(section, (0.6 + off * off) * (1 + 0.01 * (2 - place)));
        });
  }
}
