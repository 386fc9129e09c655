package hemline.solver.flow;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipFindings;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.section.SealSection;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Random lips that the checks of drawings accept, one for each seed, with the flaws that drawings
 * bring: steps of 5 nm to 0.1 mm, edges that all but run on, slots and gaps of 0.2 mm.
 *
 * <p>Lengths in mm here. Every third section has its own gap, suction and ground speed; the others
 * stand 2 mm over still ground at 600 Pa.
 */
public final class RandomLips {
  private static final double TOP = 10;

  private final SplittableRandom chance;
  private final List<double[]> bottom = new ArrayList<>();
  private final List<Rounding> roundings = new ArrayList<>();
  private final List<DrawnOutline> detached = new ArrayList<>();
  private double width;

  private RandomLips(SplittableRandom chance) {
    this.chance = chance;
  }

  /** The section of a seed. */
  public static SealSection section(long seed) {
    LipProfile profile = profile(seed);
    SplittableRandom chance = new SplittableRandom(~seed);
    if (seed % 3 != 2) {
      return Lips.section(profile, 2, 600, 0, 0);
    }
    double ground = chance.nextBoolean() ? 0 : chance.nextDouble(-15, 15);
    return Lips.section(
        profile, logarithmic(chance, 0.3, 6), logarithmic(chance, 50, 6000), ground, 0);
  }

  /** The lip of a seed: the first drawing of its kind that the checks accept. */
  public static LipProfile profile(long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    for (int tries = 0; tries < 1000; tries++) {
      LipDrawing drawing = new RandomLips(chance.split()).drawing("seed " + seed, (int) (seed % 7));
      LipFindings findings = LipResolver.check(drawing);
      if (findings.profile() != null) {
        return findings.profile();
      }
    }
    throw new IllegalStateException("no valid lip for seed " + seed);
  }

  private LipDrawing drawing(String name, int kind) {
    width = chance.nextDouble(3, 16);
    switch (kind) {
      case 0 -> upright();
      case 1 -> polyline(2 + chance.nextInt(9));
      case 2, 3 -> teeth();
      case 4 -> rounded();
      case 5 -> free();
      default -> parts();
    }
    if (roundings.isEmpty()) {
      for (int flaws = chance.nextInt(4); flaws > 0; flaws--) {
        flaw();
      }
    }
    List<Vertex> body = new ArrayList<>();
    for (double[] p : bottom) {
      body.add(new Vertex(1e-3 * p[0], 1e-3 * p[1], p.length > 2 ? p[2] : 0));
    }
    body.add(new Vertex(1e-3 * width, 1e-3 * TOP));
    body.add(new Vertex(0, 1e-3 * TOP));
    return new LipDrawing(
        name, "", "", true, "", new DrawnOutline(body, roundings), body.size() - 2, detached);
  }

  /** Teeth and pockets of upright and level edges. */
  private void upright() {
    double x = 0;
    double y = 0;
    add(x, y);
    while (x < width - 0.3) {
      x = Math.min(width, x + logarithmic(chance, 0.2, 4));
      add(x, y);
      if (x < width) {
        y = y > 0 && chance.nextInt(3) > 0 ? 0 : chance.nextDouble(0.05, 6);
        add(x, y);
      }
    }
    if (x < width) {
      add(width, y);
    }
  }

  /** A bottom of slanted edges. */
  private void polyline(int edges) {
    double deepest = logarithmic(chance, 0.2, 7);
    double x = 0;
    for (int k = 0; k <= edges; k++) {
      add(k == edges ? width : x, deepest * chance.nextDouble() * chance.nextInt(3));
      x += (width - x) * chance.nextDouble(0.3, 1.7) / (edges - k);
    }
  }

  /** Teeth that lean by up to 60 degrees either way, with narrow or wide pockets between. */
  private void teeth() {
    int count = 2 + chance.nextInt(4);
    double lean = Math.tan(Math.toRadians(chance.nextDouble(-60, 60)));
    double depth = chance.nextDouble(0.8, 5);
    double tip = logarithmic(chance, 0.15, 1);
    double pitch = tip + logarithmic(chance, 0.2, 4);
    double taper = chance.nextBoolean() ? 0 : chance.nextDouble(0, 0.3);
    double x = 0;
    for (int k = 0; k < count; k++) {
      double root = x + lean * depth;
      add(x, 0);
      add(x + tip, 0);
      if (k + 1 < count) {
        add(root + tip + taper * (pitch - tip), depth);
        add(root + pitch - taper * (pitch - tip), depth);
      }
      x += pitch;
    }
    // the plate is as wide as what hangs under it
    double left = Math.min(0, lean * depth) - chance.nextDouble(0, 2);
    double right = x - pitch + tip + Math.max(0, lean * depth) + chance.nextDouble(0, 2);
    if (lean > 0) {
      add(x - pitch + tip + lean * depth, depth);
      add(right, depth);
    } else {
      add(right, depth * chance.nextDouble(0.6, 1));
      bottom.add(0, new double[] {lean * depth, depth});
      bottom.add(0, new double[] {left, depth});
    }
    double first = bottom.get(0)[0];
    for (double[] p : bottom) {
      p[0] -= first;
    }
    width = right - first;
    bottom.get(bottom.size() - 1)[0] = width;
  }

  /** Edges that are arcs, and corners that are rounded or chamfered. */
  private void rounded() {
    polyline(2 + chance.nextInt(5));
    boolean arcs = chance.nextBoolean();
    for (int k = 0; k < bottom.size(); k++) {
      double[] p = bottom.get(k);
      if (arcs && k + 1 < bottom.size() && chance.nextBoolean()) {
        bottom.set(k, new double[] {p[0], p[1], chance.nextDouble(-0.6, 0.6)});
      } else if (!arcs && chance.nextBoolean()) {
        double size = 1e-3 * logarithmic(chance, 1e-4, 1.5);
        roundings.add(chance.nextBoolean() ? Rounding.round(k, size) : Rounding.chamfer(k, size));
      }
    }
  }

  /** Points anywhere below the plate, joined in the order that leaves no crossing. */
  private void free() {
    int count = 3 + chance.nextInt(7);
    for (int k = 0; k < count; k++) {
      add(chance.nextDouble(0, width), chance.nextDouble(0, 8));
    }
    bottom.add(0, new double[] {0, 8.5});
    add(width, 8.5);
    boolean crossed = true;
    for (int round = 0; crossed && round < 200; round++) {
      crossed = false;
      for (int i = 0; i + 3 < bottom.size() && !crossed; i++) {
        for (int j = i + 2; j + 1 < bottom.size() && !crossed; j++) {
          if (cross(bottom.get(i), bottom.get(i + 1), bottom.get(j), bottom.get(j + 1))) {
            for (int a = i + 1, b = j; a < b; a++, b--) {
              double[] p = bottom.get(a);
              bottom.set(a, bottom.get(b));
              bottom.set(b, p);
            }
            crossed = true;
          }
        }
      }
    }
  }

  private static boolean cross(double[] a, double[] b, double[] c, double[] d) {
    return side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b);
  }

  private static boolean side(double[] a, double[] b, double[] p) {
    return (b[0] - a[0]) * (p[1] - a[1]) > (b[1] - a[1]) * (p[0] - a[0]);
  }

  /** A plain or polygonal lip with vanes before, behind or under it. */
  private void parts() {
    if (chance.nextBoolean()) {
      add(0, 0);
      add(width, 0);
    } else {
      polyline(2 + chance.nextInt(4));
    }
    int count = 1 + chance.nextInt(3);
    for (int k = 0; k < count; k++) {
      double gap = chance.nextInt(3) == 0 ? 0.2 : logarithmic(chance, 0.1, 3);
      double size = logarithmic(chance, 0.2, 4);
      double x = chance.nextBoolean() ? -gap - size : width + gap;
      double y = chance.nextDouble(-0.5, 5);
      double slant = chance.nextInt(3) == 0 ? 0 : chance.nextDouble(-0.5, 0.5) * size;
      List<Vertex> v = new ArrayList<>();
      v.add(new Vertex(1e-3 * x, 1e-3 * y));
      v.add(new Vertex(1e-3 * (x + size), 1e-3 * (y + slant)));
      v.add(new Vertex(1e-3 * (x + size), 1e-3 * (y + slant + logarithmic(chance, 0.2, 4))));
      if (chance.nextBoolean()) {
        v.add(new Vertex(1e-3 * x, 1e-3 * (y + logarithmic(chance, 0.2, 4))));
      }
      detached.add(new DrawnOutline(v));
    }
  }

  /** Something small that a drawing brings. */
  private void flaw() {
    int k = chance.nextInt(bottom.size() - 1);
    double[] a = bottom.get(k);
    double[] b = bottom.get(k + 1);
    double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    double small = logarithmic(chance, 5e-6, 0.1);
    if (a.length > 2 || length < 3 * small) {
      return;
    }
    double ux = (b[0] - a[0]) / length;
    double uy = (b[1] - a[1]) / length;
    double t = chance.nextDouble(0.1, 0.9) * length;
    double[] on = {a[0] + t * ux, a[1] + t * uy};
    switch (chance.nextInt(6)) {
      case 0 -> { // a step at the corner
        double[] step = {a[0] + (chance.nextBoolean() ? small : 0), a[1]};
        step[1] += step[0] == a[0] || chance.nextBoolean() ? small : 0;
        bottom.add(k + 1, step);
      }
      case 1 -> { // a step in an edge
        bottom.add(k + 1, on);
        bottom.add(k + 2, new double[] {on[0] - small * uy, on[1] + small * ux});
      }
      case 2 -> bottom.add(k + 1, new double[] {on[0] - small * uy, on[1] + small * ux});
      case 3 -> { // two vertices where one would do
        bottom.add(k + 1, on);
        bottom.add(k + 2, new double[] {on[0] + small * ux, on[1] + small * uy});
      }
      case 4 -> slot(k, on, ux, uy, chance.nextDouble(-3, 3));
      default -> slot(k, on, ux, uy, small * (chance.nextBoolean() ? 1 : -1));
    }
  }

  /** A slot, or where the depth is negative a rib, 0.2 mm wide or less. */
  private void slot(int k, double[] on, double ux, double uy, double depth) {
    double w = Math.min(0.2, chance.nextBoolean() ? 0.2 : logarithmic(chance, 0.02, 0.2));
    double nx = -uy * depth;
    double ny = ux * depth;
    bottom.add(k + 1, on);
    bottom.add(k + 2, new double[] {on[0] + nx, on[1] + ny});
    bottom.add(k + 3, new double[] {on[0] + w * ux + nx, on[1] + w * uy + ny});
    bottom.add(k + 4, new double[] {on[0] + w * ux, on[1] + w * uy});
  }

  private void add(double x, double y) {
    bottom.add(new double[] {x, y});
  }

  private static double logarithmic(SplittableRandom chance, double from, double to) {
    return from * Math.pow(to / from, chance.nextDouble());
  }
}
