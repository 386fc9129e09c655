package hemline.shared.profile;

import hemline.shared.units.QuantityRange;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a search for a better lip may change and what can be built; null where nothing is said.
 *
 * @param width widest outline, m
 * @param height highest outline, m
 * @param wall least wall, m
 * @param slot least slot, m
 * @param family kind of lips to look among
 * @param number of teeth or pockets
 * @param vary limits of single lengths of the family, m, by name
 * @param corners of the lip that may move
 * @param reach how far a corner moves to either side at most, m
 * @param symmetric true where the lip is to stay alike from both sides
 */
public record SearchLimits(
    @Nullable Double width,
    @Nullable Double height,
    @Nullable Double wall,
    @Nullable Double slot,
    @Nullable String family,
    @Nullable Integer number,
    Map<String, QuantityRange> vary,
    @Nullable List<Integer> corners,
    @Nullable Double reach,
    boolean symmetric) {
  /** Nothing is said. */
  public static final SearchLimits NONE =
      new SearchLimits(null, null, null, null, null, null, Map.of(), null, null, false);

  public SearchLimits {
    vary = new LinkedHashMap<>(vary);
    corners = corners == null ? null : List.copyOf(corners);
  }
}
