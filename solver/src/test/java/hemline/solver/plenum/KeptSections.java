package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.result.LeakPoint;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;

/** Leak laws of the demonstration machines, from the table of sections that a balance wrote. */
final class KeptSections {
  private KeptSections() {}

  /** Law at rest from a table beside this class. */
  static LeakLaw law(String table) throws IOException {
    TreeSet<Double> gaps = new TreeSet<>();
    TreeSet<Double> suctions = new TreeSet<>();
    List<LeakPoint> points = new ArrayList<>();
    try (InputStream in = KeptSections.class.getResourceAsStream(table)) {
      String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      for (String line : text.lines().skip(1).toList()) {
        String[] cells = line.split(",", -1);
        double gap = Double.parseDouble(cells[1]);
        double suction = Double.parseDouble(cells[2]);
        if (Double.parseDouble(cells[3]) == 0 && Double.parseDouble(cells[4]) == 0) {
          gaps.add(gap);
          suctions.add(suction);
          points.add(
              Machines.point(gap, suction, estimate(cells, 7))
                  .with(estimate(cells, 7), estimate(cells, 10)));
        }
      }
    }
    return new LeakLaw(new LeakTable(List.copyOf(gaps), List.copyOf(suctions), points));
  }

  private static Estimate estimate(String[] cells, int from) {
    double v = Double.parseDouble(cells[from]);
    double low = Double.parseDouble(cells[from + 1]);
    double high = Double.parseDouble(cells[from + 2]);
    return new Estimate(v, 0, 0, v - low, high - v, Estimate.Trend.UNKNOWN);
  }
}
