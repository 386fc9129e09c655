package hemline.shared.profile;

import hemline.shared.units.QuantityRange;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a search for a better lip may change and what can be built; null where nothing is said.
 *
 * @param sizes of the outline and its thinnest parts
 * @param family lips to look among
 * @param corners that may move
 */
public record SearchLimits(Sizes sizes, Family family, Corners corners) {
  /** Nothing is said. */
  public static final SearchLimits NONE =
      new SearchLimits(
          new Sizes(null, null, null, null),
          new Family(null, null, Map.of()),
          new Corners(null, null, false));

  /**
   * Sizes that can be built, m.
   *
   * @param width widest outline
   * @param height highest outline
   * @param wall least wall
   * @param slot least slot
   */
  public record Sizes(
      @Nullable Double width,
      @Nullable Double height,
      @Nullable Double wall,
      @Nullable Double slot) {}

  /**
   * Lips of one kind.
   *
   * @param name kind of lips to look among
   * @param number of teeth or pockets
   * @param vary limits of single lengths of the family, m, by name
   */
  public record Family(
      @Nullable String name, @Nullable Integer number, Map<String, QuantityRange> vary) {
    public Family {
      vary = new LinkedHashMap<>(vary);
    }
  }

  /**
   * Corners of a drawing that may move.
   *
   * @param moving their numbers
   * @param reach how far each moves to either side at most, m
   * @param symmetric true where the lip is to stay alike from both sides
   */
  public record Corners(@Nullable List<Integer> moving, @Nullable Double reach, boolean symmetric) {
    public Corners {
      moving = moving == null ? null : List.copyOf(moving);
    }
  }
}
