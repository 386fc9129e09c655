package hemline.viewer.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hemline.validation.reference.ReferenceCases;
import hemline.validation.run.CaseResult;
import hemline.viewer.page.CheckPage;
import hemline.viewer.page.PageHtml;
import hemline.viewer.picture.CheckPlot;
import hemline.viewer.picture.TrustChart;
import java.io.StringReader;
import java.util.List;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

class CheckFilesTest {
  private static List<CaseResult> results(double miss) {
    return ReferenceCases.all().stream()
        .map(one -> InventedChecks.answer(one, true, miss))
        .toList();
  }

  @Test
  void theDocumentKeepsItsContract() throws Exception {
    JsonNode document = new ObjectMapper().readTree(CheckDocument.text(results(0.5), true, 1));
    assertThat(document.get("schema").asText()).isEqualTo("hemline.check/1");
    assertThat(document.get("rows").size()).isGreaterThanOrEqualTo(80);
    for (JsonNode row : document.get("rows")) {
      for (String key :
          List.of(
              "case",
              "quantity",
              "computed",
              "reference",
              "referenceUncertainty",
              "tolerance",
              "source",
              "pass")) {
        assertThat(row.has(key)).as("%s in %s", key, row.get("case")).isTrue();
      }
      JsonNode computed = row.get("computed");
      assertThat(computed.get("low").asDouble())
          .isLessThanOrEqualTo(computed.get("value").asDouble());
      assertThat(computed.get("high").asDouble())
          .isGreaterThanOrEqualTo(computed.get("value").asDouble());
      assertThat(row.get("source").asText()).isNotBlank();
    }
    assertThat(document.get("summary").get("failed").asInt()).isZero();
  }

  @Test
  void theTableHasALineForEachRowWithEqualColumns() {
    String csv = CheckCsv.of(results(0.5));
    List<String> lines = csv.lines().toList();
    int rows = results(0.5).stream().mapToInt(r -> r.rows().size()).sum();
    assertThat(lines).hasSize(rows + 1);
    Pattern quoted = Pattern.compile("\"[^\"]*\"");
    long columns = commas(lines.get(0));
    assertThat(lines)
        .allSatisfy(
            line -> assertThat(commas(quoted.matcher(line).replaceAll(""))).isEqualTo(columns));
  }

  private static long commas(String line) {
    return line.chars().filter(c -> c == ',').count();
  }

  @Test
  void thePageStandsAlone() {
    String page = PageHtml.of(CheckPage.of(results(0.5)));
    assertThat(page).startsWith("<!DOCTYPE html>").endsWith("</html>\n");
    assertThat(page).doesNotContain("href=\"http", "@import", "NaN", "<?xml");
    assertThat(page)
        .contains("How far to trust it", "cavity/re1000", "src=\"data:image/svg+xml;base64,");
    assertThat(page).isEqualTo(PageHtml.of(CheckPage.of(results(0.5))));
    assertThat(page).doesNotContain("No reason is known");
    assertThat(PageHtml.of(CheckPage.of(results(3)))).contains("No reason is known");
  }

  @Test
  void plotsAreSoundAndStayOnTheirSheet() throws Exception {
    for (CaseResult result : results(0.5)) {
      if (CheckPlot.hasErrors(result)) {
        sound(CheckPlot.errors(result).svg());
      }
      for (var curve : result.profiles()) {
        sound(CheckPlot.profile(curve).svg());
      }
    }
    sound(TrustChart.of(results(0.5)).svg());
    assertThat(TrustChart.of(results(0.5)).png()).isNotEmpty();
  }

  private static void sound(String svg) throws Exception {
    var root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(svg)))
            .getDocumentElement();
    double width = Double.parseDouble(root.getAttribute("width"));
    double height = Double.parseDouble(root.getAttribute("height"));
    var texts = root.getElementsByTagName("text");
    assertThat(texts.getLength()).isPositive();
    for (int k = 0; k < texts.getLength(); k++) {
      var attributes = texts.item(k).getAttributes();
      assertThat(Double.parseDouble(attributes.getNamedItem("x").getNodeValue()))
          .isBetween(0.0, width);
      assertThat(Double.parseDouble(attributes.getNamedItem("y").getNodeValue()))
          .isBetween(0.0, height);
    }
  }
}
