package hemline.validation.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.Estimate;
import hemline.shared.result.SolveStatus;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.validation.reference.CaseSetup;
import hemline.validation.reference.ProfileReference;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.reference.ReferenceCases;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class TurbulentCasesTest {

  private static ComputedCase.Outcome solve(ReferenceCase one) {
    return TurbulentCases.BY_KEY
        .get(((CaseSetup.Computed) one.setup()).key())
        .solve(one, new CancelToken(), ProgressListener.NONE);
  }

  private static ReferenceCase named(String name) {
    return ReferenceCases.in("turbulent-gap").stream()
        .filter(one -> one.name().equals("turbulent-gap/" + name))
        .findFirst()
        .orElseThrow();
  }

  private static double finest(ComputedCase.Outcome outcome, ReferenceCase one, String quantity) {
    for (int k = 0; k < one.expected().size(); k++) {
      Measured measured = outcome.quantities().get(k);
      if (one.expected().get(k).quantity().equals(quantity) && measured != null) {
        List<Measured.GridPoint> grids = measured.grids();
        return grids.get(grids.size() - 1).value();
      }
    }
    throw new AssertionError(one.name() + " does not measure " + quantity);
  }

  @Test
  void everySetUpIsACase() {
    Set<String> used =
        ReferenceCases.all().stream()
            .map(ReferenceCase::setup)
            .filter(CaseSetup.Computed.class::isInstance)
            .map(setup -> ((CaseSetup.Computed) setup).key())
            .collect(Collectors.toSet());
    assertThat(used).containsAll(TurbulentCases.BY_KEY.keySet());
    for (String key : TurbulentCases.BY_KEY.keySet()) {
      assertThat(ComputedCases.of(key)).as(key).isSameAs(TurbulentCases.BY_KEY.get(key));
    }
  }

  @Test
  void frictionOfBothWallsBalancesThePressure() {
    ReferenceCase one = named("couette-poiseuille-re12000");
    ComputedCase.Outcome outcome = solve(one);
    assertThat(outcome.status()).isEqualTo(SolveStatus.CONVERGED);
    double sum =
        finest(outcome, one, "friction coefficient of ceiling")
            + finest(outcome, one, "friction coefficient of ground");
    // 2 (tau_1 + tau_2) = 2 (-dp/dx) h with -dp/dx = 2 P nu U / h^2
    double given = 4 * 13.238515 / 11_995.2;
    assertThat(sum).isCloseTo(given, within(1e-4 * given));
    assertThat(outcome.profiles()).singleElement().satisfies(this::spansTheGap);
  }

  private void spansTheGap(ProfileCurve curve) {
    List<ProfileReference.Point> points = curve.computed();
    assertThat(points.get(0).value()).isEqualTo(1);
    assertThat(points.get(points.size() - 1).value()).isZero();
    assertThat(points)
        .isSortedAccordingTo(Comparator.comparingDouble(ProfileReference.Point::place));
  }

  @Test
  void bothWallsOfAChannelFeelTheSameAndTheBandKnowsTheOtherClosure() {
    ReferenceCase one = named("channel-logarithmic-layer");
    ComputedCase.Outcome outcome = solve(one);
    double ceiling = finest(outcome, one, "friction coefficient of ceiling");
    double ground = finest(outcome, one, "friction coefficient of ground");
    assertThat(ground).isCloseTo(ceiling, within(1e-4 * ceiling));
    Measured measured = outcome.quantities().get(0);
    assertThat(measured).isNotNull();
    Estimate band = measured.estimate();
    assertThat(band.modelLow() + band.modelHigh()).isPositive();
  }
}
