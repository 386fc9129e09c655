package hemline.solver.flow;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.field.FlowState;
import hemline.solver.grid.GridDesign;
import hemline.solver.grid.Mesh;
import hemline.solver.grid.MeshLevel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Marches wide gaps in time to see whether their flow stays on the branch that the steady solve
 * finds, flaps, or goes to another one.
 *
 * <p>Takes up to two minutes a case, so its name keeps it out of the ordinary run. To run it:
 * {@code mvn -pl solver -am test -Dtest=WideGapMarch -Dsurefire.failIfNoSpecifiedTests=false}, with
 * {@code -Dhemline.only=TEXT} for cases whose name contains a text, {@code -Dhemline.refine=2|3|4}
 * for the grid of the family (4, the finest of medium) and {@code -Dhemline.courant=} for a Courant
 * number at the lip's exit other than the case's. One line a case stands in {@code
 * target/wide-gap-march.txt} afterwards.
 */
@Tag("slow")
class WideGapMarch {
  private static final StoppingLimits TIGHT = new StoppingLimits(1500, 600, 60, 2e-5, 1e-5, 1e-5);

  /** Size of the disturbance in jet velocities. */
  private static final double KICK = 0.02;

  /** Share of a march after which the outlet pressure is kept and means are taken. */
  private static final double SETTLE = 0.6;

  /** Time in which the outlet pressure follows the suction before that, gap over jet velocity. */
  private static final double FOLLOW = 40;

  /** Flows do not flap when their leak moves by less than this share. */
  private static final double STILL = 1e-4;

  private static final int BATCHES = 8;

  private enum Start {
    /** The steady solve of the case, disturbed. */
    STEADY,
    /** Everything at rest. */
    REST,
    /** The steady flow over a ground that does not move. */
    STILL_GROUND
  }

  /**
   * What to march.
   *
   * @param gap mm
   * @param suction Pa
   * @param ground m/s
   * @param duration gap over jet velocity
   * @param courant at the lip's exit
   */
  private record Case(
      String lip,
      double gap,
      double suction,
      double ground,
      Start start,
      boolean secondOrderEverywhere,
      double duration,
      double courant) {
    String name() {
      return String.format(
          Locale.ROOT,
          "%s %.0f mm %.0f Pa ground %.0f m/s from %s%s",
          lip,
          gap,
          suction,
          ground,
          start.name().toLowerCase(Locale.ROOT).replace('_', ' '),
          secondOrderEverywhere ? ", second order everywhere" : "");
    }
  }

  private static Case still(String lip, double gap, Start start) {
    return new Case(lip, gap, 600, 0, start, false, 240, 2);
  }

  private static Case moving(String lip, Start start) {
    return new Case(lip, 4, 100, -15, start, false, 1500, 6);
  }

  private static final List<Case> CASES =
      List.of(
          still("plain-flat-8", 4, Start.STEADY),
          new Case("plain-flat-8", 4, 600, 0, Start.REST, false, 900, 4),
          still("plain-flat-8", 6, Start.STEADY),
          still("vortex-trap-one-pocket", 4, Start.STEADY),
          still("vortex-trap-one-pocket", 6, Start.STEADY),
          still("teeth-into-leak", 4, Start.STEADY),
          still("teeth-into-leak", 6, Start.STEADY),
          new Case("plain-flat-8", 6, 600, 0, Start.STEADY, true, 240, 0.5),
          moving("chamfered-flat", Start.STEADY),
          moving("chamfered-flat", Start.STILL_GROUND),
          moving("chamfered-flat", Start.REST),
          moving("knife-fin", Start.STEADY));

  @Test
  void timeMeansAndSteadyBranches() throws Exception {
    String only = System.getProperty("hemline.only", "");
    StringBuilder report = new StringBuilder();
    List<String> astray = new ArrayList<>();
    int run = 0;
    for (Case c : CASES) {
      if (c.name().contains(only)) {
        run++;
        march(c, report, astray);
        Files.writeString(Path.of("target", "wide-gap-march.txt"), report, StandardCharsets.UTF_8);
      }
    }
    assertThat(run).isPositive();
    assertThat(astray).as("%s", report).isEmpty();
  }

  private static void march(Case c, StringBuilder report, List<String> astray) {
    SealSection section = Lips.section(Lips.shipped(c.lip()), c.gap(), c.suction(), c.ground(), 0);
    FlowSolution steady = steady(section, c.secondOrderEverywhere());
    FlowProblem problem = steady.problem();
    Mesh mesh = problem.geometry().mesh;
    double drive = section.suction() / section.fluid().density();
    double jet = Math.sqrt(2 * drive);
    double unit = section.gap() / jet;
    double before = discharge(problem, steady.state(), section.gap(), drive);
    FlowState state = start(c, section, steady, jet);
    double courant =
        Double.parseDouble(System.getProperty("hemline.courant", String.valueOf(c.courant())));
    double step = courant * exitSize(mesh, new SectionSetup(section).width()) / jet;
    int steps = (int) Math.ceil(c.duration() * unit / step);
    TimeMarch march = new TimeMarch(problem, state, TimeMarch.Settings.of(step));
    int settle = (int) (SETTLE * steps);
    double[] leak = new double[steps - settle];
    double suction = 0;
    int unfinished = 0;
    int passes = 0;
    for (int i = 0; i < steps; i++) {
      if (i < settle) {
        problem.drive().adjust(state, Math.min(1, step / (FOLLOW * unit)));
      }
      TimeMarch.Step taken = march.advance();
      passes += taken.passes();
      unfinished += taken.passes() == TimeMarch.Settings.of(step).passes() ? 1 : 0;
      if (i >= settle) {
        leak[i - settle] = march.figure() / (section.gap() * jet);
        suction += tap(problem, state, drive) / (drive * leak.length);
      }
    }
    // a mean suction a little off the asked one is made good by the square-root law
    double scale = 1 / Math.sqrt(suction);
    double mean = scale * Arrays.stream(leak).average().orElse(Double.NaN);
    double low = scale * Arrays.stream(leak).min().orElse(Double.NaN);
    double high = scale * Arrays.stream(leak).max().orElse(Double.NaN);
    boolean flaps = high - low > STILL * mean;
    boolean settled = steady.outcome().status() == SolveStatus.CONVERGED;
    report.append(
        String.format(
            Locale.ROOT,
            "%s: %d cells, steady %s residual %.1e C_d %.4f; %d steps of %.3f h/U, %.1f passes"
                + " each, %d unfinished; mean C_d %.4f +- %.1e, from %.4f to %.4f, mean suction"
                + " %.4f, %s%n",
            c.name(),
            mesh.cells,
            steady.outcome().status().key(),
            steady.outcome().momentumResidual(),
            before,
            steps,
            step / unit,
            (double) passes / steps,
            unfinished,
            mean,
            scale * meanError(leak),
            low,
            high,
            suction,
            flaps
                ? String.format(Locale.ROOT, "period %.1f h/U", period(leak) * step / unit)
                : "still"));
    boolean back = Math.abs(mean - before) < 1e-3 * before && !flaps;
    boolean asked = c.ground() != 0 || (settled && back);
    if (!Double.isFinite(mean) || unfinished > steps / 20 || !asked) {
      astray.add(c.name());
    }
  }

  private static FlowSolution steady(SealSection section, boolean everywhere) {
    SectionSetup setup = new SectionSetup(section);
    GridDesign design = GridDesign.of(setup.domain(), section.gap(), MeshLevel.MEDIUM);
    int finest = Integer.getInteger("hemline.refine", GridDesign.FINEST);
    int[] multipliers = finest == 2 ? new int[] {2} : new int[] {2, finest};
    List<FlowSolution> flows =
        SequencedSolver.solve(
            g -> {
              FlowProblem p = setup.problem(design.lines(multipliers[g]), Closure.SST);
              if (everywhere) {
                Arrays.fill(p.momentum().secondOrderShare(), 1);
              }
              return p;
            },
            multipliers.length,
            -section.suction() / section.fluid().density(),
            0,
            TIGHT,
            new CancelToken(),
            ProgressListener.NONE);
    return flows.get(flows.size() - 1);
  }

  private static FlowState start(Case c, SealSection section, FlowSolution steady, double jet) {
    Mesh mesh = steady.problem().geometry().mesh;
    FlowState state = Flows.rest(mesh);
    switch (c.start()) {
      case STEADY -> {
        state.set(steady.state());
        disturb(mesh, state, section.gap(), new SectionSetup(section).width(), jet);
      }
      case STILL_GROUND ->
          state.set(
              steady(Lips.section(section.profile(), c.gap(), c.suction(), 0, 0), false).state());
      case REST -> state.outletPressure = steady.state().outletPressure;
    }
    return state;
  }

  /** Waves of one and two gaps length near the lip. */
  private static void disturb(Mesh mesh, FlowState s, double gap, double width, double jet) {
    for (int c = 0; c < mesh.cells; c++) {
      double x = mesh.cx[c];
      if (x > -gap && x < width + 4 * gap && mesh.cy[c] < 3 * gap) {
        s.u[c] *= 1 + KICK * Math.sin(2 * Math.PI * x / gap + 1);
        s.v[c] += KICK * jet * Math.sin(Math.PI * x / gap);
      }
    }
  }

  /** Suction at the tap over density. */
  private static double tap(FlowProblem problem, FlowState s, double drive) {
    return drive - problem.drive().miss(s) * problem.scales().pressure();
  }

  private static double discharge(FlowProblem problem, FlowState s, double gap, double drive) {
    return problem.drive().monitor(s) / (gap * Math.sqrt(2 * tap(problem, s, drive)));
  }

  private static double exitSize(Mesh mesh, double width) {
    double[] x = mesh.lines.x();
    double size = Double.POSITIVE_INFINITY;
    for (int i = 0; i + 1 < x.length; i++) {
      if (Math.min(Math.abs(x[i] - width), Math.abs(x[i + 1] - width)) < 1e-9) {
        size = Math.min(size, x[i + 1] - x[i]);
      }
    }
    return size;
  }

  /** Standard error of the mean from means over equal stretches. */
  private static double meanError(double[] a) {
    double mean = Arrays.stream(a).average().orElse(0);
    int n = a.length / BATCHES;
    double sum = 0;
    for (int k = 0; k < BATCHES; k++) {
      double d = Arrays.stream(a, k * n, (k + 1) * n).average().orElse(0) - mean;
      sum += d * d;
    }
    return Math.sqrt(sum / (BATCHES * (BATCHES - 1.0)));
  }

  /** Steps from one upward crossing of the mean to the next, on average; NaN below two. */
  private static double period(double[] a) {
    double mean = Arrays.stream(a).average().orElse(0);
    int first = -1;
    int last = -1;
    int count = 0;
    for (int i = 1; i < a.length; i++) {
      if (a[i - 1] < mean && a[i] >= mean) {
        first = first < 0 ? i : first;
        last = i;
        count++;
      }
    }
    return count > 1 ? (double) (last - first) / (count - 1) : Double.NaN;
  }
}
