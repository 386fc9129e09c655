package hemline.viewer.picture;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SolveStatus;
import hemline.shared.section.GroundMotion;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

final class SectionPictureTest {

  private static SectionPicture picture(SolveStatus status, GroundMotion motion) {
    return SectionPicture.of(
        SectionScene.of(
            InventedFlow.section(motion),
            InventedFlow.result(status, motion),
            InventedFlow.field()));
  }

  @Test
  void look() throws Exception {
    Path dir = Path.of(System.getProperty("look", "target/look"));
    Files.createDirectories(dir);
    SectionPicture still = picture(SolveStatus.CONVERGED, GroundMotion.STILL);
    Files.write(dir.resolve("still.png"), still.png());
    Files.writeString(dir.resolve("still.svg"), still.svg());
    SectionPicture moving = picture(SolveStatus.UNSTEADY, new GroundMotion(-15, 5));
    Files.write(dir.resolve("moving.png"), moving.png());
    Files.write(dir.resolve("sweep.png"), SweepChart.of(InventedStudies.sweep(), true).png());
    Files.write(dir.resolve("ranking.png"), RankingChart.of(InventedStudies.ranking()).png());
    Files.write(dir.resolve("gaps.png"), GapChart.of(InventedStudies.ranking()).png());
    assertThat(still.svg()).startsWith("<?xml");
  }
}
