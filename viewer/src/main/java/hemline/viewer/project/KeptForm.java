package hemline.viewer.project;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SectionConditions;
import java.util.List;
import java.util.Map;

/** Records in kept files: parts of a group stand in the record that holds the group. */
final class KeptForm {
  private KeptForm() {}

  /** Maps in the order of their keys, so that the same content is the same file. */
  static ObjectMapper json() {
    return new ObjectMapper()
        .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
        .addMixIn(KeptStudy.class, OfStudy.class)
        .addMixIn(StudyQuestion.class, OfQuestion.class)
        .addMixIn(SectionResult.class, OfResult.class)
        .addMixIn(SectionFigures.class, OfFigures.class)
        .addMixIn(LeakPoint.class, OfLeak.class)
        .addMixIn(LeakGrids.class, OfGrids.class)
        .addMixIn(DuctSection.class, OfDuct.class)
        .addMixIn(DuctSection.Walls.class, OfWalls.class);
  }

  private interface OfStudy {
    @JsonUnwrapped
    KeptStudy.Run run();
  }

  private interface OfQuestion {
    @JsonUnwrapped
    StudyQuestion.Held held();

    @JsonUnwrapped
    StudyQuestion.Solving solving();
  }

  private interface OfResult {
    @JsonUnwrapped
    SectionConditions conditions();

    @JsonUnwrapped
    @JsonProperty("measured")
    SectionFigures figures();
  }

  private interface OfFigures {
    @JsonProperty("figures")
    Map<Figure, Estimate> scalars();
  }

  private interface OfLeak {
    @JsonUnwrapped
    SectionConditions conditions();

    @JsonUnwrapped
    @JsonProperty("byGrid")
    LeakGrids grids();
  }

  private interface OfGrids {
    @JsonProperty("grids")
    List<GridLeak> own();
  }

  private interface OfDuct {
    @JsonUnwrapped
    DuctSection.Channel channel();

    @JsonUnwrapped
    DuctSection.Inflow inflow();

    @JsonUnwrapped
    DuctSection.Walls walls();

    @JsonUnwrapped
    DuctSection.Measures measures();
  }

  private interface OfWalls {
    @JsonProperty("lowerWall")
    DuctSection.Wall lower();

    @JsonProperty("upperWall")
    DuctSection.Wall upper();
  }
}
