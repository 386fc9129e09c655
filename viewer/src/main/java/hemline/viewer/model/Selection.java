package hemline.viewer.model;

import hemline.viewer.edit.Corner;
import hemline.viewer.edit.Parts;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The chosen corners of the drawing on a bench. */
public final class Selection {
  private final ReadOnlyObjectWrapper<Set<Corner>> corners = new ReadOnlyObjectWrapper<>(Set.of());

  /** A selection that lets go of corners that the drawing loses. */
  public Selection(Workbench bench) {
    bench
        .drawing()
        .subscribe(
            drawing ->
                set(
                    corners.get().stream()
                        .filter(c -> Parts.has(drawing, c))
                        .collect(Collectors.toSet())));
  }

  public ReadOnlyObjectProperty<Set<Corner>> corners() {
    return corners.getReadOnlyProperty();
  }

  public Set<Corner> get() {
    return corners.get();
  }

  public void set(Set<Corner> chosen) {
    if (!chosen.equals(corners.get())) {
      corners.set(Set.copyOf(chosen));
    }
  }

  public void clear() {
    set(Set.of());
  }

  /** Adds a corner, or takes it out if it is chosen. */
  public void toggle(Corner corner) {
    Set<Corner> next = new LinkedHashSet<>(corners.get());
    if (!next.remove(corner)) {
      next.add(corner);
    }
    set(next);
  }
}
