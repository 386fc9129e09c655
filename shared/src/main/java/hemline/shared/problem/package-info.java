/** Faults a user can mend and notices a reader of a result must know. */
@NullMarked
package hemline.shared.problem;

import org.jspecify.annotations.NullMarked;
