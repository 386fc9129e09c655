package hemline.validation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class KnownLimitTest {

  @Test
  void theTextTakesItsFiguresFromTheRun() {
    KnownLimit limit = new KnownLimit(-0.13, "lift {error} low, at {value}");
    assertThat(limit.told(0.018361, -0.13549)).isEqualTo("lift 14 % low, at 0.0184");
  }

  @Test
  void aFigureOfItsOwnIsRefused() {
    assertThatThrownBy(() -> new KnownLimit(0.1, "11 % too high"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("11 %");
    assertThatThrownBy(() -> new KnownLimit(0.1, "{fault} too high"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new KnownLimit(0, "too high"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void worseMeansFurtherOffOrOnTheOtherSide() {
    KnownLimit limit = new KnownLimit(-0.2, "too low");
    assertThat(limit.bounds(-0.1)).isTrue();
    assertThat(limit.bounds(-0.219)).isTrue();
    assertThat(limit.bounds(-0.221)).isFalse();
    assertThat(limit.bounds(0.1)).isFalse();
  }

  @Test
  void errorsAreRelativeToTheReferenceUnlessItIsZero() {
    assertThat(figure(-0.5, 1).size()).isEqualTo(0.5);
    assertThat(figure(0, 3).size()).isEqualTo(3);
  }

  @Test
  void aBandAsWideAsTheValueHoldsNothing() {
    assertThat(figure(1, 1).insideBand(1, 0.6, 1.4)).isTrue();
    assertThat(figure(1, 1).insideBand(1, 0.5, 1.5)).isFalse();
    // a value near zero on a scale of its own
    assertThat(figure(0.01, 1).insideBand(0.02, 0, 0.04)).isTrue();
    assertThat(figure(0, 1).insideBand(0.1, -0.5, 0.5)).isFalse();
  }

  private static ExpectedFigure figure(double reference, double scale) {
    return new ExpectedFigure(
        "made up",
        new ExpectedFigure.Reference(reference, 0),
        new ExpectedFigure.Tolerance(0.1, scale, ExpectedFigure.Comparison.WITHIN, "made up"),
        new Evidence("made up", "made up", Evidence.Grade.A),
        null);
  }
}
