package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A lip tried all round the machine.
 *
 * @param rank one more than the number of lips that clearly give more downforce; lips with which
 *     the machine does not settle come last
 * @param trade downforce, power and gap with it
 * @param relative downforce over that of the machine as it is, with a band of its own; null when
 *     one of them does not settle
 * @param tiedWith lips that the bands do not tell from it
 */
public record RankedLip(int rank, Trade trade, @Nullable Estimate relative, List<String> tiedWith) {
  public RankedLip {
    tiedWith = List.copyOf(tiedWith);
  }

  public String name() {
    return trade.name();
  }
}
