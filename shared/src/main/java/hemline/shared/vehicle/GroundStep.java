package hemline.shared.vehicle;

/**
 * A dip of the ground that the seal must cross.
 *
 * @param height by which it opens the gap, m
 * @param length of seal over it at once, m
 */
public record GroundStep(double height, double length) {}
