package hemline.validation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CitedTableTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "lips/lips_laminar",
        "cavity/ghia1982_table1_u",
        "cavity/ghia1982_table2_v",
        "cavity/ghia1982_table5_vortex",
        "cavity/botella1998_re1000_u",
        "cavity/botella1998_re1000_v",
        "cavity/botella1998_re1000_extrema",
        "step/gartling1990_re800_summary",
        "step/gartling1990_re800_profiles",
        "channel/dns_profiles",
        "channel/dns_summary",
        "channel/friction_correlations",
        "exact/jeffery_hamel_profiles",
        "exact/jeffery_hamel_summary",
        "exact/plane_slider",
        "exact/slit_stokes",
        "exact/free_streamline_contraction",
        "cases/lips/expected"
      })
  void everyTableHasRowsAndASource(String name) {
    CitedTable table = CitedTable.read(name);
    assertThat(table.rows()).hasSizeGreaterThan(2);
    assertThat(table.columns()).doesNotHaveDuplicates().noneMatch(String::isBlank);
    assertThat(table.source()).startsWith("# ").doesNotContain("%s");
    assertThat(table.citation()).isNotBlank();
  }

  private static CitedRow row(CitedTable table, Predicate<CitedRow> which) {
    return table.rows().stream().filter(which).findFirst().orElseThrow();
  }

  @Test
  void theContractionFollowsItsClosedForm() {
    for (CitedRow row : CitedTable.read("exact/free_streamline_contraction").rows()) {
      double ratio = row.number("b/B");
      double low = 1e-9;
      double high = 1; // upstream over jet speed
      for (int i = 0; i < 100; i++) {
        double k = 0.5 * (low + high);
        if (k / contraction(k) < ratio) {
          low = k;
        } else {
          high = k;
        }
      }
      double expected = ratio == 0 ? Math.PI / (Math.PI + 2) : contraction(low);
      assertThat(row.number("Cc_90deg")).isCloseTo(expected, within(2e-10));
    }
  }

  private static double contraction(double k) {
    return Math.PI / (Math.PI + 2 * (1 / k - k) * Math.atan(k));
  }

  @Test
  void theSliderFollowsItsClosedForm() {
    for (CitedRow row : CitedTable.read("exact/plane_slider").rows()) {
      double a = row.number("h1/h2");
      double load = 6 * (Math.log(a) / ((a - 1) * (a - 1)) - 2 / (a * a - 1));
      assertThat(row.number("W h2^2/(mu U L^2)")).isCloseTo(load, within(1e-9));
      assertThat(row.number("q/(U h2)")).isCloseTo(a / (a + 1), within(1e-9));
      double friction = 4 * Math.log(a) / (a - 1) - 6 / (a + 1);
      assertThat(row.number("F_moving h2/(mu U L)")).isCloseTo(friction, within(1e-9));
    }
  }

  @Test
  void deansLawAndTheSimulationsAgree() {
    for (CitedRow row : CitedTable.read("channel/friction_correlations").rows()) {
      if (row.text("name").equals("Dean1978")) {
        double cf = 0.073 * Math.pow(row.number("Re"), -0.25);
        assertThat(row.number("Cf")).isCloseTo(cf, within(1e-9));
      }
    }
    CitedRow channel =
        row(CitedTable.read("channel/dns_summary"), r -> r.text("case").equals("JCR_392"));
    double dean = 0.073 * Math.pow(channel.number("Re_m=2 delta Ub/nu"), -0.25);
    assertThat(dean / channel.number("Cf=2/Ub+^2")).isBetween(1.0, 1.05);
  }

  @Test
  void wedgeProfilesMeetTheirConstants() {
    CitedTable profiles = CitedTable.read("exact/jeffery_hamel_profiles");
    for (CitedRow constants : CitedTable.read("exact/jeffery_hamel_summary").rows()) {
      List<CitedRow> profile =
          profiles.rows().stream()
              .filter(r -> r.text("half_angle_deg").equals(constants.text("half_angle_deg")))
              .filter(r -> r.text("Re").equals(constants.text("Re")))
              .toList();
      int n = profile.size() - 1;
      assertThat(n).isEven();
      double integral = 0; // Simpson
      for (int i = 0; i <= n; i++) {
        double weight = i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2;
        integral += weight * profile.get(i).number("f") / (3.0 * n);
      }
      assertThat(integral).isCloseTo(constants.number("int_0^1 f deta"), within(1e-5));
      assertThat(profile.get(n).number("df/deta"))
          .isCloseTo(constants.number("f'(1)"), within(1e-6));
    }
  }

  @Test
  void cavityTablesAgreeWithEachOther() {
    CitedTable ghia = CitedTable.read("cavity/ghia1982_table1_u");
    for (CitedRow row : CitedTable.read("cavity/botella1998_re1000_u").rows()) {
      CitedRow same = row(ghia, r -> r.number("y") == row.number("y"));
      assertThat(same.number("u_Re1000")).isCloseTo(row.number("u"), within(0.01));
    }
  }

  @Test
  void cellsMayHoldCommasAndBeEmpty() {
    assertThat(CommaText.parse("a,\"b, \"\"c\"\"\",\n\n1,2,3\n"))
        .containsExactly(List.of("a", "b, \"c\"", ""), List.of("1", "2", "3"));
    assertThatThrownBy(() -> CommaText.parse("a,\"b"))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("quote");
    CitedRow row = new CitedRow(Map.of("x", "", "y", "2.5", "z", "none"));
    assertThat(row.optionalNumber("x")).isEmpty();
    assertThat(row.optionalNumber("y")).hasValue(2.5);
    assertThatThrownBy(() -> row.number("z"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("none");
    assertThatThrownBy(() -> row.text("w"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("[x, y, z]");
    assertThatThrownBy(() -> CitedTable.read("cavity/none"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
