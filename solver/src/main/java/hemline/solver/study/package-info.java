/** Runs, sweeps and rankings of sections. */
@NullMarked
package hemline.solver.study;

import org.jspecify.annotations.NullMarked;
