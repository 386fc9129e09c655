/** Work counts, timings and growth of cost of the section solver, as tables and plots. */
@NullMarked
package hemline.validation.bench;

import org.jspecify.annotations.NullMarked;
