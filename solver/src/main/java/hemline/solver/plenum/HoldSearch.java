package hemline.solver.plenum;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.SupportPolygon;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the worst heading on ground of one tilt, for every margin on its own.
 *
 * <p>Headings every 15° and those across each edge of the wheels' polygon, where a machine tips
 * first; between them the least margin is closed in by golden section.
 */
final class HoldSearch {
  private static final int HEADINGS = 24;
  private static final int CLOSING = 14;
  private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

  /** Headings whose margins differ by less, relatively, are alike; the first is told. */
  private static final double SAME = 1e-6;

  /** The four square headings come first, so that they are told where others are alike. */
  private static final double[] SQUARE = {Math.PI, 0, 1.5 * Math.PI, 0.5 * Math.PI};

  static final List<ToDoubleFunction<HoldStatics.Margins>> COLUMNS =
      List.of(
          HoldStatics.Margins::slip,
          HoldStatics.Margins::tip,
          HoldStatics.Margins::lift,
          HoldStatics.Margins::peel,
          HoldStatics.Margins::sliding);

  private final HoldStatics statics;
  private final States states;

  /** How the plenum stands in an attitude. */
  interface States {
    /**
     * The state.
     *
     * @param like a state that differs little, to look close to; may be null
     * @return null when there is none clear of the ground
     */
    @Nullable PlenumState at(Attitude attitude, Side side, @Nullable PlenumState like);
  }

  /**
   * A heading with its margins.
   *
   * @param state null when there is none
   */
  record Found(Attitude attitude, @Nullable PlenumState state, HoldStatics.Margins margins) {}

  /**
   * What was found at one tilt.
   *
   * @param columns worst heading of slip, tip, axle lift, peel-off and sliding
   * @param worst the one of them with the least margin, sliding left out
   * @param looked every heading looked at for it
   */
  record Worst(List<Found> columns, Found worst, List<Found> looked) {
    double least() {
      return worst.margins().least();
    }

    /** Each attitude among the columns once. */
    List<Attitude> attitudes() {
      return columns.stream().map(Found::attitude).distinct().toList();
    }
  }

  HoldSearch(HoldStatics statics, States states) {
    this.statics = statics;
    this.states = states;
  }

  /** Search with the seal whole. */
  static HoldSearch whole(HoldStatics statics) {
    return new HoldSearch(
        statics, (a, side, like) -> statics.balance().settled(statics.stand(a, side), like));
  }

  HoldStatics statics() {
    return statics;
  }

  /** Headings to look at on ground of a tilt. */
  List<Attitude> headings(double tilt) {
    List<Attitude> out = new ArrayList<>();
    for (double a : SQUARE) {
      out.add(new Attitude(tilt, a));
    }
    if (!out.get(0).pulls()) {
      return out.subList(0, 1);
    }
    for (int k = 0; k < HEADINGS; k++) {
      if (k % (HEADINGS / 4) != 0) {
        out.add(new Attitude(tilt, 2 * Math.PI * k / HEADINGS));
      }
    }
    for (SupportPolygon.Edge e : statics.balance().wheels().polygon().edges()) {
      if (e.outX() != 0 && e.outY() != 0) {
        out.add(new Attitude(tilt, Math.atan2(e.outY(), e.outX())));
      }
    }
    return out;
  }

  Found found(Attitude a, @Nullable PlenumState like) {
    PlenumState s = states.at(a, Side.VALUE, like);
    return new Found(a, s, statics.margins(a, s));
  }

  /** Worst of some headings, without closing in; no more is asked once one has no balance. */
  Worst among(List<Attitude> headings) {
    List<Found> all = new ArrayList<>();
    PlenumState like = null;
    for (Attitude a : headings) {
      Found f = found(a, like);
      all.add(f);
      if (!f.margins().settles()) {
        return of(Collections.nCopies(COLUMNS.size(), f), all);
      }
      like = f.state();
    }
    List<Found> columns = new ArrayList<>();
    for (ToDoubleFunction<HoldStatics.Margins> column : COLUMNS) {
      columns.add(least(column, all));
    }
    return of(columns, all);
  }

  /** The first of those with the least margin. */
  static Found least(ToDoubleFunction<HoldStatics.Margins> column, List<Found> all) {
    Found least = all.get(0);
    for (Found f : all) {
      least = less(column, f, least) ? f : least;
    }
    return least;
  }

  /** Worst heading at a tilt for each margin. */
  Worst at(double tilt) {
    Worst rough = among(headings(tilt));
    if (!rough.worst().margins().settles() || !rough.worst().attitude().pulls()) {
      return rough;
    }
    List<Found> columns = new ArrayList<>();
    for (int c = 0; c < COLUMNS.size(); c++) {
      Found f = rough.columns().get(c);
      if (c == COLUMNS.size() - 1 && !statics.brakesLimited()) {
        columns.add(columns.get(0)); // sliding then goes with slip
      } else {
        columns.add(
            Double.isFinite(COLUMNS.get(c).applyAsDouble(f.margins()))
                ? closedIn(COLUMNS.get(c), f)
                : f);
      }
    }
    return of(columns, rough.looked());
  }

  /** Worst of the worst of each column. */
  static Worst of(List<Found> columns, List<Found> looked) {
    Found worst = columns.get(0);
    for (Found f : columns) {
      worst = less(HoldStatics.Margins::least, f, worst) ? f : worst;
    }
    return new Worst(columns, worst, looked);
  }

  private static boolean less(ToDoubleFunction<HoldStatics.Margins> column, Found a, Found than) {
    double v = column.applyAsDouble(a.margins());
    double w = column.applyAsDouble(than.margins());
    return Double.isInfinite(w) ? v < w : v < w - SAME * Math.abs(w);
  }

  /** Least of a margin close to a heading. */
  Found closedIn(ToDoubleFunction<HoldStatics.Margins> column, Found start) {
    double tilt = start.attitude().tilt();
    double from = start.attitude().downhill() - 2 * Math.PI / HEADINGS;
    double to = start.attitude().downhill() + 2 * Math.PI / HEADINGS;
    return closedIn(column, start, from, to, h -> new Attitude(tilt, h));
  }

  /** Attitude of a number. */
  interface Turn {
    Attitude at(double value);
  }

  /** Least of a margin between two values, by golden section; the start where none is less. */
  Found closedIn(
      ToDoubleFunction<HoldStatics.Margins> column,
      Found start,
      double from,
      double to,
      Turn turn) {
    double a = from;
    double b = to;
    Found c = found(turn.at(b - GOLDEN * (b - a)), start.state());
    Found d = found(turn.at(a + GOLDEN * (b - a)), start.state());
    Found best = start;
    for (int k = 0; k < CLOSING; k++) {
      best = less(column, c, best) ? c : best;
      best = less(column, d, best) ? d : best;
      if (column.applyAsDouble(c.margins()) < column.applyAsDouble(d.margins())) {
        b = a + GOLDEN * (b - a);
        d = c;
        c = found(turn.at(b - GOLDEN * (b - a)), start.state());
      } else {
        a = b - GOLDEN * (b - a);
        c = d;
        d = found(turn.at(a + GOLDEN * (b - a)), start.state());
      }
    }
    return best;
  }

  /** A figure of one heading with the band that the leaks leave it. */
  Bands<HoldStatics.Margins> bands(Found f) {
    PlenumState low = states.at(f.attitude(), Side.LOW, f.state());
    PlenumState high = states.at(f.attitude(), Side.HIGH, f.state());
    return new Bands<>(
        f.margins(), statics.margins(f.attitude(), low), statics.margins(f.attitude(), high), 0, 0);
  }

  /** The smallest margin over the columns on each side of the leaks. */
  static @Nullable Estimate least(List<Bands<HoldStatics.Margins>> columns, Worst worst) {
    double v = worst.least();
    if (!Double.isFinite(v)) {
      return null;
    }
    double a = Double.POSITIVE_INFINITY;
    double b = Double.POSITIVE_INFINITY;
    for (Bands<HoldStatics.Margins> c : columns) {
      a = c.low() == null ? 0 : Math.min(a, c.low().least());
      b = c.high() == null ? 0 : Math.min(b, c.high().least());
    }
    return columns.get(0).of(finite(v), finite(a), finite(b));
  }

  static @Nullable Estimate estimate(
      Bands<HoldStatics.Margins> b, ToDoubleFunction<HoldStatics.Margins> of) {
    return Double.isFinite(of.applyAsDouble(b.value()))
        ? b.of(m -> finite(of.applyAsDouble(m)))
        : null;
  }

  /** Margins beyond this count as this. */
  private static final double MOST = 1000;

  static double finite(double margin) {
    return Math.max(-MOST, Math.min(MOST, margin));
  }
}
