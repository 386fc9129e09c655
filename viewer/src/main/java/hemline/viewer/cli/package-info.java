/** Commands, their options and exit codes. */
@NullMarked
package hemline.viewer.cli;

import org.jspecify.annotations.NullMarked;
