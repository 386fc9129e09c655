/** Answers as plain records: figures with their uncertainty, status and notices. */
@NullMarked
package hemline.shared.result;

import org.jspecify.annotations.NullMarked;
