package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hemline.solver.grid.MeshLevel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CampaignTest {
  private static final List<Path> LIPS =
      List.of(
          Path.of("..", "profiles"),
          Path.of("src", "main", "resources", "hemline", "validation", "campaign"));

  @TempDir Path folder;

  @Test
  void sectionsAreManyDifferentAndReachAllConditions() throws Exception {
    List<CampaignSection> all = CampaignSection.all(LIPS);
    assertThat(all).hasSizeGreaterThanOrEqualTo(120);
    assertThat(new HashSet<>(all.stream().map(CampaignSection::name).toList())).hasSameSizeAs(all);
    for (double suction : new double[] {100, 600, 2000, 6000}) {
      assertThat(all).anyMatch(s -> s.section().suction() == suction);
    }
    for (double ground : new double[] {-10, 0, 10}) {
      assertThat(all).anyMatch(s -> s.section().ground().speed() == ground);
    }
  }

  @Test
  void goesOnBehindWholeSectionsOnly() throws Exception {
    Path table = folder.resolve("campaign.csv");
    String tail = ",sst,2,900,CONVERGED,100,0.1,0.7,0.1,1,0.1";
    String whole = ("whole,2,600,0" + tail + "\n").repeat(4);
    Files.writeString(table, Campaign.HEAD + "\n" + whole + "cut,2,600,0" + tail + "\ncut,2,6");
    CampaignSection one = CampaignSection.all(LIPS).get(0);
    new Campaign(table, MeshLevel.MEDIUM, line -> {})
        .run(List.of(new CampaignSection("whole,2,600,0", one.section())), 1);
    assertThat(Files.readString(table)).isEqualTo(Campaign.HEAD + "\n" + whole);
  }

  @Test
  void leavesAnotherTableAlone() throws Exception {
    Path table = folder.resolve("campaign.csv");
    Files.writeString(table, "something else\n");
    assertThatThrownBy(() -> new Campaign(table, MeshLevel.MEDIUM, line -> {}).run(List.of(), 1))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("another campaign");
    assertThat(Files.readString(table)).isEqualTo("something else\n");
  }
}
