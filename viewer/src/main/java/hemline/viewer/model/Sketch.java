package hemline.viewer.model;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.MountEdge;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;

/** An outline that is being drawn point by point, in metres over the height of the lip's tip. */
public final class Sketch {
  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<List<Vertex>> points = new ReadOnlyObjectWrapper<>(List.of());
  private boolean part;

  public ReadOnlyBooleanProperty active() {
    return active.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<List<Vertex>> points() {
    return points.getReadOnlyProperty();
  }

  /** True while a whole new lip is being drawn, in place of the one on the bench. */
  public boolean whole() {
    return active().get() && !part();
  }

  /** True when the outline becomes a detached part of the lip, not a new lip. */
  public boolean part() {
    return part;
  }

  /** Begins a new lip with an empty sheet. */
  public void begin() {
    begin(false);
  }

  /** Begins a detached part beside the lip. */
  public void beginPart() {
    begin(true);
  }

  private void begin(boolean detached) {
    part = detached;
    active.set(false);
    points.set(List.of());
    active.set(true);
  }

  /** Adds a point, unless it lies on the last one. */
  public void add(double x, double y) {
    List<Vertex> next = new ArrayList<>(points.get());
    Vertex point = new Vertex(x, y);
    if (next.isEmpty() || !next.get(next.size() - 1).equals(point)) {
      next.add(point);
      points.set(List.copyOf(next));
    }
  }

  /** Takes the last point away. */
  public void back() {
    List<Vertex> now = points.get();
    if (!now.isEmpty()) {
      points.set(List.copyOf(now.subList(0, now.size() - 1)));
    }
  }

  /** Gives up. */
  public void cancel() {
    points.set(List.of());
    active.set(false);
  }

  /** True when the points make an outline. */
  public boolean closable() {
    return points.get().size() >= 3;
  }

  /**
   * Closes the outline.
   *
   * @return the lip, null while there are fewer than three points
   */
  public @Nullable LipDrawing close(String name) {
    if (!closable()) {
      return null;
    }
    List<Vertex> v = points.get();
    LipDrawing lip =
        new LipDrawing(
            name,
            "",
            "",
            false,
            "",
            new DrawnOutline(v),
            MountEdge.findAtTop(v).orElse(0),
            List.of());
    cancel();
    return lip;
  }

  /**
   * Closes the outline as a detached part.
   *
   * @return null while there are fewer than three points
   */
  public @Nullable DrawnOutline closePart() {
    if (!closable()) {
      return null;
    }
    DrawnOutline outline = new DrawnOutline(points.get());
    cancel();
    return outline;
  }
}
