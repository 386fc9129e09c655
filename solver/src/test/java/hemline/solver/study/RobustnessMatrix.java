package hemline.solver.study;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.file.LoadedLip;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every shipped lip at gaps, suctions and ground speeds over the whole range: each solve ends
 * converged, or unsteady with the reason, and none is lost.
 *
 * <p>Takes many minutes, so its name keeps it out of the ordinary run. To run it: {@code mvn -pl
 * solver -am test -Dtest=RobustnessMatrix -Dsurefire.failIfNoSpecifiedTests=false}, with {@code
 * -Dhemline.mesh=coarse|medium|fine} for the mesh (medium) and {@code -Dhemline.only=TEXT} for lips
 * whose name contains a text. The counts and every solve that did not converge stand in {@code
 * target/robustness-matrix.txt} afterwards.
 */
@Tag("slow")
class RobustnessMatrix {
  private static final double[] GAPS = {1, 2, 4, 6};
  private static final double[] SUCTIONS = {100, 600, 6000};
  private static final double[] GROUND = {-15, 0, 15};

  @Test
  void everySolveEndsUsable() throws Exception {
    MeshLevel level =
        MeshLevel.valueOf(System.getProperty("hemline.mesh", "medium").toUpperCase(Locale.ROOT));
    String only = System.getProperty("hemline.only", "");
    List<Question> questions = new ArrayList<>();
    List<String> labels = new ArrayList<>();
    for (LoadedLip lip : LipFile.loadFolder(Path.of("..", "profiles"))) {
      if (!lip.profile().name().contains(only)) {
        continue;
      }
      for (double gap : GAPS) {
        for (double suction : SUCTIONS) {
          for (double ground : GROUND) {
            SealSection section = Lips.section(lip.profile(), gap, suction, ground, 0);
            questions.add(Question.of(section));
            labels.add(
                String.format(
                    Locale.ROOT,
                    "%s, gap %.0f mm, %.0f Pa, ground %.0f m/s",
                    lip.profile().name(),
                    gap,
                    suction,
                    ground));
          }
        }
      }
    }
    assertThat(questions).isNotEmpty();
    List<Solved> solved =
        SolvePool.solve(
            questions,
            new FamilySolver(),
            new RunOptions(level, Closure.AUTO, false, 2),
            new CancelToken(),
            ProgressListener.NONE,
            (i, answer) -> {});
    Map<SolveStatus, Integer> counts = new EnumMap<>(SolveStatus.class);
    List<String> unusable = new ArrayList<>();
    StringBuilder report = new StringBuilder();
    for (int i = 0; i < solved.size(); i++) {
      SectionResult result = solved.get(i).answer().result();
      counts.merge(result.status(), 1, Integer::sum);
      if (result.status() != SolveStatus.CONVERGED) {
        report
            .append(labels.get(i))
            .append(": ")
            .append(result.status().key())
            .append(", leak ")
            .append(result.figures().get(Figure.LEAK_FLOW))
            .append(", ")
            .append(result.notices())
            .append('\n');
        boolean told = result.status() == SolveStatus.UNSTEADY && !result.notices().isEmpty();
        if (!told || !result.figures().scalars().containsKey(Figure.LEAK_FLOW)) {
          unusable.add(labels.get(i));
        }
      }
    }
    Files.writeString(
        Path.of("target", "robustness-matrix.txt"), counts + "\n" + report, StandardCharsets.UTF_8);
    assertThat(unusable).as("%s\n%s", counts, report).isEmpty();
  }
}
