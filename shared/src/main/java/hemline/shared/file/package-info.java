/** Reading and writing lips, ducts, drawings and test coupons. */
@NullMarked
package hemline.shared.file;

import org.jspecify.annotations.NullMarked;
