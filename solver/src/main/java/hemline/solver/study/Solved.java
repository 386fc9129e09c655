package hemline.solver.study;

import hemline.solver.flow.Closure;
import hemline.solver.refine.LeakSeries;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * A solved question: the answer, and the leak by grid under each flow model for comparisons.
 *
 * @param answer the answer
 * @param closure flow model of the answer
 * @param gapReynolds of the answer
 * @param leaks by flow model, that of the answer included; empty when the answer is not usable
 */
record Solved(
    SectionAnswer answer, Closure closure, double gapReynolds, Map<Closure, LeakSeries> leaks) {
  Solved {
    leaks = leaks.isEmpty() ? Map.of() : Collections.unmodifiableMap(new EnumMap<>(leaks));
  }

  /** True when the leak may be compared with others. */
  boolean usable() {
    return leaks.containsKey(closure);
  }

  /** True when a turbulent answer was compared with the second turbulent model. */
  boolean second() {
    return closure != Closure.LAMINAR && leaks.containsKey(closure.second());
  }

  /** The same without the flow, which takes a thousand times the memory of the figures. */
  Solved withoutFlow() {
    return new Solved(new SectionAnswer(answer.result(), null), closure, gapReynolds, leaks);
  }
}
