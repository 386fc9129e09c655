/** Lip profiles: outlines with a mount edge, and their checks. */
@NullMarked
package hemline.shared.profile;

import org.jspecify.annotations.NullMarked;
