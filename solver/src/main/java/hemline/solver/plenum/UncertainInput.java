package hemline.solver.plenum;

import hemline.shared.vehicle.Ambient;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Fan;
import hemline.shared.vehicle.Load;
import hemline.shared.vehicle.Machine;
import hemline.shared.vehicle.OtherLeak;
import hemline.shared.vehicle.ReliefValve;
import hemline.shared.vehicle.Running;
import hemline.shared.vehicle.Tolerances;
import hemline.shared.vehicle.WheelLoads;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/**
 * An input or a guess that a margin hangs on.
 *
 * @param name for people
 * @param unit "1" where it moves by a share of itself, else m
 * @param tolerance by which the file says it may be off; 0 where it says nothing
 * @param step by which sensitivities compare it: a tenth of it, places a tenth of half the distance
 *     between the outer wheels
 * @param moved the balance with it moved
 */
record UncertainInput(
    String name, String unit, double tolerance, double step, DoubleFunction<PlenumBalance> moved) {
  static final double TENTH = 0.1;

  private static final String LEAK = "leak under the lips";
  private static final String LIP_FORCE = "force of the air on the lips";
  private static final String CORNERS = "allowance for corners";
  private static final String JET = "share of the valve's jet that strikes the ground";
  private static final Set<String> GUESSES = Set.of(LEAK, LIP_FORCE, CORNERS, JET);
  private static final String SHARE = "1";
  private static final String METRE = "m";

  /** All that a machine has. */
  static List<UncertainInput> of(PlenumBalance balance) {
    Machine m = balance.machine();
    List<UncertainInput> all = new ArrayList<>(toleranced(balance));
    Load load = m.load();
    double base = 0.5 * TENTH * spread(balance, w -> w.x());
    double track = 0.5 * TENTH * spread(balance, w -> w.y());
    all.add(
        share(
            "height of the centre of gravity",
            t ->
                balance.changed(
                    m.withLoad(
                        new Load(load.mass(), load.x(), load.y(), (1 + t) * load.height())))));
    all.add(
        place(
            "centre of gravity, forwards",
            base,
            d ->
                balance.changed(
                    m.withLoad(new Load(load.mass(), load.x() + d, load.y(), load.height())))));
    if (track > 0) {
      all.add(
          place(
              "centre of gravity, to the left",
              track,
              d ->
                  balance.changed(
                      m.withLoad(new Load(load.mass(), load.x(), load.y() + d, load.height())))));
    }
    running(all, balance);
    fan(all, balance);
    Guessed g = Guessed.USUAL;
    all.add(share(LEAK, t -> balance.guessing(g.withLeak(1 + t))));
    all.add(share(LIP_FORCE, t -> balance.guessing(g.withLipForce(1 + t))));
    all.add(share(CORNERS, t -> balance.guessing(g.withCorner(1 + t))));
    openings(all, balance);
    return all;
  }

  /** True for a guess of the balance, which no file gives. */
  boolean assumed() {
    return GUESSES.contains(name);
  }

  /** Those that may have a tolerance in the file. */
  static List<UncertainInput> toleranced(PlenumBalance balance) {
    Machine m = balance.machine();
    Tolerances t = m.duty().terms().tolerances();
    Load load = m.load();
    double gap = m.floor().edges().stream().mapToDouble(e -> e.gap()).average().orElse(0);
    return List.of(
        new UncertainInput(
            "friction",
            SHARE,
            t.friction(),
            TENTH,
            s -> balance.changed(m.withRunning(m.running().gripping(1 + s)))),
        new UncertainInput(
            "fan pressure",
            SHARE,
            t.fanPressure(),
            TENTH,
            s -> balance.changed(m.withFan(m.fan().withCurve(m.fan().curve().stronger(1 + s))))),
        new UncertainInput(
            "mass",
            SHARE,
            t.mass(),
            TENTH,
            s ->
                balance.changed(
                    m.withLoad(
                        new Load((1 + s) * load.mass(), load.x(), load.y(), load.height())))),
        new UncertainInput(
            "gap",
            METRE,
            t.gap(),
            TENTH * gap,
            d -> balance.changed(m.withFloor(m.floor().withGapsWider(d)))));
  }

  private static UncertainInput share(String name, DoubleFunction<PlenumBalance> moved) {
    return new UncertainInput(name, SHARE, 0, TENTH, moved);
  }

  private static UncertainInput place(
      String name, double step, DoubleFunction<PlenumBalance> moved) {
    return new UncertainInput(name, METRE, 0, step, moved);
  }

  private static double spread(PlenumBalance balance, ToDoubleFunction<WheelLoads.Wheel> of) {
    var s = balance.wheels().all().stream().mapToDouble(of).summaryStatistics();
    return s.getMax() - s.getMin();
  }

  private static void running(List<UncertainInput> all, PlenumBalance balance) {
    Machine m = balance.machine();
    Running r = m.running();
    all.add(
        share(
            "stiffness of the tyres",
            t -> axles(balance, a -> a.withStiffness((1 + t) * a.stiffness()))));
    if (Double.isFinite(r.heaveStiffness()) || Double.isFinite(r.pitchStiffness())) {
      all.add(
          share("stiffness of the frame", t -> balance.changed(m.withRunning(r.stiffer(1 + t)))));
    }
    if (r.axles().stream().anyMatch(a -> a.braked() && Double.isFinite(a.brakeForce()))) {
      all.add(
          share(
              "torque of the brakes",
              t -> axles(balance, a -> a.braked() ? a.withBrake((1 + t) * a.brakeForce()) : a)));
    }
  }

  private static PlenumBalance axles(PlenumBalance balance, UnaryOperator<Axle> each) {
    Machine m = balance.machine();
    Running r = m.running();
    return balance.changed(m.withRunning(r.withAxles(r.axles().stream().map(each).toList())));
  }

  private static void fan(List<UncertainInput> all, PlenumBalance balance) {
    Machine m = balance.machine();
    Fan f = m.fan();
    all.add(
        share("fan flow", t -> balance.changed(m.withFan(f.withCurve(f.curve().wider(1 + t))))));
    all.add(share("fan speed", t -> balance.changed(m.withFan(f.atSpeed((1 + t) * f.speed())))));
    all.add(
        share(
            "density of the air", t -> balance.changed(m.withAir(denser(m.duty().air(), 1 + t)))));
    if (f.outlet().area() > 0) {
      all.add(
          share(
              "area of the outlet",
              t -> balance.changed(m.withFan(f.withExitArea((1 + t) * f.outlet().area())))));
    }
  }

  /** Air of another temperature, so that its density is a multiple. */
  private static Ambient denser(Ambient air, double factor) {
    return new Ambient(air.temperature() / factor, air.altitude());
  }

  private static void openings(List<UncertainInput> all, PlenumBalance balance) {
    Machine m = balance.machine();
    ReliefValve v = m.openings().valve();
    if (v != null) {
      all.add(
          share(
              "preload of the valve",
              t -> balance.changed(m.withValve(v.withPreload((1 + t) * v.preload())))));
      all.add(
          share(
              JET,
              t ->
                  balance.guessing(
                      Guessed.USUAL.withValveJet((1 + t) * Guessed.USUAL.valveJet()))));
    }
    if (!m.openings().leaks().isEmpty()) {
      all.add(share("other leaks", t -> balance.changed(m.withOtherLeaks(times(m, 1 + t)))));
    }
  }

  private static List<OtherLeak> times(Machine m, double factor) {
    return m.openings().leaks().stream()
        .map(o -> new OtherLeak(o.name(), factor * o.area(), o.dischargeCoefficient()))
        .toList();
  }
}
