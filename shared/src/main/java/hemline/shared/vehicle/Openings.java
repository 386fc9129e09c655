package hemline.shared.vehicle;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where air enters the plenum beside the seal.
 *
 * @param valve relief valve; null for none
 * @param leaks openings that stay open
 */
public record Openings(@Nullable ReliefValve valve, List<OtherLeak> leaks) {
  public Openings {
    leaks = List.copyOf(leaks);
  }
}
