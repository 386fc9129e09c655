package hemline.solver.linear;

/**
 * Generalised minimal residuals with a right preconditioner.
 *
 * <p>Source: Saad 1993, SIAM J. Sci. Comput. 14, 461–469. No restart: the answer is the best within
 * the room given.
 *
 * <p>Symbols: V basis, Z = M⁻¹ V preconditioned, H Hessenberg matrix of A Z = V H, rotated step by
 * step to the triangle R; g right-hand side β e₁ under the same rotations, whose last entry is the
 * residual.
 */
public final class FlexibleGmres {

  /** A linear map from one vector to another of the same length. */
  @FunctionalInterface
  public interface Map {
    void apply(double[] from, double[] to);
  }

  private final int size;
  private final int most;
  private final double[][] basis;
  private final double[][] preconditioned;
  private final double[][] hessenberg;
  private final double[] cosine;
  private final double[] sine;
  private final double[] rotated;

  /**
   * Reserves room.
   *
   * @param size length of vectors
   * @param most most iterations
   */
  public FlexibleGmres(int size, int most) {
    this.size = size;
    this.most = most;
    basis = new double[most + 1][size];
    preconditioned = new double[most][size];
    hessenberg = new double[most + 1][most];
    cosine = new double[most];
    sine = new double[most];
    rotated = new double[most + 1];
  }

  /**
   * Solves A x = b from x = 0.
   *
   * @param a the operator
   * @param preconditioner approximate inverse of it
   * @param b right-hand side; not modified
   * @param x answer
   * @param reduction wanted |b - A x| / |b|
   * @return iterations done
   */
  public int solve(Map a, Map preconditioner, double[] b, double[] x, double reduction) {
    java.util.Arrays.fill(x, 0);
    double beta = Math.sqrt(dot(b, b));
    if (beta == 0) {
      return 0;
    }
    for (int i = 0; i < size; i++) {
      basis[0][i] = b[i] / beta; // v₀ = b / |b|
    }
    rotated[0] = beta;
    int k = 0;
    while (k < most) {
      preconditioner.apply(basis[k], preconditioned[k]); // z_k = M⁻¹ v_k
      double[] w = basis[k + 1];
      a.apply(preconditioned[k], w); // w = A z_k
      orthogonalise(w, k);
      k++;
      if (Math.abs(rotated[k]) <= reduction * beta || hessenberg[k][k - 1] == 0) {
        break;
      }
    }
    // back substitution R y = g, x = Σ y_i z_i
    for (int i = k - 1; i >= 0; i--) {
      double sum = rotated[i];
      for (int j = i + 1; j < k; j++) {
        sum -= hessenberg[i][j] * rotated[j];
      }
      rotated[i] = sum / hessenberg[i][i];
      double c = rotated[i];
      for (int m = 0; m < size; m++) {
        x[m] += c * preconditioned[i][m];
      }
    }
    return k;
  }

  /** Gram–Schmidt against the basis, then the plane rotations of the new column. */
  private void orthogonalise(double[] w, int k) {
    for (int j = 0; j <= k; j++) {
      double h = dot(w, basis[j]); // h_jk = w · v_j, w ← w - h_jk v_j
      hessenberg[j][k] = h;
      double[] v = basis[j];
      for (int i = 0; i < size; i++) {
        w[i] -= h * v[i];
      }
    }
    double norm = Math.sqrt(dot(w, w));
    if (norm > 0) {
      for (int i = 0; i < size; i++) {
        w[i] /= norm;
      }
    }
    // (h_j, h_j+1) ← (c h_j + s h_j+1, -s h_j + c h_j+1) by the earlier rotations
    for (int j = 0; j < k; j++) {
      double t = cosine[j] * hessenberg[j][k] + sine[j] * hessenberg[j + 1][k];
      hessenberg[j + 1][k] = -sine[j] * hessenberg[j][k] + cosine[j] * hessenberg[j + 1][k];
      hessenberg[j][k] = t;
    }
    // the new rotation takes h_k+1,k to 0: c = h_kk / r, s = h_k+1,k / r
    double r = Math.hypot(hessenberg[k][k], norm);
    cosine[k] = r == 0 ? 1 : hessenberg[k][k] / r;
    sine[k] = r == 0 ? 0 : norm / r;
    hessenberg[k][k] = r;
    hessenberg[k + 1][k] = norm;
    rotated[k + 1] = -sine[k] * rotated[k]; // |residual| = |g_k+1|
    rotated[k] *= cosine[k];
  }

  private double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
