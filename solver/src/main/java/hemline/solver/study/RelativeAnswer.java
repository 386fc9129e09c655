package hemline.solver.study;

import hemline.shared.result.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * A lip measured against the plain flat lip as wide as it.
 *
 * @param lip the lip
 * @param flat the plain flat lip under the same conditions
 * @param relativeLeak leak of the lip over that of the flat lip, with its own grid convergence;
 *     null when either leak is not usable or they run in different directions
 */
public record RelativeAnswer(
    SectionAnswer lip, SectionAnswer flat, @Nullable Estimate relativeLeak) {}
