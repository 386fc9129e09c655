package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part of the seal over a dip or a ledge of the ground.
 *
 * @param kind what it is and where
 * @param edges over it
 * @param strikes true when a ledge reaches the lip at the ride height before it
 * @param suction left on level ground at the ride height before it, Pa; null when the fan cannot
 *     keep any
 * @param downforce left there, N; null as above
 * @param kept downforce over that before; null as above
 * @param holds slope, wall and ceiling, each in its worst heading, and at the ride height before it
 *     or the one the springs settle at, whichever holds less
 */
public record StepCrossing(
    Kind kind,
    List<Integer> edges,
    boolean strikes,
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
    LEDGE("ledge");

    private final String key;

    Kind(String key) {
      this.key = key;
    }

    /** Name in files and on screen. */
    public String key() {
      return key;
    }
  }

  /** The hold at a place; null when it was not asked. */
  public @Nullable Hold hold(String place) {
    return holds.stream().filter(h -> h.place().equals(place)).findFirst().orElse(null);
  }
}
