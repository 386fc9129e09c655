package hemline.solver.linear;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Accelerates a fixed-point iteration x ← G(x) by combining its last answers.
 *
 * <p>With f = G(x) - x the next iterate is G(x) - Σ γ_j ΔG_j, where γ minimises |f - Σ γ_j Δf_j|
 * over the last m differences. Source: Anderson 1965, J. ACM 12, 547–560; Walker & Ni 2011, SIAM J.
 * Numer. Anal. 49, 1715–1735.
 */
public final class AndersonAcceleration {
  private static final double REGULARISATION = 1e-10;

  /** Entries handled at a time; a block of all vectors stays in the nearest cache. */
  private static final int BLOCK = 512;

  private final int size;
  private final int judged;
  private final int depth;
  private final double[][] changeOfAnswer;
  private final double[][] changeOfStep;
  private final double[] lastAnswer;
  private final double[] lastStep;
  private final double[] gram;
  private final double[] products;
  private int stored;
  private int next;
  private boolean started;

  /**
   * Prepares room for the history.
   *
   * @param size length of the iterate
   * @param judged how many of its leading entries count in the least squares, 1 to size
   * @param depth differences kept, 1 or more
   */
  public AndersonAcceleration(int size, int judged, int depth) {
    this.size = size;
    this.judged = judged;
    this.depth = depth;
    changeOfAnswer = new double[depth][size];
    changeOfStep = new double[depth][judged];
    lastAnswer = new double[size];
    lastStep = new double[judged];
    gram = new double[depth * depth];
    products = new double[depth];
  }

  /** Forgets the history. */
  public void restart() {
    stored = 0;
    next = 0;
    started = false;
  }

  /**
   * Replaces a plain answer by the accelerated one.
   *
   * @param x iterate that went into G; its judged part is read, not modified
   * @param answer G(x); becomes the next iterate
   * @param weight of each judged entry in the least squares; not modified
   */
  public void accelerate(double[] x, double[] answer, double[] weight) {
    double[] slotStep = changeOfStep[next];
    double[] slotAnswer = changeOfAnswer[next];
    for (int i = 0; i < judged; i++) {
      double f = (answer[i] - x[i]) * weight[i];
      slotStep[i] = f - lastStep[i];
      lastStep[i] = f;
    }
    for (int i = 0; i < size; i++) {
      slotAnswer[i] = answer[i] - lastAnswer[i];
      lastAnswer[i] = answer[i];
    }
    if (!started) {
      started = true;
      return;
    }
    int slot = next;
    next = (next + 1) % depth;
    stored = Math.min(stored + 1, depth);
    project(slot);
    double[] gamma = solve();
    for (int from = 0; from < size; from += BLOCK) {
      int to = Math.min(from + BLOCK, size);
      for (int j = 0; j < stored; j++) {
        double c = gamma[j];
        double[] d = changeOfAnswer[j];
        for (int i = from; i < to; i++) {
          answer[i] -= c * d[i];
        }
      }
    }
  }

  /**
   * Products of all changes of the step with the newest one and with the step itself, block by
   * block so that each change is fetched once.
   */
  private void project(int slot) {
    double[] newest = changeOfStep[slot];
    double[] row = new double[stored];
    java.util.Arrays.fill(products, 0);
    for (int from = 0; from < judged; from += BLOCK) {
      int to = Math.min(from + BLOCK, judged);
      for (int j = 0; j < stored; j++) {
        double[] d = changeOfStep[j];
        double withNewest = 0;
        double withStep = 0;
        for (int i = from; i < to; i++) {
          withNewest += d[i] * newest[i];
          withStep += d[i] * lastStep[i];
        }
        row[j] += withNewest;
        products[j] += withStep;
      }
    }
    for (int j = 0; j < stored; j++) {
      gram[slot * depth + j] = row[j];
      gram[j * depth + slot] = row[j];
    }
  }

  private double[] solve() {
    DMatrixRMaj a = new DMatrixRMaj(stored, stored);
    DMatrixRMaj b = new DMatrixRMaj(stored, 1);
    DMatrixRMaj y = new DMatrixRMaj(stored, 1);
    double[] scale = new double[stored];
    for (int j = 0; j < stored; j++) {
      scale[j] = 1 / Math.sqrt(Math.max(gram[j * depth + j], Double.MIN_NORMAL));
    }
    for (int j = 0; j < stored; j++) {
      for (int k = 0; k < stored; k++) {
        a.set(j, k, gram[j * depth + k] * scale[j] * scale[k]);
      }
      a.add(j, j, REGULARISATION);
      b.set(j, 0, products[j] * scale[j]);
    }
    LinearSolverDense<DMatrixRMaj> chol = LinearSolverFactory_DDRM.chol(stored);
    double[] gamma = new double[stored];
    if (chol.setA(a)) {
      chol.solve(b, y);
      for (int j = 0; j < stored; j++) {
        gamma[j] = y.get(j, 0) * scale[j];
      }
    }
    return gamma;
  }
}
