package hemline.viewer.model;

import hemline.shared.file.LoadedLip;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Lips that a study can take: the one on the bench, those of the project, the examples. */
public final class Shelf {
  private static final String ON_BENCH = " (bench)";
  private final Workbench bench;
  private final Supplier<List<LoadedLip>> stored;
  private final Beside disk;

  /**
   * A shelf.
   *
   * @param stored lips of files, those that count more first; of one name the first is taken
   * @param disk where they are read
   */
  public Shelf(Workbench bench, Supplier<List<LoadedLip>> stored, Beside disk) {
    this.bench = bench;
    this.stored = stored;
    this.disk = disk;
  }

  /**
   * Lists all lips under names of their own, that of the bench first. A drawing on the bench that
   * differs from the file of its name is told apart by its name.
   *
   * @param taker gets them when the files are read
   */
  public void list(Consumer<List<LipProfile>> taker) {
    disk.read(stored, files -> taker.accept(lips(files)));
  }

  /**
   * Finds the drawing of a lip: the one on the bench, that of a file, else what is known of its
   * shape.
   */
  public void drawing(LipProfile lip, Consumer<LipDrawing> taker) {
    LipProfile drawn = bench.findings().get().profile();
    if (drawn != null && sameShape(drawn, lip)) {
      taker.accept(bench.drawing().get());
      return;
    }
    disk.read(
        () ->
            stored.get().stream()
                .filter(one -> one.profile().name().equals(lip.name()))
                .filter(one -> sameShape(one.profile(), lip))
                .findFirst()
                .map(LoadedLip::drawing)
                .orElseGet(() -> drawn(lip)),
        taker);
  }

  private static LipDrawing drawn(LipProfile lip) {
    return new LipDrawing(
        lip.name(),
        lip.family(),
        lip.notes(),
        false,
        "",
        new DrawnOutline(lip.outline().vertices()),
        lip.mountEdge(),
        lip.detached().stream().map(part -> new DrawnOutline(part.vertices())).toList());
  }

  private List<LipProfile> lips(List<LoadedLip> files) {
    Map<String, LipProfile> byName = new LinkedHashMap<>();
    for (LoadedLip lip : files) {
      byName.putIfAbsent(lip.profile().name(), lip.profile());
    }
    List<LipProfile> lips = new ArrayList<>();
    LipProfile drawn = bench.findings().get().profile();
    if (drawn != null) {
      LipProfile file = byName.get(drawn.name());
      if (file == null || sameShape(file, drawn)) {
        byName.remove(drawn.name());
        lips.add(drawn);
      } else {
        lips.add(renamed(drawn, drawn.name() + ON_BENCH));
      }
    }
    lips.addAll(byName.values());
    return lips;
  }

  private static boolean sameShape(LipProfile a, LipProfile b) {
    return a.outline().equals(b.outline())
        && a.mountEdge() == b.mountEdge()
        && a.detached().equals(b.detached());
  }

  private static LipProfile renamed(LipProfile lip, String name) {
    return new LipProfile(
        name, lip.family(), lip.notes(), lip.outline(), lip.mountEdge(), lip.detached());
  }
}
