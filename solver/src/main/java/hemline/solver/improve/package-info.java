/** Search for lips that leak less within what can be built, and the proof of what was found. */
@NullMarked
package hemline.solver.improve;

import org.jspecify.annotations.NullMarked;
