package hemline.solver.plenum;

import java.util.Set;

/**
 * A part of the seal over ground that lies lower or higher than the rest.
 *
 * @param height by which the gap opens there, m; negative over a ledge
 * @param length of each edge over it at once, m
 * @param edges that are over it
 * @param vertex corner that lies over it too; -1 for none
 */
record Crossing(double height, double length, Set<Integer> edges, int vertex) {
  Crossing {
    edges = Set.copyOf(edges);
  }

  /** Share of an edge over it. */
  double share(int edge, double edgeLength) {
    return edges.contains(edge) ? Math.min(1, length / edgeLength) : 0;
  }

  /** Smallest gap that is left over it anywhere along its edges, m; 0 or less where it strikes. */
  double leastGap(PlenumBalance balance, PlenumState s) {
    return height
        + edges.stream()
            .mapToDouble(e -> balance.leastGap(e, s.sink()))
            .min()
            .orElse(Double.POSITIVE_INFINITY);
  }

  /** Share of a corner over it. */
  double corner(int at) {
    return at == vertex ? 1 : 0;
  }
}
