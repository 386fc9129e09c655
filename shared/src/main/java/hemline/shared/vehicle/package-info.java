/** A suction-held machine as data: floor and seal, fan, valve, axles, masses and limits. */
@NullMarked
package hemline.shared.vehicle;

import org.jspecify.annotations.NullMarked;
