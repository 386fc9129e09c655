package hemline.validation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.Ring;
import hemline.shared.result.Figure;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Stations;
import hemline.validation.reference.ExpectedFigure.Comparison;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ReferenceCasesTest {
  private static final Map<String, double[]> SHAPES =
      Map.of(
          "flat", new double[] {4, 28},
          "knife", new double[] {0.25, 1.75},
          "labyrinth", new double[] {5.5, 5.5 * 4 + 3 * 0.5 * 3},
          "round", new double[] {4, 20 + 2 * Math.PI});

  @Test
  void everyRowOfTheLipTableIsACase() {
    Map<String, ReferenceCase> cases =
        ReferenceCases.in("lips").stream()
            .collect(Collectors.toMap(ReferenceCase::name, Function.identity()));
    List<CitedRow> rows = CitedTable.read("lips/lips_laminar").rows();
    assertThat(cases).hasSameSizeAs(rows);
    for (CitedRow row : rows) {
      double groundSpeed = row.number("Ug");
      String motion = groundSpeed < 0 ? "against-leak" : groundSpeed > 0 ? "with-leak" : "still";
      String name = "lips/" + row.text("geometry") + "-re" + row.text("Re_Q") + "-" + motion;
      ReferenceCase one = cases.get(name);
      assertThat(one).as(name).isNotNull();
      DuctSection duct = (DuctSection) ((CaseSetup.Solved) one.setup()).section();
      assertThat(duct.fluid().density()).isEqualTo(1);
      assertThat(duct.fluid().kinematicViscosity()).isEqualTo(1 / row.number("Re_Q"));
      assertThat(duct.drive()).isEqualTo(new Drive.LeakFlow(1));
      assertThat(duct.inflow().inlet()).isEqualTo(DuctSection.Inlet.DEVELOPED);
      assertThat(duct.ground().speed()).isEqualTo(groundSpeed);
      assertThat(duct.walls().upper().speed()).isZero();
      assertThat(duct.measures().stations()).isEqualTo(new Stations(-10, 40));
      assertThat(duct.channel().from()).isEqualTo(-10);
      assertThat(duct.channel().to()).isEqualTo(80);
      assertThat(duct.channel().height()).isEqualTo(8);
      assertThat(duct.gap()).isEqualTo(1);
      assertThat(duct.closure()).isEqualTo("laminar");
      assertShape(duct, SHAPES.get(row.text("geometry")));

      assertThat(one.expected())
          .extracting(ExpectedFigure::quantity)
          .containsExactly(Figure.PRESSURE_DROP.key(), Figure.LIP_FORCE_X.key());
      assertHalf(one.expected().get(0), row.number("K"), row.number("K_err"));
      assertHalf(one.expected().get(1), row.number("Fx"), row.number("F_err"));
      assertThat(one.expected())
          .allSatisfy(e -> assertThat(e.tolerance().relative()).isEqualTo(0.015));
      assertThat(one.sources()).singleElement().asString().contains("finite-element");
      // the table agrees with itself
      assertThat(row.number("Cd") * Math.sqrt(row.number("K"))).isCloseTo(1, within(1e-3));
    }
  }

  /** Width, lowest point and area of the one obstacle. */
  private static void assertShape(DuctSection duct, double[] widthAndArea) {
    assertThat(duct.obstacles()).hasSize(1);
    Ring ring = duct.obstacles().get(0).flatten();
    double left = Arrays.stream(ring.x()).min().orElseThrow();
    double right = Arrays.stream(ring.x()).max().orElseThrow();
    assertThat(left).isZero();
    assertThat(right).isEqualTo(widthAndArea[0]);
    assertThat(Arrays.stream(ring.y()).min()).hasValue(1);
    double area = 0;
    for (int i = 0; i < ring.size(); i++) {
      int j = (i + 1) % ring.size();
      area += 0.5 * (ring.x()[i] * ring.y()[j] - ring.x()[j] * ring.y()[i]);
    }
    assertThat(area).isCloseTo(widthAndArea[1], within(1e-3 * widthAndArea[1]));
  }

  private static void assertHalf(ExpectedFigure expected, double coefficient, double error) {
    assertThat(expected.reference().value())
        .isCloseTo(0.5 * coefficient, within(1e-12 * coefficient));
    assertThat(expected.reference().uncertainty()).isCloseTo(0.5 * error, within(1e-12));
  }

  @Test
  void allCasesAreFound() {
    List<ReferenceCase> all = ReferenceCases.all();
    assertThat(all).containsAll(ReferenceCases.in("lips"));
    assertThat(all).extracting(ReferenceCase::name).doesNotHaveDuplicates();
    assertThat(all)
        .allSatisfy(
            c -> {
              assertThat(c.purpose().title()).as(c.name()).isNotBlank();
              assertThat(c.purpose().proves()).as(c.name()).endsWith(".");
              assertThat(c.purpose().covers()).as(c.name()).isNotBlank();
              assertThat(c.expected()).as(c.name()).isNotEmpty();
              assertThat(c.expected())
                  .as(c.name())
                  .allSatisfy(e -> assertThat(e.tolerance().reason()).isNotBlank());
            });
    assertThat(all).filteredOn(ReferenceCase::fast).isNotEmpty();
    assertThatThrownBy(() -> ReferenceCases.in("none"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aFigureIsJudgedByToleranceAndByBand() {
    ExpectedFigure expected = figure(Comparison.WITHIN, 0.01);
    assertThat(expected.tolerance().largest()).isCloseTo(0.03, within(1e-15));
    assertThat(expected.passes(OptionalDouble.of(-2.029))).isTrue();
    assertThat(expected.passes(OptionalDouble.of(-2.031))).isFalse();
    assertThat(expected.passes(OptionalDouble.of(2))).isFalse();
    assertThat(expected.passes(OptionalDouble.empty())).isFalse();
    assertThat(expected.insideBand(-2.01, -2.02, -2.005)).isTrue();
    assertThat(expected.insideBand(-2.03, -2.04, -2.02)).isFalse();
    assertThatThrownBy(() -> figure(Comparison.WITHIN, -1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aBoundIsJudgedOnOneSide() {
    ExpectedFigure least = figure(Comparison.AT_LEAST, 0);
    assertThat(least.passes(OptionalDouble.of(100))).isTrue();
    assertThat(least.passes(OptionalDouble.of(-2.031))).isFalse();
    ExpectedFigure most = figure(Comparison.AT_MOST, 0);
    assertThat(most.passes(OptionalDouble.of(-100))).isTrue();
    assertThat(most.passes(OptionalDouble.of(-1.969))).isFalse();
  }

  private static ExpectedFigure figure(Comparison comparison, double uncertainty) {
    return new ExpectedFigure(
        "pressureDrop",
        new ExpectedFigure.Reference(-2, uncertainty),
        new ExpectedFigure.Tolerance(0.015, 2, comparison, "made up"),
        new Evidence("made up", "made up", Evidence.Grade.A),
        null);
  }
}
