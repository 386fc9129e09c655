package hemline.solver.improve;

import hemline.shared.profile.LipDrawing;
import java.util.List;

/** Lips that a few lengths make. */
public interface LipSpace {
  /** The lengths with their limits, at least one. */
  List<NamedLength> lengths();

  /**
   * The lip of some lengths; it may be none that can be built.
   *
   * @param values m, in the order of {@link #lengths}
   */
  LipDrawing drawing(double[] values);
}
