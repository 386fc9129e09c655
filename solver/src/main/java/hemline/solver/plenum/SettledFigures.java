package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What the machine does at the point where it settles.
 *
 * @param figures all of them
 * @param axleLoads weight and downforce on level ground, by axle, N
 * @param edgeGaps smallest gap under each edge, m
 * @param edgeLeaks leak under each edge, m³/s
 * @param leastEdge edge with the smallest gap
 */
public record SettledFigures(
    Map<MachineFigure, Estimate> figures,
    List<Estimate> axleLoads,
    List<Estimate> edgeGaps,
    List<Estimate> edgeLeaks,
    int leastEdge) {
  public SettledFigures {
    figures = Collections.unmodifiableMap(new EnumMap<>(figures));
    if (figures.size() < MachineFigure.values().length) {
      throw new IllegalArgumentException("not all figures are there: " + figures.keySet());
    }
    axleLoads = List.copyOf(axleLoads);
    edgeGaps = List.copyOf(edgeGaps);
    edgeLeaks = List.copyOf(edgeLeaks);
  }

  /** One figure, SI. */
  public Estimate get(MachineFigure figure) {
    return Objects.requireNonNull(figures.get(figure));
  }
}
