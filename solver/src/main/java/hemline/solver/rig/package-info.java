/**
 * A lip measured at a rig beside its prediction: uncertainty of what was measured, comparison,
 * faults by their pattern, calibration, planning of a test.
 */
@NullMarked
package hemline.solver.rig;

import org.jspecify.annotations.NullMarked;
