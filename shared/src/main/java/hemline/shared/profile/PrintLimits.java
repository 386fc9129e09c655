package hemline.shared.profile;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.ThinParts;
import java.util.List;

/** Where a lip may fail in print, by the limits that its notices use. */
public final class PrintLimits {
  private PrintLimits() {}

  /** Walls thinner than few printers hold; of a sound lip only. */
  public static List<ThinParts.Part> thinWalls(List<Outline> outlines) {
    return ThinParts.thinWalls(outlines, LipChecks.PRINTABLE_WALL, LipChecks.THIN);
  }

  /** Slots narrower than stay open in print; of a sound lip only. */
  public static List<ThinParts.Part> narrowSlots(List<Outline> outlines) {
    return ThinParts.narrowSlots(outlines, LipChecks.PRINTABLE_SLOT, LipChecks.THIN);
  }
}
