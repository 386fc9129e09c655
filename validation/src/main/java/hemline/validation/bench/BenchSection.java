package hemline.validation.bench;

import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * One section of the fixed set whose cost is measured: a demonstration lip at 2 mm gap in standard
 * air over still ground.
 *
 * @param lip file name of the lip without its ending
 * @param section what is solved
 */
public record BenchSection(String lip, SealSection section) {
  private static final double GAP = 0.002;

  /** Suction of the silo-wall crawler, an invented figure: turbulent gap flow. */
  public static final double CRAWLER = 600;

  /** A suction, Pa, at which the same gaps are laminar. */
  public static final double FAINT = 20;

  private static final List<String> TURBULENT =
      List.of(
          "plain-flat-8",
          "plain-flat-14",
          "chamfered-flat",
          "knife-fin",
          "round-nose",
          "undercut-hook",
          "labyrinth-two-teeth",
          "labyrinth-three-teeth",
          "labyrinth-five-teeth",
          "teeth-into-leak",
          "teeth-with-leak",
          "vortex-trap-one-pocket",
          "vortex-trap-two-pockets");

  private static final List<String> LAMINAR =
      List.of("plain-flat-8", "round-nose", "labyrinth-three-teeth", "vortex-trap-one-pocket");

  /**
   * The whole set: every demonstration lip at {@link #CRAWLER}, four of them at {@link #FAINT}.
   *
   * @param profiles folder of the demonstration lips
   * @throws InputException when a lip is missing or faulty
   */
  public static List<BenchSection> all(Path profiles) throws InputException {
    List<BenchSection> all = new ArrayList<>();
    for (String lip : TURBULENT) {
      all.add(of(profiles, lip, CRAWLER));
    }
    for (String lip : LAMINAR) {
      all.add(of(profiles, lip, FAINT));
    }
    return all;
  }

  /**
   * One section of the set.
   *
   * @param profiles folder of the demonstration lips
   * @param lip file name without its ending
   * @param suction Pa
   * @throws InputException when the lip is missing or faulty
   */
  public static BenchSection of(Path profiles, String lip, double suction) throws InputException {
    return new BenchSection(
        lip,
        new SealSection(
            LipFile.load(profiles.resolve(lip + ".json")).profile(),
            GAP,
            suction,
            GroundMotion.STILL,
            Air.STANDARD,
            List.of()));
  }
}
