/** Quantities with units at the edges of the program; everything inside is plain SI. */
@NullMarked
package hemline.shared.units;

import org.jspecify.annotations.NullMarked;
