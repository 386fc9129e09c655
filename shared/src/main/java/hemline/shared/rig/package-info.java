/**
 * Measurements at a test rig: a box under suction, a lip over shims, a gauge, a flow meter or a fan
 * with its curve.
 */
@NullMarked
package hemline.shared.rig;

import org.jspecify.annotations.NullMarked;
