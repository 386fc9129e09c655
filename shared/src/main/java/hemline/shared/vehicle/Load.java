package hemline.shared.vehicle;

/**
 * Mass of the machine and where it is.
 *
 * @param mass kg
 * @param x centre of gravity, m, forwards
 * @param y centre of gravity, m, to the left
 * @param height centre of gravity above the ground, m
 */
public record Load(double mass, double x, double y, double height) {}
