package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.FamilySolver;
import hemline.validation.reference.KnownLimit;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Holds the guides to the kept result of the catalogue, and the kept result to the cases.
 *
 * <p>With {@code -Dhemline.check=write} the whole catalogue is solved first and all are written,
 * with the residuals of the flow models and a list of the rows that fail and of the known limits
 * that need a new {@code limitError}; with {@code -Dhemline.check.cases=slot,entry/thick-sharp}
 * these folders and cases alone, and the rest is kept.
 */
class CatalogueTest {
  private static final Path TABLE = Path.of("catalogue.csv");
  private static final Path GUIDE = Path.of("..", "README.md");

  /** Names the rows that are not met as well. */
  private static final Path LONG_GUIDE = Path.of("README.md");

  private static final Path RESIDUALS = Path.of("bench", "model-residuals.csv");
  private static final Path TO_UPDATE = Path.of("target", "limits.txt");
  private static final String CURE =
      "write all anew with mvn -pl validation -am test -Dtest=CatalogueTest"
          + " -Dsurefire.failIfNoSpecifiedTests=false -Dhemline.check=write";

  @Test
  void theGuideTellsWhatTheCatalogueGave() throws Exception {
    if ("write".equals(System.getProperty("hemline.check"))) {
      write();
    }
    Catalogue kept = Catalogue.parse(Files.readString(TABLE));
    assertThat(TrustBlock.of(Files.readString(GUIDE)))
        .as("the trust table of the guide; " + CURE)
        .isEqualTo(TrustBlock.text(kept, false));
    assertThat(TrustBlock.of(Files.readString(LONG_GUIDE)))
        .as("the trust table of the validation guide; " + CURE)
        .isEqualTo(TrustBlock.text(kept, true));
    assertThat(kept.rows().stream().map(Catalogue.Row::key))
        .as("rows of the kept catalogue; " + CURE)
        .containsExactlyElementsOf(keys());
    assertThat(Files.readString(RESIDUALS))
        .as("the residuals of the flow models; " + CURE)
        .isEqualTo(ModelRow.csv(ModelRow.of(kept)));
  }

  private static List<String> keys() {
    List<String> keys = new ArrayList<>();
    for (ReferenceCase one : ReferenceCases.all()) {
      one.expected()
          .forEach(
              e ->
                  keys.add(
                      one.name()
                          + ": "
                          + e.quantity()
                          + " = "
                          + Catalogue.text(e.reference().value())));
    }
    return keys;
  }

  private static void write() throws Exception {
    List<ReferenceCase> all = ReferenceCases.all();
    List<String> wanted = Arrays.asList(System.getProperty("hemline.check.cases", "").split(","));
    List<ReferenceCase> cases =
        wanted.equals(List.of(""))
            ? all
            : all.stream()
                .filter(
                    one ->
                        wanted.contains(one.name())
                            || wanted.contains(one.name().substring(0, one.name().indexOf('/'))))
                .toList();
    List<CaseResult> results =
        new CheckStudy(new FamilySolver())
            .run(
                cases,
                Integer.getInteger(
                    "hemline.check.threads", Runtime.getRuntime().availableProcessors()),
                new CancelToken(),
                ProgressListener.NONE);
    Catalogue catalogue = Catalogue.of(results);
    if (cases.size() < all.size()) {
      catalogue =
          Catalogue.parse(Files.readString(TABLE))
              .renewed(catalogue, all.stream().map(ReferenceCase::name).toList());
    }
    Files.writeString(RESIDUALS, ModelRow.csv(ModelRow.of(catalogue)));
    Files.writeString(TABLE, catalogue.csv());
    Files.writeString(GUIDE, TrustBlock.renewed(Files.readString(GUIDE), catalogue, false));
    Files.writeString(
        LONG_GUIDE, TrustBlock.renewed(Files.readString(LONG_GUIDE), catalogue, true));
    StringBuilder limits = new StringBuilder();
    for (CaseResult result : results) {
      for (CheckRow row : result.rows()) {
        KnownLimit limit = row.expected().knownLimit();
        if (limit != null || row.verdict() == CheckRow.Verdict.FAIL) {
          limits
              .append(row.caseName())
              .append(", ")
              .append(row.expected().quantity())
              .append(": ")
              .append(row.verdict().key())
              .append(" (")
              .append(row.status().key())
              .append("), limitError kept ")
              .append(limit == null ? "none" : limit.error())
              .append(", measured ")
              .append(row.relativeError().isEmpty() ? "none" : row.relativeError().getAsDouble())
              .append('\n');
        }
      }
    }
    Files.createDirectories(TO_UPDATE.getParent());
    Files.writeString(TO_UPDATE, limits);
  }

  @Test
  void aMovedFigureChangesTheGuide() {
    Catalogue.Row row =
        new Catalogue.Row(
            "slot/made-up",
            "turbulent",
            "sa",
            "dischargeCoefficient",
            "A",
            "within",
            "0.6",
            "0.01",
            "",
            "0.61",
            "0.01",
            "",
            "0.6",
            "0.62",
            "0.0167",
            "0.03",
            "holds",
            "pass");
    Catalogue met = new Catalogue(List.of(row));
    assertThat(Catalogue.parse(met.csv())).isEqualTo(met);
    assertThat(TrustBlock.text(met, true))
        .contains("| 1 of 1 | 1.7 %, 1.7 % |", "turbulent 1 of 1", "0 failed");
    Catalogue missed =
        Catalogue.parse(met.csv().replace("holds,pass", "misses,FAIL").replace("0.0167", "-0.25"));
    assertThat(TrustBlock.text(missed, true))
        .contains("made-up, dischargeCoefficient \u221225 % (failed)", "turbulent 0 of 1");
    assertThat(TrustBlock.text(missed, false))
        .contains("turbulent 0 of 1")
        .doesNotContain("\u2212");
    String guide = "a\n" + TrustBlock.text(met, false) + "\nb";
    assertThat(TrustBlock.of(TrustBlock.renewed(guide, missed, true)))
        .isEqualTo(TrustBlock.text(missed, true));
  }
}
