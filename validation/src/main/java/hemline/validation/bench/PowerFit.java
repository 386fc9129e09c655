package hemline.validation.bench;

/**
 * A power law through points: {@code value = factor * size^exponent}, by least squares on the
 * logarithms.
 *
 * @param factor value at size 1
 * @param exponent slope on logarithmic axes
 * @param worst largest relative distance of a point from the law
 */
public record PowerFit(double factor, double exponent, double worst) {

  /**
   * Fits.
   *
   * @param size two or more unlike positive values; not modified
   * @param value positive, as many; not modified
   */
  public static PowerFit of(double[] size, double[] value) {
    int n = size.length;
    if (n < 2 || value.length != n) {
      throw new IllegalArgumentException("a power law needs two points or more, got " + n);
    }
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < n; i++) {
      meanX += Math.log(size[i]) / n;
      meanY += Math.log(value[i]) / n;
    }
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < n; i++) {
      double dx = Math.log(size[i]) - meanX;
      xx += dx * dx;
      xy += dx * (Math.log(value[i]) - meanY);
    }
    if (!(xx > 0) || !Double.isFinite(xy)) {
      throw new IllegalArgumentException("a power law needs unlike sizes and positive values");
    }
    double exponent = xy / xx;
    double factor = Math.exp(meanY - exponent * meanX);
    double worst = 0;
    for (int i = 0; i < n; i++) {
      worst = Math.max(worst, Math.abs(value[i] / (factor * Math.pow(size[i], exponent)) - 1));
    }
    return new PowerFit(factor, exponent, worst);
  }

  /** Value of the law. */
  public double at(double size) {
    return factor * Math.pow(size, exponent);
  }
}
