/** Batches on Apache Spark; on the class path only where the engine is. */
@NullMarked
package hemline.solver.spark;

import org.jspecify.annotations.NullMarked;
