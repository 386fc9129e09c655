package hemline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/** Lips set aside to compare others with them: B, and up to two more. */
final class SetAside {
  private final ReadOnlyObjectWrapper<List<Kept>> lips = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable Kept> first = new ReadOnlyObjectWrapper<>();

  ReadOnlyObjectProperty<List<Kept>> lips() {
    return lips.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable Kept> first() {
    return first.getReadOnlyProperty();
  }

  /** Sets a lip aside as B, in place of the one that was there. */
  void put(Kept lip) {
    List<Kept> next = new ArrayList<>(lips.get());
    if (next.isEmpty()) {
      next.add(lip);
    } else {
      next.set(0, lip);
    }
    set(next);
  }

  /** Sets one more lip aside; nothing where there is no room. */
  void add(Kept lip) {
    if (lips.get().size() < Workbench.MOST_BESIDE) {
      List<Kept> next = new ArrayList<>(lips.get());
      next.add(lip);
      set(next);
    }
  }

  /** Forgets all. */
  void clear() {
    set(List.of());
  }

  private void set(List<Kept> next) {
    lips.set(List.copyOf(next));
    first.set(next.isEmpty() ? null : next.get(0));
  }
}
