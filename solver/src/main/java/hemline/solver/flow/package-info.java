/**
 * Couples momentum, pressure and closure into one steady solve.
 *
 * <p>Equations, incompressible, pressure over density, in every cell:
 *
 * <pre>
 *   Σ_f F                                            = 0
 *   Σ_f F u_f - Σ_f ν_eff A (∂u/∂n + n_j ∂u_j/∂x)    = - Σ_f p_f A_x + V f_x      (v alike)
 *   Σ_f F w_f - Σ_f ν_eff A ∂w/∂n                    = 0
 * </pre>
 *
 * <p>F volume flux through a face, A its open length, ν_eff molecular plus eddy viscosity. All
 * unknowns sit in cell centres; F carries the pressure term of Rhie and Chow. {@code SectionSetup}
 * and {@code DuctSetup} turn sections into a {@code FlowProblem}; {@code SteadyFlowSolver} settles
 * it by {@code NewtonIteration} (laminar) or {@code SegregatedIteration} with acceleration; {@code
 * SequencedSolver} goes through the grids of a family.
 */
@NullMarked
package hemline.solver.flow;

import org.jspecify.annotations.NullMarked;
