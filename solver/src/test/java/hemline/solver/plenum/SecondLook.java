package hemline.solver.plenum;

import hemline.shared.vehicle.GroundStep;
import hemline.shared.vehicle.Machine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;

/**
 * Looks again at every "yes" of one machine with the second statics: a fan of headings (and tilts,
 * where the worst of all is told to hold), closed in where it comes nearest to letting go; dips and
 * ledges in the heading that was told and in some of chance.
 */
final class SecondLook {
  private static final int HEADINGS = 24;
  private static final int TILTS = 18;
  private static final int CHANCES = 2;

  /** A rough margin above this is well above 1. */
  private static final double CLOSE = 1.2;

  private final String name;
  private final Machine machine;
  private final SecondStatics second;
  private final SplittableRandom chance;
  private final Map<String, Tally> tallies = new LinkedHashMap<>();
  private final List<String> letGo = new ArrayList<>();

  /** What was looked at under one heading of the table. */
  static final class Tally {
    int told;
    int yes;
    int attitudes;
    int letGo;
    double closest = Double.POSITIVE_INFINITY;

    void add(Tally o) {
      told += o.told;
      yes += o.yes;
      attitudes += o.attitudes;
      letGo += o.letGo;
      closest = Math.min(closest, o.closest);
    }
  }

  SecondLook(String name, Machine machine, SplittableRandom chance) {
    this.name = name;
    this.machine = machine;
    this.chance = chance;
    second = new SecondStatics(machine, HoldMachines::discharge, HoldMachines.LIFT);
  }

  Map<String, Tally> tallies() {
    return tallies;
  }

  /** Every yes that falls, in words. */
  List<String> letGo() {
    return letGo;
  }

  void holds(List<Hold> holds) {
    for (Hold h : holds) {
      Tally t = tally(h.place().name());
      t.told++;
      if (h.holds()) {
        t.yes++;
        boolean all = h.place().name().equals("worst");
        double[] nearest = {h.place().angle(), Math.PI - h.place().noseAngle()};
        double least = margin(t, h, nearest[0], nearest[1], true);
        for (int k = 0; k <= (all ? TILTS : 0); k++) {
          double tilt = all ? Math.PI * k / TILTS : h.place().angle();
          int headings = Math.sin(tilt) < 1e-9 ? 1 : all ? HEADINGS / 2 : HEADINGS;
          for (int i = 0; i < headings; i++) {
            double d = 2 * Math.PI * i / headings;
            double m = margin(t, h, tilt, d, true);
            if (m < least) {
              least = m;
              nearest = new double[] {tilt, d};
            }
          }
        }
        closedIn(t, h, nearest, all);
      }
    }
  }

  private void closedIn(Tally t, Hold h, double[] from, boolean all) {
    double[] at = from.clone();
    double least = margin(t, h, at[0], at[1], false);
    for (double d = Math.PI / HEADINGS; d > 0.004; d *= 0.5) {
      double[][] around = {{0, -d}, {0, d}, {all ? -d : 0, 0}, {all ? d : 0, 0}};
      for (double[] by : around) {
        double tilt = Math.max(0, Math.min(Math.PI, at[0] + by[0]));
        if (by[0] != 0 || by[1] != 0) {
          double m = margin(t, h, tilt, at[1] + by[1], false);
          if (m < least) {
            least = m;
            at = new double[] {tilt, at[1] + by[1]};
          }
        }
      }
    }
    t.closest = Math.min(t.closest, least);
    SecondStatics.Found f = second.settle(at[0], at[1], null, null);
    if (f != null && h.judgement().verdict() == HoldVerdict.YES && second.sliding(f) < 1) {
      t.letGo++;
      fell(h.place().name() + " slides on", at[0], at[1], second.sliding(f));
    }
  }

  /** Margin against letting go, roughly (never too low) or well; 0 without balance. */
  private double margin(Tally t, Hold h, double tilt, double downhill, boolean rough) {
    t.attitudes++;
    SecondStatics.Found f = second.settle(tilt, downhill, null, null);
    double m = f == null ? 0 : rough ? second.roughSlip(f) : second.slip(f);
    if (m < 1) {
      t.letGo++;
      fell(h.place().name(), tilt, downhill, m);
    }
    return m;
  }

  private void fell(String where, double tilt, double downhill, double margin) {
    letGo.add(
        String.format(
            Locale.ROOT,
            "%s, %s: %.4f at %.2f°, downhill %.2f°",
            name,
            where,
            margin,
            Math.toDegrees(tilt),
            Math.toDegrees(downhill)));
  }

  void crossings(List<StepCrossing> crossings) {
    for (StepCrossing c : crossings) {
      Tally t = tally(c.kind().key());
      for (Hold h : c.holds()) {
        t.told++;
        if (h.holds()) {
          t.yes++;
          over(t, c, h, Math.PI - h.place().noseAngle());
          for (int k = 0; k < CHANCES; k++) {
            over(t, c, h, 2 * Math.PI * chance.nextDouble());
          }
        }
      }
    }
  }

  private void over(Tally t, StepCrossing c, Hold h, double downhill) {
    SecondStatics.Dip dip = dip(c);
    String where = h.place().name() + " over a " + StepCrossing.named(c.kind(), c.edges());
    SecondStatics.Found before = second.settle(h.place().angle(), downhill, null, null);
    List<SecondStatics.Found> both = new ArrayList<>();
    if (before != null) {
      both.add(second.settle(h.place().angle(), downhill, dip, before.plane()));
      both.add(second.settle(h.place().angle(), downhill, dip, null));
    } else {
      both.add(null);
    }
    for (SecondStatics.Found f : both) {
      t.attitudes++;
      double m = f == null ? 0 : second.roughSlip(f);
      if (m > 0 && m < CLOSE) {
        m = second.slip(f);
      }
      t.closest = Math.min(t.closest, m);
      if (m < 1) {
        t.letGo++;
        fell(where, h.place().angle(), downhill, m);
      }
    }
  }

  private SecondStatics.Dip dip(StepCrossing c) {
    GroundStep step = Objects.requireNonNull(machine.duty().step());
    boolean corner =
        c.kind() == StepCrossing.Kind.CORNER || c.kind() == StepCrossing.Kind.LEDGE_CORNER;
    int n = machine.floor().edges().size();
    int vertex = -1;
    if (corner) {
      boolean last = c.edges().get(0) == 0 && c.edges().get(1) == n - 1 && n > 2;
      vertex = last ? 0 : c.edges().get(1);
    }
    return new SecondStatics.Dip(
        c.kind().ledge() ? -step.height() : step.height(),
        corner ? 0.5 * step.length() : step.length(),
        c.edges(),
        vertex);
  }

  private Tally tally(String of) {
    return tallies.computeIfAbsent(of, k -> new Tally());
  }
}
