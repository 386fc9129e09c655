/** Results as files: JSON documents, CSV tables, field files and the folder that holds them. */
@NullMarked
package hemline.viewer.report;

import org.jspecify.annotations.NullMarked;
