package example;

import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Figure;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionStudy;
import hemline.solver.study.SweepStudy;
import java.nio.file.Path;
import java.util.List;

/** Solves a lip, sweeps its gap and prints each leak with its band. Argument: a lip file. */
public final class LeakOfALip {
  public static void main(String[] args) throws Exception {
    LipProfile lip = LipFile.load(Path.of(args[0])).profile();
    var section = new SealSection(lip, 3e-4, 20, GroundMotion.STILL, Air.STANDARD, List.of());
    var options = new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 2);
    var solver = new FamilySolver();
    var cancel = new CancelToken();
    var one = new SectionStudy(solver).run(section, options, cancel, ProgressListener.NONE);
    System.out.println(lip.name() + ": " + one.result().status().key());
    var gaps = List.of(2e-4, 3e-4);
    var sweep = new SweepStudy(solver);
    for (var at : sweep.overGaps(section, gaps, options, cancel, ProgressListener.NONE).points()) {
      var leak = at.figures().get(Figure.LEAK_FLOW).times(1e3);
      System.out.printf(
          "gap %.1f mm: %.4f (%.4f to %.4f) L/s per m%n",
          1e3 * at.conditions().gap(), leak.value(), leak.low(), leak.high());
    }
  }

  private LeakOfALip() {}
}
