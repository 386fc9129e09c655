package hemline.solver.improve;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.Starter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Kinds of lips with named lengths. */
public enum LipFamily {
  /** A plain flat lip. */
  FLAT {
    @Override
    List<NamedLength> lengths(int number, ShapeLimits l) {
      return List.of(new NamedLength("width", l.wall(), l.width()));
    }

    @Override
    Starter shape(int number, double[] v, double height) {
      return new Starter.Flat(v[0], height);
    }
  },
  /** Teeth below a bar, upright or leaning. */
  TEETH {
    @Override
    List<NamedLength> lengths(int number, ShapeLimits l) {
      List<NamedLength> all = new ArrayList<>();
      if (number > 1) {
        all.add(new NamedLength("pitch", l.wall() + l.slot(), l.width() / (number - 1)));
      }
      all.add(new NamedLength("depth", l.slot(), l.height() - l.wall()));
      all.add(new NamedLength("tip", l.wall(), Math.max(2 * l.wall(), l.width() / (2 * number))));
      all.add(new NamedLength(LEAN, -0.4 * l.width(), 0.4 * l.width()));
      return all;
    }

    /** The lean may be missing: then the tip stands below the middle of the root. */
    @Override
    Starter shape(int number, double[] v, double height) {
      int at = number > 1 ? 1 : 0;
      double depth = v[at];
      double tip = v[at + 1];
      double pitch = number > 1 ? v[0] : WIDE * tip;
      double root = new Starter.Teeth(1, pitch, depth, tip, 0, height).root();
      double lean = v.length > at + 2 ? v[at + 2] : 0.5 * (root - tip);
      return new Starter.Teeth(number, pitch, depth, tip, lean, height);
    }
  },
  /** A flat lip with pockets. */
  POCKETS {
    @Override
    List<NamedLength> lengths(int number, ShapeLimits l) {
      return List.of(
          new NamedLength("opening", l.slot(), l.width() / number),
          new NamedLength("depth", l.slot(), l.height() - l.wall()),
          new NamedLength("land", l.wall(), l.width() / number));
    }

    @Override
    Starter shape(int number, double[] v, double height) {
      return new Starter.Pockets(number, v[0], v[1], v[2], height);
    }
  },
  /** A flat lip with a round ambient edge. */
  NOSE {
    @Override
    List<NamedLength> lengths(int number, ShapeLimits l) {
      return List.of(
          new NamedLength("width", l.wall(), l.width()),
          new NamedLength(
              "radius", 0.1 * l.wall(), Math.min(l.width(), l.height()) - 0.5 * l.wall()));
    }

    @Override
    Starter shape(int number, double[] v, double height) {
      return new Starter.Nose(v[0], v[1], height);
    }
  },
  /** A foot with a raised tip towards ambient, hollow behind it. */
  HOOK {
    @Override
    List<NamedLength> lengths(int number, ShapeLimits l) {
      return List.of(
          new NamedLength("width", 3 * l.wall() + l.slot(), l.width()),
          new NamedLength("toe", 0, 0.5 * l.width()),
          new NamedLength("foot", l.wall(), 3 * l.wall()),
          new NamedLength("tip", 0.5 * l.wall(), 0.5 * l.height()),
          new NamedLength("hollow", 2 * l.wall() + l.slot(), l.height() - l.wall()));
    }

    @Override
    Starter shape(int number, double[] v, double height) {
      return new Starter.Hook(v[0], v[1], v[2], v[3], v[4], height);
    }
  };

  /** The last length of teeth. */
  private static final String LEAN = "lean";

  /** Pitch over tip of a tooth that stands alone, which its root does not feel. */
  private static final double WIDE = 10;

  /** Name in options and files. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Lengths with the limits that the box and the printer leave. */
  abstract List<NamedLength> lengths(int number, ShapeLimits limits);

  abstract Starter shape(int number, double[] values, double height);

  /**
   * Least box in which a family has room.
   *
   * @return what is wrong with the limits; empty where the family fits
   */
  public String fault(int number, ShapeLimits limits) {
    try {
      lengths(number, limits);
      return "";
    } catch (IllegalArgumentException e) {
      return "the outline allowed leaves no room for "
          + (this == FLAT || this == NOSE || this == HOOK ? "a " + key() : number + " " + key())
          + " with such walls and slots; allow more width or height, or thinner walls";
    }
  }

  /** True where lips of this family can be alike from both sides. */
  boolean symmetric() {
    return this != NOSE && this != HOOK;
  }

  /**
   * Lips of this family as high as the limits allow.
   *
   * @param number of teeth or pockets, at least 1
   * @param lengths with their limits, as {@link #fault} found them sound
   * @param symmetric true for lips that are alike from both sides
   */
  public LipSpace space(
      int number, ShapeLimits limits, List<NamedLength> lengths, boolean symmetric) {
    List<NamedLength> free =
        lengths.stream().filter(l -> !symmetric || !l.name().equals(LEAN)).toList();
    return new LipSpace() {
      @Override
      public List<NamedLength> lengths() {
        return free;
      }

      @Override
      public LipDrawing drawing(double[] values) {
        return shape(number, values, limits.height()).drawing();
      }
    };
  }

  /** The lengths of this family within limits that {@link #fault} found sound. */
  public List<NamedLength> within(int number, ShapeLimits limits) {
    return lengths(number, limits);
  }
}
