package hemline.solver.linear;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Accelerates a fixed-point iteration x ← G(x) by combining its last answers.
 *
 * <p>With f = G(x) - x the next iterate is G(x) - Σ γ_j ΔG_j, where γ minimises |f - Σ γ_j Δf_j|
 * over the last m differences. Source: Anderson 1965, J. ACM 12, 547–560; Walker and Ni 2011, SIAM
 * J. Numer. Anal. 49, 1715–1735.
 */
public final class AndersonAcceleration {
  private static final double REGULARISATION = 1e-10;

  /** Entries handled at a time; a block of all vectors stays in the nearest cache. */
  private static final int BLOCK = 512;

  private final int size;
  private final int judged;
  private final int depth;

  // in single precision: half the memory to go through, and only the rate depends on it
  private final float[][] changeOfAnswer;
  private final float[][] changeOfStep;
  private final double[] lastAnswer;
  private final double[] lastStep;
  private final double[] gram;
  private final double[] products;

  /** Places of the differences in use, newest first. */
  private final int[] slots;

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
    changeOfAnswer = new float[depth][size];
    changeOfStep = new float[depth][judged];
    lastAnswer = new double[size];
    lastStep = new double[judged];
    gram = new double[depth * depth];
    products = new double[depth];
    slots = new int[depth];
  }

  /** Forgets the history. */
  public void restart() {
    stored = 0;
    next = 0;
    started = false;
  }

  /** Replaces a plain answer by the accelerated one, with all differences that are kept. */
  public void accelerate(double[] x, double[] answer, double[] weight) {
    accelerate(x, answer, weight, depth);
  }

  /**
   * Replaces a plain answer by the accelerated one.
   *
   * @param x iterate that went into G; its judged part is read, not modified
   * @param answer G(x); becomes the next iterate
   * @param weight of each judged entry in the least squares; not modified
   * @param most how many of the newest differences may be used, 1 or more
   */
  public void accelerate(double[] x, double[] answer, double[] weight, int most) {
    float[] slotStep = changeOfStep[next];
    float[] slotAnswer = changeOfAnswer[next];
    for (int i = 0; i < judged; i++) {
      double f = (answer[i] - x[i]) * weight[i];
      slotStep[i] = (float) (f - lastStep[i]);
      lastStep[i] = f;
    }
    for (int i = 0; i < size; i++) {
      slotAnswer[i] = (float) (answer[i] - lastAnswer[i]);
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
    int used = Math.min(stored, most);
    for (int j = 0; j < used; j++) {
      slots[j] = Math.floorMod(slot - j, depth);
    }
    double[] gamma = solve(used);
    for (int from = 0; from < size; from += BLOCK) {
      int to = Math.min(from + BLOCK, size);
      for (int k = 0; k < used; k++) {
        int j = slots[k];
        double c = gamma[k];
        float[] d = changeOfAnswer[j];
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
    float[] newest = changeOfStep[slot];
    double[] row = new double[stored];
    java.util.Arrays.fill(products, 0);
    for (int from = 0; from < judged; from += BLOCK) {
      int to = Math.min(from + BLOCK, judged);
      for (int j = 0; j < stored; j++) {
        float[] d = changeOfStep[j];
        // four sums of each product: one alone would wait for its last addition
        double n0 = 0;
        double n1 = 0;
        double n2 = 0;
        double n3 = 0;
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int i = from;
        for (; i + 3 < to; i += 4) {
          n0 += (double) d[i] * newest[i];
          s0 += d[i] * lastStep[i];
          n1 += (double) d[i + 1] * newest[i + 1];
          s1 += d[i + 1] * lastStep[i + 1];
          n2 += (double) d[i + 2] * newest[i + 2];
          s2 += d[i + 2] * lastStep[i + 2];
          n3 += (double) d[i + 3] * newest[i + 3];
          s3 += d[i + 3] * lastStep[i + 3];
        }
        for (; i < to; i++) {
          n0 += (double) d[i] * newest[i];
          s0 += d[i] * lastStep[i];
        }
        row[j] += (n0 + n1) + (n2 + n3);
        products[j] += (s0 + s1) + (s2 + s3);
      }
    }
    for (int j = 0; j < stored; j++) {
      gram[slot * depth + j] = row[j];
      gram[j * depth + slot] = row[j];
    }
  }

  /** Weights of the first so many {@link #slots}. */
  private double[] solve(int used) {
    DMatrixRMaj a = new DMatrixRMaj(used, used);
    DMatrixRMaj b = new DMatrixRMaj(used, 1);
    DMatrixRMaj y = new DMatrixRMaj(used, 1);
    double[] scale = new double[used];
    for (int j = 0; j < used; j++) {
      scale[j] = 1 / Math.sqrt(Math.max(gram[slots[j] * (depth + 1)], Double.MIN_NORMAL));
    }
    for (int j = 0; j < used; j++) {
      for (int k = 0; k < used; k++) {
        a.set(j, k, gram[slots[j] * depth + slots[k]] * scale[j] * scale[k]);
      }
      a.add(j, j, REGULARISATION);
      b.set(j, 0, products[slots[j]] * scale[j]);
    }
    LinearSolverDense<DMatrixRMaj> chol = LinearSolverFactory_DDRM.chol(used);
    double[] gamma = new double[used];
    if (chol.setA(a)) {
      chol.solve(b, y);
      for (int j = 0; j < used; j++) {
        gamma[j] = y.get(j, 0) * scale[j];
      }
    }
    return gamma;
  }
}
