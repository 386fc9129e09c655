package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A dip of the ground passing under each edge in turn. It passes faster than the floor moves, so
 * the ride height stays; the plenum fills in milliseconds, so the suction follows at once.
 */
final class StepStudy {
  private StepStudy() {}

  static List<StepCrossing> of(PlenumBalance balance, Bands<PlenumState> before) {
    if (balance.machine().step() == null) {
      return List.of();
    }
    List<StepCrossing> crossings = new ArrayList<>();
    for (int edge = 0; edge < balance.machine().floor().edges().size(); edge++) {
      crossings.add(crossing(balance, edge, before));
    }
    return crossings;
  }

  private static StepCrossing crossing(PlenumBalance balance, int edge, Bands<PlenumState> before) {
    PlenumState value = over(balance, edge, Side.VALUE, before.value());
    if (value == null) {
      return new StepCrossing(edge, null, null, null, null);
    }
    PlenumState low = over(balance, edge, Side.LOW, before.low());
    PlenumState high = over(balance, edge, Side.HIGH, before.high());
    Bands<PlenumState> b = new Bands<>(value, low, high, before.numerical(), before.iteration());
    Bands<double[]> pair =
        new Bands<>(
            pair(value, before.value()),
            pair(low, before.low()),
            pair(high, before.high()),
            before.numerical(),
            before.iteration());
    Estimate kept = pair.of(p -> p[0] / p[1]);
    return new StepCrossing(
        edge,
        b.of(PlenumState::suction),
        b.of(s -> s.parts().sum()),
        kept,
        new HoldStudy(balance).worst("wall", 0.5 * Math.PI, b));
  }

  private static double[] pair(@Nullable PlenumState over, @Nullable PlenumState before) {
    return over == null || before == null
        ? new double[] {0, 1}
        : new double[] {over.parts().sum(), before.parts().sum()};
  }

  private static @Nullable PlenumState over(
      PlenumBalance balance, int edge, Side side, @Nullable PlenumState before) {
    return before == null ? null : balance.settled(Stand.REST.at(side).over(edge, before.sink()));
  }
}
