package hemline.viewer.format;

import hemline.shared.result.Calibration;
import hemline.solver.rig.Comparison;
import hemline.solver.rig.Verdict;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Phrases about a measurement beside its prediction. */
public final class CompareWords {
  /** Where a rig is built or read. */
  public static final String BLOWER_CAUTION =
      "A blower draws in fingers, hair and loose parts and may burst: put guards over inlet, outlet"
          + " and drive, and stop it before a hand comes near.";

  /** Where a box stands under suction. */
  public static final String BOX_CAUTION =
      "A box under suction may cave in at once: build it for more than the blower can reach, keep a"
          + " relief opening, wear glasses, and let air in slowly before the lid is lifted; fingers"
          + " under the lip are pinched.";

  /** Where a blower runs. */
  public static final String HEARING_CAUTION =
      "Blowers are loud: protect your hearing and that of others in the room.";

  /** All that is to be minded at a rig. */
  public static final List<String> CAUTIONS = List.of(BLOWER_CAUTION, BOX_CAUTION, HEARING_CAUTION);

  private CompareWords() {}

  /** A verdict in a word or two. */
  public static String verdict(Verdict verdict) {
    return switch (verdict) {
      case AGREES -> "agrees";
      case DIFFERS -> "differs";
      case CANNOT_TELL -> "cannot tell";
      case NO_PREDICTION -> "no prediction";
    };
  }

  /** A share in per cent: "4.2 %". */
  public static String percent(double share) {
    return Digits.plain(100 * share, 2) + " %";
  }

  /** A difference in per cent with its sign: "+4.2 %". */
  public static String signedPercent(double share) {
    return (share < 0 ? "\u2212" : "+") + percent(Math.abs(share));
  }

  /** The verdict over all in a few words. */
  public static String brief(Comparison c) {
    return verdict(c.mean().verdict())
        + (c.mean().verdict() == Verdict.NO_PREDICTION
            ? ""
            : ": predicted less measured "
                + signedPercent(c.mean().error())
                + " \u00b1 "
                + percent(c.mean().uncertainty())
                + " in the mean (95 %)");
  }

  /** The verdict over all in one sentence. */
  public static String overall(Comparison c) {
    if (c.mean().verdict() == Verdict.NO_PREDICTION) {
      return "No point has a usable prediction; there is nothing to compare.";
    }
    String mean =
        "the prediction lies "
            + percent(Math.abs(c.mean().error()))
            + (c.mean().error() < 0 ? " below" : " above")
            + " the measurement in the mean, known within "
            + percent(c.mean().uncertainty())
            + " (95 %)";
    return switch (c.mean().verdict()) {
      case AGREES -> "Agrees: " + mean + ".";
      case DIFFERS -> "Differs: " + mean + ", and the points lie outside the prediction's bands.";
      case CANNOT_TELL ->
          "Cannot tell: "
              + mean
              + "; a difference of "
              + percent(c.finer().matters())
              + ", which matters, could hide in that.";
      case NO_PREDICTION -> "";
    };
  }

  /**
   * Why a calibration is not to be kept, in one sentence; empty where it may be.
   *
   * @param learnt what the comparison teaches; null for nothing
   */
  public static String notKept(Comparison c, @Nullable Calibration learnt) {
    if (c.relative()) {
      return "Suction alone was read, which teaches no calibration.";
    }
    if (c.mean().verdict() == Verdict.NO_PREDICTION) {
      return "Without a prediction there is no calibration.";
    }
    if (!c.diagnosis().teaches()) {
      return "A fault of the rig was found: mend it and measure anew before a calibration is kept.";
    }
    return learnt == null
        ? "The line through measured over predicted C_d has a slope below 0.5 or above 2: no"
            + " calibration but a fault; check units, lip file and rig."
        : "";
  }
}
