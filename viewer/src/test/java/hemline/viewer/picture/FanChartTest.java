package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.MachineFile;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.RunOptions;
import java.awt.geom.Rectangle2D;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class FanChartTest {
  private static final Pattern NAME =
      Pattern.compile("<text x=\"([0-9.]+)\" y=\"([0-9.]+)\"[^>]*middle\">([0-9.]+ mm[^<]*)<");

  /** Gaps so small that all curves are steep and leave the panel side by side. */
  @Test
  void namesOfCrowdedCurvesKeepOffEachOther() throws Exception {
    Machine crawler =
        MachineFile.read(Path.of("..", "profiles", "machines", "silo-wall-crawler.json"));
    Machine low = crawler.withFloor(crawler.floor().withGaps(0.12));
    MachineBalance balance =
        new MachineStudy(new LeakStudy(new FamilySolver(), InventedStudies.LEAKS))
            .of(
                low,
                List.of(),
                1.5,
                new RunOptions(MeshLevel.COARSE, Closure.AUTO, false, 1),
                new CancelToken(),
                ProgressListener.NONE);
    String svg = FanChart.of(balance).svg();
    List<Rectangle2D> names = new ArrayList<>();
    Matcher m = NAME.matcher(svg);
    while (m.find()) {
      double width = TextWidth.of(m.group(3), 11.5);
      Rectangle2D name =
          new Rectangle2D.Double(
              Double.parseDouble(m.group(1)) - 0.5 * width,
              Double.parseDouble(m.group(2)) - 10,
              width,
              11);
      assertThat(names).noneMatch(name::intersects);
      names.add(name);
    }
    assertThat(names).hasSizeGreaterThan(2);
    assertThat(svg).contains("0.3 mm (static)");
  }
}
