package hemline.shared.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.fluid.FluidState;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.Termination.Attempt;
import hemline.shared.result.Termination.Reason;
import hemline.shared.section.SectionConditions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a result is made of: bands, regimes, endings, keys. */
class ResultValuesTest {
  private static final Estimate BAND = new Estimate(10, 1, 0.5, 2, 4, Trend.MONOTONE);

  @Test
  void partsOfABandAddAsSquares() {
    assertThat(BAND.grid()).isEqualTo(1.5);
    assertThat(BAND.low()).isEqualTo(7.5); // 1.5, 2, 2.5
    assertThat(BAND.high()).isCloseTo(10 + Math.sqrt(18.25), within(1e-12));
    assertThat(BAND.model()).isEqualTo(3);
    assertThat(Estimate.exact(-2).low()).isEqualTo(-2);
    assertThat(Estimate.exact(-2).high()).isEqualTo(-2);
  }

  @Test
  void oneMoreIndependentUncertainty() {
    assertThat(BAND.with(0)).isEqualTo(BAND);
    assertThat(BAND.with(3)).isEqualTo(new Estimate(10, 1, 0.5, Math.sqrt(13), 5, Trend.MONOTONE));
  }

  /** A negative factor turns the band round. */
  @Test
  void inAnotherUnit() {
    assertThat(BAND.times(3)).isEqualTo(new Estimate(30, 3, 1.5, 6, 12, Trend.MONOTONE));
    Estimate turned = BAND.times(-2);
    assertThat(turned).isEqualTo(new Estimate(-20, 2, 1, 8, 4, Trend.MONOTONE));
    assertThat(turned.low()).isCloseTo(-2 * BAND.high(), within(1e-12));
    assertThat(turned.high()).isCloseTo(-2 * BAND.low(), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({
    "NaN, 0, 0, 0, 0",
    "Infinity, 0, 0, 0, 0",
    "1, -1, 0, 0, 0",
    "1, 0, -1, 0, 0",
    "1, 0, 0, -1, 0",
    "1, 0, 0, 0, -1",
    "1, NaN, 0, 0, 0",
    "1, 0, 0, 0, Infinity"
  })
  void noNumberLeavesWithoutABand(double v, double n, double i, double low, double high) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Estimate(v, n, i, low, high, Trend.UNKNOWN))
        .withMessageContaining("finite");
  }

  @ParameterizedTest
  @CsvSource({
    "0, LAMINAR",
    "499.9, LAMINAR",
    "500, TRANSITIONAL",
    "-3000, TRANSITIONAL",
    "3000.1, TURBULENT",
    "-1e6, TURBULENT"
  })
  void regimeByGapReynoldsNumber(double reynolds, Regime regime) {
    assertThat(Regime.at(reynolds)).isEqualTo(regime);
  }

  @ParameterizedTest
  @CsvSource({
    "CONVERGED, SETTLED",
    "UNSTEADY, WANDERING",
    "FAILED, DIVERGED",
    "CANCELLED, CANCELLED"
  })
  void endingsOfWhichOnlyTheStatusIsKnown(SolveStatus status, Reason reason) {
    assertThat(Termination.of(status)).isEqualTo(new Termination(Attempt.ACCELERATED, reason, 0));
  }

  /** Keys stand in files for ever: no two alike. */
  @Test
  void keysAreTheirOwn() {
    assertThat(Arrays.stream(Figure.values()).map(Figure::key))
        .doesNotHaveDuplicates()
        .allMatch(key -> key.matches("[a-z][A-Za-z]+"));
    assertThat(Arrays.stream(Figure.values()).map(Figure::symbol)).doesNotHaveDuplicates();
    assertThat(Arrays.stream(Figure.values()).map(Figure::meaning)).doesNotHaveDuplicates();
    assertThat(Arrays.stream(Figure.values()).map(Figure::unit))
        .containsOnly("m2/s", "1", "m", "Pa", "N/m", "N", "W/m");
    assertThat(Stream.of(SolveStatus.values()).map(SolveStatus::key))
        .containsExactly("converged", "unsteady", "failed", "cancelled");
    assertThat(Stream.of(Regime.values()).map(Regime::key))
        .containsExactly("laminar", "transitional", "turbulent");
    assertThat(Stream.of(Attempt.values()).map(Attempt::key))
        .containsExactly("newton", "accelerated", "relaxed", "averaged");
    assertThat(Stream.of(Reason.values()).map(Reason::key))
        .containsExactly("settled", "cycling", "wandering", "stalled", "diverged", "cancelled");
  }

  @ParameterizedTest
  @ValueSource(strings = {"CONVERGED", "UNSTEADY"})
  void usableLeaks(String status) {
    assertThat(point(SolveStatus.valueOf(status)).usable()).isTrue();
    assertThat(point(SolveStatus.FAILED).usable()).isFalse();
    assertThat(point(SolveStatus.CANCELLED).usable()).isFalse();
  }

  private static LeakPoint point(SolveStatus status) {
    return new LeakPoint(
        "lip",
        new SectionConditions(2e-3, 600, 3, 1),
        status,
        Regime.TURBULENT,
        BAND,
        Estimate.exact(0.1),
        List.of(NoticeKind.RIG_BOX.of()),
        LeakGrids.NONE);
  }

  @Test
  void leaksUnderAnotherNameOrWithAnotherValue() {
    LeakPoint p = point(SolveStatus.CONVERGED);
    LeakPoint named = p.named("other");
    assertThat(named.lip()).isEqualTo("other");
    assertThat(named.named("lip")).isEqualTo(p);
    LeakPoint with = p.with(Estimate.exact(1), Estimate.exact(2));
    assertThat(with.discharge()).isEqualTo(Estimate.exact(1));
    assertThat(with.lift()).isEqualTo(Estimate.exact(2));
    assertThat(with.with(BAND, Estimate.exact(0.1))).isEqualTo(p);
  }

  private static LeakOrigin origin(SectionConditions conditions, FluidState air) {
    return new LeakOrigin("a", conditions, air, "coarse", "auto", false);
  }

  /** Another question is another text; −0 is 0. */
  @Test
  void originsTellQuestionsApart() {
    SectionConditions at = new SectionConditions(2e-3, 600, 3, 1);
    FluidState air = new FluidState(1.2, 1.5e-5);
    LeakOrigin origin = origin(at, air);
    assertThat(origin.text())
        .isEqualTo(
            "lip a\ngap 0.002\nsuction 600.0\nground 3.0 1.0\nair 1.2 1.5E-5\nmesh coarse\n"
                + "flow model auto false\n");
    assertThat(
            Stream.of(
                    origin,
                    new LeakOrigin("b", at, air, "coarse", "auto", false),
                    origin(new SectionConditions(3e-3, 600, 3, 1), air),
                    origin(new SectionConditions(2e-3, 601, 3, 1), air),
                    origin(new SectionConditions(2e-3, 600, 1, 3), air),
                    origin(at, new FluidState(1.3, 1.5e-5)),
                    origin(at, new FluidState(1.2, 1.6e-5)),
                    new LeakOrigin("a", at, air, "fine", "auto", false),
                    new LeakOrigin("a", at, air, "coarse", "sst", false),
                    new LeakOrigin("a", at, air, "coarse", "auto", true))
                .map(LeakOrigin::text))
        .doesNotHaveDuplicates();
    LeakOrigin still = origin(new SectionConditions(2e-3, 600, 0, 0), air);
    LeakOrigin minus = origin(new SectionConditions(2e-3, 600, -0.0, 0), air);
    assertThat(minus.text()).isEqualTo(still.text());
  }

  /** What a result was made of may change afterwards; the result does not. */
  @Test
  void resultsKeepTheirOwnCopies() {
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    figures.put(Figure.LEAK_FLOW, BAND);
    List<Notice> notices = new ArrayList<>(List.of(NoticeKind.RIG_BOX.of()));
    SectionResult result =
        new SectionResult(
            "lip",
            new SectionConditions(2e-3, 600, 0, 0),
            SolveStatus.CONVERGED,
            Regime.TURBULENT,
            "sst",
            new SectionFigures(figures, List.of(), List.of(), List.of()),
            notices,
            List.of());
    figures.clear();
    notices.clear();
    assertThat(result.figures().scalars()).containsOnly(Map.entry(Figure.LEAK_FLOW, BAND));
    assertThat(result.notices()).hasSize(1);
  }
}
