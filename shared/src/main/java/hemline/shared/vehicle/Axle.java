package hemline.shared.vehicle;

/**
 * A pair of wheels, or one wheel in the middle.
 *
 * @param name for people
 * @param x place along the machine, m, forwards
 * @param track distance between its two wheels, m; 0 for one wheel in the middle
 * @param stiffness of its tyres together, ground to frame, N/m
 * @param driven true when the drive turns it
 */
public record Axle(String name, double x, double track, double stiffness, boolean driven) {}
