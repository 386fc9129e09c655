/** What lies in a project folder: lips, studies that were solved, drawings saved from a crash. */
@NullMarked
package hemline.viewer.project;

import org.jspecify.annotations.NullMarked;
