package hemline.validation.bench;

import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One section of the campaign on which numerical bands are judged.
 *
 * @param name lip, gap, suction and ground speed, comma-separated as in the table
 * @param section what is solved
 */
record CampaignSection(String name, SealSection section) {
  private static final double[] GAPS = {0.0005, 0.001, 0.002, 0.0035, 0.006};
  private static final double[] SUCTIONS = {100, 600, 2000, 6000};
  private static final double[] GROUNDS = {0, 10, -10};

  /** Jet speed over its ideal value by which the gap Reynolds number is guessed. */
  private static final double TYPICAL_DISCHARGE = 0.7;

  /** Gap Reynolds number from which sections are turbulent. */
  private static final double TURBULENT = 1000;

  /**
   * All lips of some folders at five gaps each; suction and ground speed go round from lip to lip.
   *
   * @throws InputException when a lip is faulty
   */
  static List<CampaignSection> all(List<Path> folders) throws InputException {
    List<LoadedLip> lips = new ArrayList<>();
    for (Path folder : folders) {
      lips.addAll(LipFile.loadFolder(folder));
    }
    List<CampaignSection> all = new ArrayList<>();
    for (int i = 0; i < lips.size(); i++) {
      for (int j = 0; j < GAPS.length; j++) {
        int s = (i + j) % SUCTIONS.length;
        while (reynolds(GAPS[j], SUCTIONS[s]) < TURBULENT) {
          s++;
        }
        all.add(of(lips.get(i), GAPS[j], SUCTIONS[s], GROUNDS[(i + 2 * j) % GROUNDS.length]));
      }
    }
    return all;
  }

  private static double reynolds(double gap, double suction) {
    double jet = TYPICAL_DISCHARGE * Math.sqrt(2 * suction / Air.STANDARD.density());
    return jet * gap / Air.STANDARD.kinematicViscosity();
  }

  private static CampaignSection of(LoadedLip lip, double gap, double suction, double ground) {
    String name =
        String.format(
            Locale.ROOT,
            "%s,%s,%.0f,%.0f",
            lip.profile().name().replace(',', ' '),
            1000 * gap,
            suction,
            ground);
    return new CampaignSection(
        name,
        new SealSection(
            lip.profile(), gap, suction, new GroundMotion(ground, 0), Air.STANDARD, List.of()));
  }
}
