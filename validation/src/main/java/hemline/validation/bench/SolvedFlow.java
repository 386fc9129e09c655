package hemline.validation.bench;

import hemline.solver.flow.Closure;

/**
 * A flow whose cost is measured.
 *
 * @param lip file name of the lip without its ending
 * @param suction Pa
 * @param closure flow model used
 */
public record SolvedFlow(String lip, double suction, Closure closure) {}
