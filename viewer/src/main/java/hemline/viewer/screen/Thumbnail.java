package hemline.viewer.screen;

import hemline.shared.geometry.Outline;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.viewer.model.Placement;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Group;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Polygon;

/** Small pictures of lips, for menus and lists. */
public final class Thumbnail {
  private static final double WIDTH = 30;
  private static final double HEIGHT = 20;

  private Thumbnail() {}

  static StackPane of(LipProfile lip) {
    return of(lip.bodies());
  }

  /** A lip as it is drawn. */
  public static StackPane of(LipDrawing lip) {
    return of(Placement.outlines(lip));
  }

  private static StackPane of(List<Outline> bodies) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    List<Polygon> shapes = new ArrayList<>();
    for (Outline outline : bodies) {
      if (outline.vertices().size() < 3) {
        continue;
      }
      var ring = outline.flatten();
      Polygon shape = new Polygon();
      for (int k = 0; k < ring.size(); k++) {
        left = Math.min(left, ring.x()[k]);
        right = Math.max(right, ring.x()[k]);
        low = Math.min(low, ring.y()[k]);
        high = Math.max(high, ring.y()[k]);
        shape.getPoints().addAll(ring.x()[k], -ring.y()[k]);
      }
      shapes.add(shape);
    }
    double scale = Math.min(WIDTH / (right - left), HEIGHT / (high - low));
    for (Polygon shape : shapes) {
      shape.getPoints().replaceAll(v -> v * scale);
      shape.getStyleClass().add("thumbnail");
    }
    // an empty frame keeps lips of any shape in line
    StackPane pane = new StackPane(new Group(shapes.toArray(Polygon[]::new)));
    pane.setMinSize(WIDTH, HEIGHT);
    pane.setPrefSize(WIDTH, HEIGHT);
    pane.setMaxSize(WIDTH, HEIGHT);
    return pane;
  }
}
