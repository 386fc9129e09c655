package hemline.viewer.page;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.Air;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.solver.study.SectionStudy;
import hemline.viewer.format.Cautions;
import hemline.viewer.format.Digits;
import hemline.viewer.format.FigureHelp;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page on a real section, solved on coarse grids in slow air. */
final class SectionPageTest {
  private static final RunOptions OPTIONS =
      new RunOptions(MeshLevel.COARSE, Closure.LAMINAR, false, 1);
  private static SealSection section;
  private static SectionAnswer answer;
  private static String page = "";

  @BeforeAll
  static void solve() {
    Outline box =
        new Outline(
            List.of(
                new Vertex(0, 0),
                new Vertex(4e-3, 0),
                new Vertex(4e-3, 5e-3),
                new Vertex(0, 5e-3)));
    LipProfile lip = new LipProfile("a <b> & \"c\"", "flat", "", box, 2, List.of());
    section = new SealSection(lip, 0.5e-3, 20, new GroundMotion(0, 0), Air.STANDARD, List.of());
    answer =
        new SectionStudy(new FamilySolver())
            .run(section, OPTIONS, new CancelToken(), ProgressListener.NONE);
    SectionResult r = answer.result();
    List<Notice> notices = new ArrayList<>(r.notices());
    notices.add(NoticeKind.FORMER.of("Mind the step."));
    SectionResult told =
        new SectionResult(
            r.name(),
            r.conditions(),
            r.status(),
            r.regime(),
            r.closure(),
            r.figures(),
            notices,
            r.grids());
    page =
        PageHtml.of(
            SectionPage.of(
                section,
                told,
                answer.field(),
                new Estimate(0.93, 0.02, 0, 0, 0, Estimate.Trend.MONOTONE),
                OPTIONS,
                "25 Nov 2026, 12:00"));
  }

  @Test
  void itStandsByItself() {
    assertThat(page).startsWith("<!DOCTYPE html>").doesNotContain("<script");
    Matcher source = Pattern.compile("(?:src|href)=\"([^\"]{0,30})").matcher(page);
    int pictures = 0;
    while (source.find()) {
      assertThat(source.group(1)).startsWith("data:image/svg+xml;base64,");
      pictures++;
    }
    assertThat(pictures).as("streamlines, convergence, mesh").isEqualTo(3);
    assertThat(page).contains("a &lt;b&gt; &amp; &quot;c&quot;").doesNotContain("a <b>");
  }

  @Test
  void itTellsInputsFiguresMeshWarningsAndVersion() {
    Estimate leak = answer.result().figures().get(Figure.LEAK_FLOW);
    assertThat(page)
        .contains(Digits.value(leak, 1000))
        .contains("leak over that of a flat lip")
        .contains("0.930")
        .contains("gap 0.5 mm")
        .contains("asked laminar, used laminar")
        .contains("25 Nov 2026, 12:00")
        .contains("Hemline 0.1.0")
        .contains("Mind the step.");
    answer
        .result()
        .grids()
        .forEach(grid -> assertThat(page).contains(">" + grid.cells() + "</td>"));
    Cautions.all().forEach(c -> assertThat(page).contains(c));
    assertThat(page).doesNotContain("NaN").doesNotContain("null");
  }

  @Test
  void itsPicturesAreWhole() {
    Matcher data = Pattern.compile("base64,([A-Za-z0-9+/=]+)").matcher(page);
    List<String> texts = new ArrayList<>();
    while (data.find()) {
      texts.add(
          new String(Base64.getDecoder().decode(data.group(1)), StandardCharsets.UTF_8).strip());
    }
    assertThat(texts).allMatch(svg -> svg.startsWith("<") && svg.endsWith("</svg>"));
    assertThat(texts).noneMatch(svg -> svg.contains("NaN"));
    assertThat(texts.get(1)).contains("cell size over that of the finest grid");
    assertThat(texts.get(2)).contains("finest grid");
  }

  @Test
  void everyFigureExplainsItself() {
    for (Figure figure : Figure.values()) {
      FigureHelp help = FigureHelp.of(figure);
      assertThat(help.definition()).startsWith(figure.symbol());
      assertThat(help.unit()).isNotBlank();
      assertThat(help.judgement()).as(figure.key()).doesNotContain("README");
      assertThat(help.text()).contains("Unit: ");
    }
  }
}
