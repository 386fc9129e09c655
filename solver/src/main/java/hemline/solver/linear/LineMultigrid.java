package hemline.solver.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Solves conductance networks on a rectangle of places: {@code Σ_l c_l (x_r - x_other) + e_r x_r =
 * b_r}, symmetric and positive.
 *
 * <p>Flexible conjugate gradients with one V-cycle as preconditioner. Rows and columns of places
 * are joined two by two ({@link LineCoarsening}). The smoother solves whole lines, every second one
 * at a time, because links of a stretched grid are strong along one direction here and along the
 * other there: rows, then columns on the way down, back in the opposite order on the way up. The
 * coarsest level is solved by a band factorisation. What does not fit on the rectangle is left to
 * the outer iteration. Source of alternating zebra lines: Wesseling 1992, An Introduction to
 * Multigrid Methods, chapter 7 (from memory).
 */
public final class LineMultigrid {
  private static final int COARSEST = 100;

  private final PlacedNetwork network;
  private final LineCoarsening[] steps;
  private final LineLevel coarsest;
  private final BandCholesky direct;
  private final double[] answer;
  private final Runnable checkpoint;
  private double[] conductance = new double[0];
  private double[] grounding = new double[0];
  private final double[] r;
  private final double[] z;
  private final double[] d;
  private final double[] q;

  /**
   * Builds the hierarchy.
   *
   * @param grid places and links
   * @param strength typical conductance of each link, positive; not modified
   */
  public LineMultigrid(PlaceGrid grid, double[] strength) {
    this(grid, strength, () -> {});
  }

  /**
   * Builds the hierarchy of a solver that can be stopped.
   *
   * @param grid places and links
   * @param strength typical conductance of each link, positive; not modified
   * @param checkpoint run again and again, here and later; what it throws ends the work
   */
  public LineMultigrid(PlaceGrid grid, double[] strength, Runnable checkpoint) {
    this.checkpoint = checkpoint;
    int size = grid.size();
    r = new double[size];
    z = new double[size];
    d = new double[size];
    q = new double[size];
    network = new PlacedNetwork(grid);
    network.fill(strength, new double[size]);
    List<LineCoarsening> list = new ArrayList<>();
    LineLevel level = network.level;
    while (level.nx * level.ny > COARSEST) {
      checkpoint.run();
      LineCoarsening step = new LineCoarsening(level);
      if (step.coarse.nx * step.coarse.ny > 0.8 * level.nx * level.ny) {
        break;
      }
      list.add(step);
      level = step.coarse;
    }
    steps = list.toArray(new LineCoarsening[0]);
    coarsest = level;
    answer = new double[level.nx * level.ny];
    direct = new BandCholesky(answer.length, Math.min(level.nx, level.ny));
  }

  /**
   * Sets the conductances and the couplings to ground; at least one of the latter must be positive
   * in every connected part. The arrays must not change until the next call.
   *
   * @param conductance of each link, not negative; not modified
   * @param grounding of each unknown, not negative; not modified
   * @return false if the network is singular: a part without ground, or numbers so far apart that
   *     rounding makes it so
   */
  public boolean setCoefficients(double[] conductance, double[] grounding) {
    this.conductance = conductance;
    this.grounding = grounding;
    network.fill(conductance, grounding);
    for (LineCoarsening step : steps) {
      checkpoint.run();
      step.fine.factorise();
      step.setCoefficients();
    }
    direct.clear();
    LineLevel a = coarsest;
    for (int j = 0; j < a.ny; j++) {
      for (int i = 0; i < a.nx; i++) {
        int p = a.at(i, j);
        int row = row(i, j);
        direct.add(row, row, a.diagonal[p]);
        if (i > 0) {
          direct.add(row, row(i - 1, j), -a.east[p - 1]);
        }
        if (j > 0) {
          direct.add(row, row(i, j - 1), -a.north[p - a.width]);
        }
      }
    }
    return direct.factorise();
  }

  /**
   * Row of the band matrix for a place of the coarsest level: the shorter side is run through
   * first.
   */
  private int row(int i, int j) {
    return coarsest.ny < coarsest.nx ? i * coarsest.ny + j : j * coarsest.nx + i;
  }

  /**
   * Iterates until the residual has fallen.
   *
   * @param b right-hand side; not modified
   * @param x start and answer; modified
   * @param reduction wanted residual over starting residual (Euclidean norms)
   * @param most most iterations
   * @return iterations done
   */
  public int solve(double[] b, double[] x, double reduction, int most) {
    network.multiply(conductance, grounding, x, r);
    combine(b, -1, r);
    double start = Math.sqrt(dot(r, r));
    if (start == 0) {
      return 0;
    }
    double target = start * reduction;
    double dq = 0;
    int it = 0;
    while (it < most) {
      it++;
      checkpoint.run();
      network.put(r);
      cycle(0);
      network.take(r, z);
      // flexible direction: d = z - (z·q / d·q) d
      double beta = it == 1 ? 0 : dot(z, q) / dq;
      combine(z, -beta, d);
      network.multiply(conductance, grounding, d, q);
      dq = dot(d, q);
      if (!(dq > 0)) {
        break;
      }
      double alpha = dot(d, r) / dq;
      add(alpha, d, x);
      add(-alpha, q, r);
      if (Math.sqrt(dot(r, r)) <= target) {
        break;
      }
    }
    return it;
  }

  // loops in methods of their own are compiled once, in the big one above time and again

  /** y ← x + c y. */
  private static void combine(double[] x, double c, double[] y) {
    for (int i = 0; i < y.length; i++) {
      y[i] = x[i] + c * y[i];
    }
  }

  /** y ← y + c x. */
  private static void add(double c, double[] x, double[] y) {
    for (int i = 0; i < y.length; i++) {
      y[i] += c * x[i];
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** One V-cycle from zero on a level and those below it. */
  private void cycle(int l) {
    if (l == steps.length) {
      solveCoarsest();
      return;
    }
    LineLevel a = steps[l].fine;
    Arrays.fill(a.x, 0);
    a.solveRows(0);
    a.solveRows(1);
    a.solveColumns(0);
    a.solveColumns(1);
    steps[l].restrict();
    cycle(l + 1);
    steps[l].correct();
    a.solveColumns(1);
    a.solveColumns(0);
    a.solveRows(1);
    a.solveRows(0);
  }

  private void solveCoarsest() {
    LineLevel a = coarsest;
    for (int j = 0; j < a.ny; j++) {
      for (int i = 0; i < a.nx; i++) {
        answer[row(i, j)] = a.b[a.at(i, j)];
      }
    }
    direct.solve(answer);
    for (int j = 0; j < a.ny; j++) {
      for (int i = 0; i < a.nx; i++) {
        a.x[a.at(i, j)] = answer[row(i, j)];
      }
    }
  }
}
