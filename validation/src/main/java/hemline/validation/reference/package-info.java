/** Cited tables and cases: what a computed figure is compared with, and where it comes from. */
@NullMarked
package hemline.validation.reference;

import org.jspecify.annotations.NullMarked;
