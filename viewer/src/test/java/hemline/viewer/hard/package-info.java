/** Tries to break the program: damaged files, ends at any moment, full disks, long use. */
@NullMarked
package hemline.viewer.hard;

import org.jspecify.annotations.NullMarked;
