/** The machine around the lip: suction, downforce, ride height, valve and grip from leak laws. */
@NullMarked
package hemline.solver.plenum;

import org.jspecify.annotations.NullMarked;
