package hemline.viewer.project;

import hemline.shared.section.SealSection;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import hemline.solver.refine.GridFamily;
import hemline.solver.refine.SectionFamily;
import hemline.solver.refine.SolveRequest;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Puts sections into a store and takes them out, without solving any. */
public final class SampleSections {
  private SampleSections() {}

  private static SolveRequest request(SealSection section) {
    return SolveRequest.cold(section, MeshLevel.COARSE, SectionFamily.GRIDS, Closure.AUTO);
  }

  public static void keep(SectionStore store, SealSection section, GridFamily family) {
    store.keep(request(section), List.of(), family, false);
  }

  public static @Nullable GridFamily find(SectionStore store, SealSection section) {
    return store.find(request(section), List.of(), false);
  }
}
