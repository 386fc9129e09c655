package hemline.solver.linear;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Solves conductance networks: {@code Σ_l c_l (x_r - x_other) + e_r x_r = b_r}, symmetric and
 * positive.
 *
 * <p>Flexible conjugate gradients with one cycle of aggregation multigrid as preconditioner.
 * Aggregates are built once, from link strengths, by pairwise matching done twice per level; each
 * coarse problem is solved by up to two inner iterations (K-cycle). The smoother is a symmetric
 * pair of Gauss–Seidel sweeps, the coarsest level a dense Cholesky factorisation. Source: Notay
 * 2010, Electron. Trans. Numer. Anal. 37, 123–146.
 */
public final class AggregationMultigrid {
  private static final int COARSEST = 40;

  /** A second inner iteration is done when the first reduces the residual by less than this. */
  private static final double INNER_REDUCTION = 0.25;

  private final Level[] levels;
  private final LinearSolverDense<DMatrixRMaj> direct;
  private final DMatrixRMaj dense;
  private final DMatrixRMaj denseRhs;
  private final DMatrixRMaj denseAnswer;

  /**
   * Builds the hierarchy.
   *
   * @param size number of unknowns
   * @param first first unknown of each link; not modified
   * @param second second unknown of each link; not modified
   * @param strength typical conductance of each link, positive; not modified
   */
  public AggregationMultigrid(int size, int[] first, int[] second, double[] strength) {
    java.util.List<Level> list = new java.util.ArrayList<>();
    Level level = new Level(size, first, second);
    double[] s = strength;
    list.add(level);
    while (level.size > COARSEST) {
      Aggregation pairs = Aggregation.pairwise(level.size, level.first, level.second, s);
      Aggregation fours =
          pairs.then(Aggregation.pairwise(pairs.size, pairs.first, pairs.second, pairs.strength));
      if (fours.size > 0.8 * level.size) {
        break;
      }
      level.coarseOf = fours.coarseOf;
      level.coarseLink = fours.coarseLink;
      level = new Level(fours.size, fours.first, fours.second);
      s = fours.strength;
      list.add(level);
    }
    levels = list.toArray(new Level[0]);
    int n = level.size;
    direct = LinearSolverFactory_DDRM.chol(n);
    dense = new DMatrixRMaj(n, n);
    denseRhs = new DMatrixRMaj(n, 1);
    denseAnswer = new DMatrixRMaj(n, 1);
  }

  /**
   * Sets the conductances and the couplings to ground; at least one of the latter must be positive
   * in every connected part.
   *
   * @param conductance of each link, not negative; not modified
   * @param grounding of each unknown, not negative; not modified
   */
  public void setCoefficients(double[] conductance, double[] grounding) {
    levels[0].fill(conductance, grounding);
    for (int l = 1; l < levels.length; l++) {
      levels[l].fillFrom(levels[l - 1]);
    }
    Level coarsest = levels[levels.length - 1];
    coarsest.copyTo(dense);
    if (!direct.setA(dense)) {
      throw new IllegalArgumentException("the conductance network is not positive definite");
    }
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
    Level a = levels[0];
    int n = a.size;
    double[] r = a.r;
    double[] z = a.z;
    double[] d = a.d;
    double[] q = a.q;
    a.residual(b, x, r);
    double start = Math.sqrt(dot(r, r, n));
    double target = start * reduction;
    if (start == 0) {
      return 0;
    }
    double dq = 0;
    int it = 0;
    while (it < most) {
      it++;
      cycle(0, r, z);
      // flexible direction: d = z - (z·q / d·q) d
      double beta = it == 1 ? 0 : dot(z, q, n) / dq;
      for (int i = 0; i < n; i++) {
        d[i] = z[i] - beta * d[i];
      }
      a.multiply(d, q);
      dq = dot(d, q, n);
      if (!(dq > 0)) {
        break;
      }
      double alpha = dot(d, r, n) / dq;
      for (int i = 0; i < n; i++) {
        x[i] += alpha * d[i];
        r[i] -= alpha * q[i];
      }
      if (Math.sqrt(dot(r, r, n)) <= target) {
        break;
      }
    }
    return it;
  }

  /** One multigrid cycle: z ≈ A⁻¹ r on level l. Modifies work arrays of coarser levels only. */
  private void cycle(int l, double[] r, double[] z) {
    Level a = levels[l];
    if (l == levels.length - 1) {
      System.arraycopy(r, 0, denseRhs.data, 0, a.size);
      direct.solve(denseRhs, denseAnswer);
      System.arraycopy(denseAnswer.data, 0, z, 0, a.size);
      return;
    }
    a.forwardFromZero(r, z);
    Level c = levels[l + 1];
    a.restrictSwept(z, c.coarseRhs, c.size);
    coarseSolve(l + 1, c.coarseRhs, c.coarseAnswer);
    for (int i = 0; i < a.size; i++) {
      z[i] += c.coarseAnswer[a.coarseOf[i]];
    }
    a.backward(r, z);
  }

  /** K-cycle: up to two flexible iterations preconditioned by the cycle. */
  private void coarseSolve(int l, double[] b, double[] x) {
    Level a = levels[l];
    int n = a.size;
    if (l == levels.length - 1) {
      cycle(l, b, x);
      return;
    }
    double[] c1 = a.z;
    double[] v1 = a.q;
    double[] rest = a.r;
    cycle(l, b, c1);
    a.multiply(c1, v1);
    double rho1 = dot(c1, v1, n);
    double alpha1 = dot(c1, b, n);
    double t1 = rho1 > 0 ? alpha1 / rho1 : 0;
    for (int i = 0; i < n; i++) {
      rest[i] = b[i] - t1 * v1[i];
    }
    if (rho1 <= 0 || dot(rest, rest, n) <= INNER_REDUCTION * INNER_REDUCTION * dot(b, b, n)) {
      for (int i = 0; i < n; i++) {
        x[i] = t1 * c1[i];
      }
      return;
    }
    double[] c2 = a.d;
    double[] v2 = a.w;
    cycle(l, rest, c2);
    a.multiply(c2, v2);
    double gamma = dot(c2, v1, n);
    double beta = dot(c2, v2, n);
    double alpha2 = dot(c2, rest, n);
    double rho2 = beta - gamma * gamma / rho1;
    double t2 = rho2 > 0 ? alpha2 / rho2 : 0;
    double s1 = t1 - gamma * t2 / rho1;
    for (int i = 0; i < n; i++) {
      x[i] = s1 * c1[i] + t2 * c2[i];
    }
  }

  private static double dot(double[] a, double[] b, int n) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** One network of the hierarchy. */
  private static final class Level {
    final int size;
    final int[] first;
    final int[] second;
    final SparsePattern pattern;
    final double[] conductance;
    final double[] grounding;
    final double[] entry;
    final double[] inverseDiagonal;
    final double[] diagonal;
    // work
    final double[] r;
    final double[] z;
    final double[] d;
    final double[] q;
    final double[] w;
    final double[] coarseRhs;
    final double[] coarseAnswer;
    int[] coarseOf = new int[0];
    int[] coarseLink = new int[0];

    Level(int size, int[] first, int[] second) {
      this.size = size;
      this.first = first;
      this.second = second;
      pattern = new SparsePattern(size, first, second);
      conductance = new double[first.length];
      grounding = new double[size];
      entry = new double[pattern.column.length];
      inverseDiagonal = new double[size];
      diagonal = new double[size];
      r = new double[size];
      z = new double[size];
      d = new double[size];
      q = new double[size];
      w = new double[size];
      coarseRhs = new double[size];
      coarseAnswer = new double[size];
    }

    void fill(double[] c, double[] e) {
      System.arraycopy(c, 0, conductance, 0, c.length);
      System.arraycopy(e, 0, grounding, 0, size);
      assemble();
    }

    void fillFrom(Level fine) {
      java.util.Arrays.fill(conductance, 0);
      java.util.Arrays.fill(grounding, 0);
      for (int l = 0; l < fine.conductance.length; l++) {
        int target = fine.coarseLink[l];
        if (target >= 0) {
          conductance[target] += fine.conductance[l];
        }
      }
      for (int i = 0; i < fine.size; i++) {
        grounding[fine.coarseOf[i]] += fine.grounding[i];
      }
      assemble();
    }

    private void assemble() {
      java.util.Arrays.fill(entry, 0);
      System.arraycopy(grounding, 0, diagonal, 0, size);
      for (int l = 0; l < first.length; l++) {
        double c = conductance[l];
        entry[pattern.firstEntry[l]] += c;
        entry[pattern.secondEntry[l]] += c;
        diagonal[first[l]] += c;
        diagonal[second[l]] += c;
      }
      for (int i = 0; i < size; i++) {
        inverseDiagonal[i] = diagonal[i] > 0 ? 1 / diagonal[i] : 0;
      }
    }

    void copyTo(DMatrixRMaj m) {
      m.zero();
      for (int i = 0; i < size; i++) {
        m.set(i, i, diagonal[i] > 0 ? diagonal[i] : 1);
      }
      for (int l = 0; l < first.length; l++) {
        m.add(first[l], second[l], -conductance[l]);
        m.add(second[l], first[l], -conductance[l]);
      }
    }

    void multiply(double[] x, double[] y) {
      for (int i = 0; i < size; i++) {
        y[i] = diagonal[i] * x[i] - others(x, i);
      }
    }

    void residual(double[] b, double[] x, double[] out) {
      for (int i = 0; i < size; i++) {
        out[i] = b[i] - diagonal[i] * x[i] + others(x, i);
      }
    }

    /** Σ c x over all neighbours; rows of four, which are most, are written out. */
    private double others(double[] x, int i) {
      int[] column = pattern.column;
      double[] a = entry;
      int e = pattern.rowStart[i];
      int end = pattern.rowStart[i + 1];
      if (end - e == 4) {
        return (a[e] * x[column[e]] + a[e + 1] * x[column[e + 1]])
            + (a[e + 2] * x[column[e + 2]] + a[e + 3] * x[column[e + 3]]);
      }
      return sum(x, e, end);
    }

    private double sum(double[] x, int from, int to) {
      double sum = 0;
      for (int e = from; e < to; e++) {
        sum += entry[e] * x[pattern.column[e]];
      }
      return sum;
    }

    /** Forward sweep from x = 0: only neighbours already visited count. */
    void forwardFromZero(double[] b, double[] x) {
      int[] column = pattern.column;
      double[] a = entry;
      for (int i = 0; i < size; i++) {
        int e = pattern.rowStart[i];
        int end = pattern.upperStart[i];
        double sum = b[i];
        if (end - e == 2) {
          // the unknown just before comes last: nothing else has to be waited for
          sum += a[e] * x[column[e]];
          sum += a[e + 1] * x[column[e + 1]];
        } else {
          sum += sum(x, e, end);
        }
        x[i] = sum * inverseDiagonal[i];
      }
    }

    /** Residual after a forward sweep from zero, restricted: what the later neighbours add. */
    void restrictSwept(double[] x, double[] coarse, int coarseSize) {
      java.util.Arrays.fill(coarse, 0, coarseSize, 0);
      int[] column = pattern.column;
      double[] a = entry;
      for (int i = 0; i < size; i++) {
        int e = pattern.upperStart[i];
        int end = pattern.rowStart[i + 1];
        coarse[coarseOf[i]] +=
            end - e == 2 ? a[e] * x[column[e]] + a[e + 1] * x[column[e + 1]] : sum(x, e, end);
      }
    }

    void backward(double[] b, double[] x) {
      int[] column = pattern.column;
      double[] a = entry;
      for (int i = size - 1; i >= 0; i--) {
        int e = pattern.rowStart[i];
        int end = pattern.rowStart[i + 1];
        double sum = b[i];
        if (end - e == 4) {
          sum += a[e + 3] * x[column[e + 3]] + (a[e] * x[column[e]] + a[e + 1] * x[column[e + 1]]);
          sum += a[e + 2] * x[column[e + 2]];
        } else {
          sum += sum(x, e, end);
        }
        x[i] = sum * inverseDiagonal[i];
      }
    }
  }
}
