package hemline.solver.rig;

/**
 * A leak measured by how the suction of the shut box decays.
 *
 * @param gap m; not a number where the lip was taped shut
 * @param readings number of readings
 * @param area effective area of the leak, m²: that of all leaks of the box together
 * @param uncertainty half-width of it at 95 %
 */
public record DecayLeak(double gap, int readings, double area, double uncertainty) {
  public boolean taped() {
    return Double.isNaN(gap);
  }
}
