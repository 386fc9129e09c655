/** One complete two-dimensional question: lip or duct, gap, drive, ground and fluid. */
@NullMarked
package hemline.shared.section;

import org.jspecify.annotations.NullMarked;
