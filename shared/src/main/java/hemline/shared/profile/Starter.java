package hemline.shared.profile;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Vertex;
import java.util.ArrayList;
import java.util.List;

/** Shapes to begin with: flat lips, teeth, pockets, noses, hooks. Lengths in metres. */
public sealed interface Starter {

  /** The lip, standing on the ground line with its ambient edge at x = 0. */
  LipDrawing drawing();

  /**
   * A plain flat lip.
   *
   * @param width along the leak
   * @param height from the ground side to the mount
   */
  record Flat(double width, double height) implements Starter {
    @Override
    public LipDrawing drawing() {
      return lip("flat " + mm(width), "flat", points(0, 0, width, 0, width, height, 0, height), 2);
    }
  }

  /**
   * Teeth that hang from a bar.
   *
   * @param number of teeth, 1 or more
   * @param pitch from tooth to tooth
   * @param depth of the chambers between the teeth
   * @param tip width of a tooth at its tip
   * @param lean how far a tip lies towards the plenum of its root, negative towards ambient
   * @param height of the whole lip
   */
  record Teeth(int number, double pitch, double depth, double tip, double lean, double height)
      implements Starter {
    @Override
    public LipDrawing drawing() {
      List<Vertex> v = new ArrayList<>();
      double root = root();
      for (int k = 0; k < number; k++) {
        double x = k * pitch;
        v.add(new Vertex(x, depth));
        v.add(new Vertex(x + lean, 0));
        v.add(new Vertex(x + lean + tip, 0));
        v.add(new Vertex(x + root, depth));
      }
      double right = (number - 1) * pitch + root;
      v.add(new Vertex(right, height));
      v.add(new Vertex(0, height));
      return lip(number + (number == 1 ? " tooth" : " teeth"), "teeth", v, v.size() - 2);
    }

    /** Width of a tooth at its root. */
    public double root() {
      return Math.min(tip * 1.5, pitch * 0.8);
    }
  }

  /**
   * A flat lip with pockets that trap vortices.
   *
   * @param number of pockets, 1 or more
   * @param opening of a pocket along the leak
   * @param depth of a pocket
   * @param land width of the flat parts beside the pockets
   * @param height of the whole lip
   */
  record Pockets(int number, double opening, double depth, double land, double height)
      implements Starter {
    @Override
    public LipDrawing drawing() {
      List<Vertex> v = new ArrayList<>();
      double x = 0;
      v.add(new Vertex(0, 0));
      for (int k = 0; k < number; k++) {
        x += land;
        v.add(new Vertex(x, 0));
        v.add(new Vertex(x, depth));
        x += opening;
        v.add(new Vertex(x, depth));
        v.add(new Vertex(x, 0));
      }
      x += land;
      v.add(new Vertex(x, 0));
      v.add(new Vertex(x, height));
      v.add(new Vertex(0, height));
      return lip(number + (number == 1 ? " pocket" : " pockets"), "pocket", v, v.size() - 2);
    }
  }

  /**
   * A flat lip with a round ambient edge.
   *
   * @param width along the leak
   * @param radius of the round edge, at most width and height
   * @param height from the ground side to the mount
   */
  record Nose(double width, double radius, double height) implements Starter {
    /** Bulge of a quarter of a circle. */
    private static final double QUARTER = Math.tan(Math.PI / 8);

    @Override
    public LipDrawing drawing() {
      List<Vertex> v = new ArrayList<>();
      v.add(new Vertex(0, radius, QUARTER));
      v.add(new Vertex(radius, 0));
      if (width > radius) {
        v.add(new Vertex(width, 0));
      }
      v.add(new Vertex(width, height));
      v.add(new Vertex(0, height));
      return lip("nose", "nose", v, v.size() - 2);
    }
  }

  /**
   * A foot with a raised tip towards ambient, hollow behind it, below a web at the plenum.
   *
   * @param width along the leak
   * @param toe from the ambient edge to the tip
   * @param foot thickness of foot, tip and web
   * @param tip how far the tip stands above the foot
   * @param hollow from the ground side to the top of the hollow
   * @param height from the ground side to the mount
   */
  record Hook(double width, double toe, double foot, double tip, double hollow, double height)
      implements Starter {
    @Override
    public LipDrawing drawing() {
      double web = width - foot;
      return lip(
          "hook",
          "hook",
          points(
              toe,
              0,
              width,
              0,
              width,
              height,
              0,
              height,
              0,
              hollow,
              web,
              hollow,
              web,
              foot,
              toe + foot,
              foot,
              toe + foot,
              foot + tip,
              toe,
              foot + tip),
          2);
    }
  }

  private static LipDrawing lip(String name, String family, List<Vertex> v, int mountEdge) {
    return new LipDrawing(name, family, "", false, "", new DrawnOutline(v), mountEdge, List.of());
  }

  private static List<Vertex> points(double... xy) {
    List<Vertex> v = new ArrayList<>();
    for (int k = 0; k < xy.length; k += 2) {
      v.add(new Vertex(xy[k], xy[k + 1]));
    }
    return v;
  }

  private static String mm(double metres) {
    return String.valueOf(Math.round(1000 * metres));
  }
}
