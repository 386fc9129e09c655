package hemline.solver.spark;

import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import java.util.List;

/** Asks a cluster for sample sections and prints each answer on a line behind its number. */
final class Driver {
  private Driver() {}

  /**
   * Start.
   *
   * @param args master, number of sections
   */
  public static void main(String[] args) throws Exception {
    List<SealSection> sections = Samples.sections(Integer.parseInt(args[1]));
    new SparkRunner(args[0])
        .solve(
            sections,
            Samples.COARSE,
            new CancelToken(),
            ProgressListener.NONE,
            (i, result) -> System.out.println(i + " " + SectionText.of(result)));
    System.out.println("done");
  }
}
