package hemline.solver.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Propagation of distributions by drawing them (JCGM 101:2008), adaptively (7.9): blocks of draws
 * follow until the ends of all intervals are known to a tenth of the standard uncertainty. Draws
 * always begin alike, so that the same measurement gives the same numbers.
 */
public final class MonteCarlo {
  private static final long SEED = 20081101;
  private static final int BLOCK = 2_000;
  private static final int LEAST_BLOCKS = 5;
  private static final int MOST_BLOCKS = 50;

  /** Part of a standard uncertainty to which the ends are known. */
  private static final double TOLERANCE = 0.1;

  private MonteCarlo() {}

  /**
   * Result for one output.
   *
   * @param mean of the draws
   * @param standardUncertainty standard deviation of the draws
   * @param low end of the probabilistically symmetric interval
   * @param high end of it
   */
  public record Drawn(double mean, double standardUncertainty, double low, double high) {}

  /**
   * Draws.
   *
   * @param inputs uncorrelated
   * @param probability of the intervals, above 0 and below 1
   */
  public static List<Drawn> of(
      List<InputQuantity> inputs, Propagation.Model model, double probability) {
    RandomGenerator chance = new Well19937c(SEED);
    List<List<Drawn>> blocks = new ArrayList<>();
    while (blocks.size() < MOST_BLOCKS) {
      blocks.add(block(inputs, model, probability, chance));
      if (blocks.size() >= LEAST_BLOCKS && settled(blocks)) {
        break;
      }
    }
    List<Drawn> means = new ArrayList<>();
    for (int k = 0; k < blocks.get(0).size(); k++) {
      means.add(mean(blocks, k));
    }
    return means;
  }

  private static List<Drawn> block(
      List<InputQuantity> inputs,
      Propagation.Model model,
      double probability,
      RandomGenerator chance) {
    double[] x = new double[inputs.size()];
    double[][] outputs = new double[0][0];
    for (int draw = 0; draw < BLOCK; draw++) {
      for (int i = 0; i < x.length; i++) {
        x[i] = draw(inputs.get(i), chance);
      }
      double[] y = model.at(x);
      if (draw == 0) {
        outputs = new double[y.length][BLOCK];
      }
      for (int k = 0; k < y.length; k++) {
        outputs[k][draw] = y[k];
      }
    }
    List<Drawn> drawn = new ArrayList<>();
    int below = (int) Math.round(0.5 * (1 - probability) * BLOCK);
    for (double[] values : outputs) {
      Arrays.sort(values);
      double mean = Arrays.stream(values).average().orElseThrow();
      double square = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
      drawn.add(
          new Drawn(
              mean, Math.sqrt(square / (BLOCK - 1)), values[below], values[BLOCK - 1 - below]));
    }
    return drawn;
  }

  /** JCGM 101, 6.4: rectangular, normal and Student's distributions by their inverse functions. */
  private static double draw(InputQuantity input, RandomGenerator chance) {
    double u = input.standardUncertainty();
    if (u == 0) {
      return input.estimate();
    }
    return input.estimate()
        + switch (input.shape()) {
          case NORMAL -> u * chance.nextGaussian();
          case RECTANGULAR -> u * Math.sqrt(3) * (2 * chance.nextDouble() - 1);
          case STUDENT -> u * student(input.degreesOfFreedom(), chance);
        };
  }

  private static double student(double degreesOfFreedom, RandomGenerator chance) {
    return Double.isInfinite(degreesOfFreedom)
        ? chance.nextGaussian()
        : new TDistribution(chance, degreesOfFreedom).sample();
  }

  /** True when twice the standard deviation of the mean ends is small enough, 7.9.4. */
  private static boolean settled(List<List<Drawn>> blocks) {
    int h = blocks.size();
    for (int k = 0; k < blocks.get(0).size(); k++) {
      Drawn mean = mean(blocks, k);
      double low = 0;
      double high = 0;
      for (List<Drawn> block : blocks) {
        low += Math.pow(block.get(k).low() - mean.low(), 2);
        high += Math.pow(block.get(k).high() - mean.high(), 2);
      }
      double unsure = 2 * Math.sqrt(Math.max(low, high) / (h * (h - 1.0)));
      if (unsure > TOLERANCE * mean.standardUncertainty()) {
        return false;
      }
    }
    return true;
  }

  private static Drawn mean(List<List<Drawn>> blocks, int k) {
    double n = blocks.size();
    double mean = 0;
    double u = 0;
    double low = 0;
    double high = 0;
    for (List<Drawn> block : blocks) {
      mean += block.get(k).mean() / n;
      u += block.get(k).standardUncertainty() / n;
      low += block.get(k).low() / n;
      high += block.get(k).high() / n;
    }
    return new Drawn(mean, u, low, high);
  }
}
