package hemline.solver.spark;

import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.RunOptions;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Small sections for tests. */
final class Samples {
  static final RunOptions COARSE = new RunOptions(MeshLevel.COARSE, Closure.LAMINAR, false, 2);

  private Samples() {}

  static List<SealSection> sections(int count) throws InputException {
    LipProfile lip = LipFile.load(Path.of("../../profiles/plain-flat-8.json")).profile();
    List<SealSection> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double gap = 2e-4 + 2e-4 * i / count;
      all.add(new SealSection(lip, gap, 20, GroundMotion.STILL, Air.STANDARD, List.of()));
    }
    return all;
  }

  /** Answers of this machine by the number of their section. */
  static Map<Integer, SectionResult> solvedHere(List<SealSection> sections) {
    Map<Integer, SectionResult> results = new TreeMap<>();
    new PoolRunner(new FamilySolver())
        .solve(
            sections,
            COARSE,
            new CancelToken(),
            ProgressListener.NONE,
            (i, result) -> {
              synchronized (results) {
                results.put(i, result);
              }
            });
    return results;
  }
}
