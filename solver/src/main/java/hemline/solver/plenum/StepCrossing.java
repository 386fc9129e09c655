package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A part of the seal over a dip or a ledge of the ground.
 *
 * @param kind what it is and where
 * @param edges over it
 * @param strikes what a ledge reaches on level ground at the ride height before it
 * @param suction left on level ground at the ride height before it, Pa; null when the fan cannot
 *     keep any or the ledge strikes
 * @param downforce left there, N; null as above
 * @param kept downforce over that before; null as above
 * @param holds slope, wall and ceiling, each in its worst heading, and at the ride height before it
 *     or the one the springs settle at, whichever holds less
 */
public record StepCrossing(
    Kind kind,
    List<Integer> edges,
    Strike strikes,
    @Nullable Estimate suction,
    @Nullable Estimate downforce,
    @Nullable Estimate kept,
    List<Hold> holds) {
  public StepCrossing {
    edges = List.copyOf(edges);
    holds = List.copyOf(holds);
  }

  /** What is crossed and where. */
  public enum Kind {
    /** A dip under one edge. */
    DIP("dip"),
    /** A dip under two opposite edges at once. */
    GROOVE("dip across two edges"),
    /** A dip under a corner and half of its length under each edge there. */
    CORNER("dip across a corner"),
    /** A ledge as high as the dip is deep, under one edge. */
    LEDGE("ledge"),
    /** A ledge under two opposite edges at once. */
    RIDGE("ledge across two edges"),
    /** A ledge under a corner and half of its length under each edge there. */
    LEDGE_CORNER("ledge across a corner");

    private final String key;

    Kind(String key) {
      this.key = key;
    }

    /** True where the ground rises. */
    public boolean ledge() {
      return this == LEDGE || this == RIDGE || this == LEDGE_CORNER;
    }

    /** Name in files and on screen. */
    public String key() {
      return key;
    }
  }

  /** What a ledge reaches. */
  public enum Strike {
    /** It passes under the seal. */
    NOTHING,
    /** It lifts the lip. */
    LIP,
    /** It is as high as the floor: it lifts the lip and then the floor. */
    FLOOR
  }

  /** A crossing in words: its kind and the edges over it. */
  public static String named(Kind kind, List<Integer> edges) {
    return kind.key()
        + ", edge"
        + (edges.size() > 1 ? "s " : " ")
        + edges.stream().map(String::valueOf).collect(Collectors.joining(" and "));
  }

  /** The hold at a place; null when it was not asked. */
  public @Nullable Hold hold(String place) {
    return holds.stream().filter(h -> h.place().name().equals(place)).findFirst().orElse(null);
  }
}
