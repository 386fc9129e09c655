package hemline.viewer.cli;

import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.Hold;
import hemline.solver.plenum.Launch;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.OperatingPoint;
import hemline.solver.plenum.RideHeight;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.StepCrossing;
import hemline.solver.plenum.Trade;
import hemline.solver.plenum.ValveSetting;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.TextTable;
import hemline.viewer.format.TextTable.Lean;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A machine's balance for people, with each caution beside the figures it belongs to. */
final class BalanceText {
  private static final String INDENT = "  ";
  private static final double G = 9.80665;

  private final List<String> lines = new ArrayList<>();
  private final MachineBalance balance;
  private final Machine machine;

  private BalanceText(MachineBalance balance) {
    this.balance = balance;
    machine = balance.machine();
  }

  /** Lines of text. */
  static List<String> lines(MachineBalance balance, String mesh, double seconds) {
    BalanceText text = new BalanceText(balance);
    text.head();
    text.points();
    SettledFigures rest = balance.rest();
    if (rest != null) {
      text.figures(rest);
    }
    text.height(balance.rideHeight());
    text.valve(balance.valve());
    text.holds();
    text.launch(balance.launch());
    text.steps();
    text.trades();
    text.lines.addAll(ResultText.notices(balance.notices()));
    text.lines.add("");
    text.lines.add(
        balance.leakPoints().stream().distinct().count()
            + " sections on "
            + mesh
            + " grids, "
            + Digits.plain(seconds, 2)
            + " s.");
    return text.lines;
  }

  private void head() {
    lines.add(machine.name() + (machine.invented() ? " (invented figures)" : ""));
    lines.add(BalanceWords.conditions(machine));
  }

  private void title(String title) {
    lines.add("");
    lines.add(title);
  }

  private void caution(String text) {
    lines.addAll(TextTable.wrapped(text, INDENT + "! ", INDENT + "  ", ResultText.WIDTH));
  }

  private void points() {
    title("Operating points (fan curve against all leaks)");
    if (balance.operatingPoints().isEmpty()) {
      lines.add(INDENT + "none");
      return;
    }
    TextTable table =
        new TextTable(Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.LEFT);
    table.row("suction, Pa", "fan, L/s", "seal, L/s", "valve, L/s", "other, L/s", "");
    for (OperatingPoint p : balance.operatingPoints()) {
      table.row(
          BalanceWords.figure(p.suction(), 1),
          BalanceWords.figure(p.fanFlow(), 1000),
          BalanceWords.figure(p.leakFlow(), 1000),
          BalanceWords.figure(p.valveFlow(), 1000),
          BalanceWords.figure(p.otherFlow(), 1000),
          BalanceWords.point(p));
    }
    lines.addAll(table.lines(INDENT));
  }

  private void figures(SettledFigures f) {
    SettledFigures v = balance.travelling();
    title("Where it settles");
    TextTable table = new TextTable(Lean.LEFT, Lean.RIGHT, Lean.LEFT, Lean.RIGHT);
    table.row(
        "", "at rest", "", v == null ? "" : "at " + BalanceWords.speed(machine.travelSpeed()));
    row(table, "suction", f.suction(), v == null ? null : v.suction(), 1, "Pa");
    row(table, "downforce", f.downforce(), v == null ? null : v.downforce(), 1, "N");
    row(table, "  suction on the floor", f.floorForce(), v == null ? null : v.floorForce(), 1, "N");
    row(table, "  air on the lips", f.lipForce(), v == null ? null : v.lipForce(), 1, "N");
    row(table, "  thrust of the fan", f.thrust(), v == null ? null : v.thrust(), 1, "N");
    row(table, "  jet of the valve", f.valveForce(), v == null ? null : v.valveForce(), 1, "N");
    row(table, "centre of pressure, x", f.centreX(), v == null ? null : v.centreX(), 1e3, "mm");
    List<Axle> axles = machine.running().axles();
    for (int i = 0; i < axles.size(); i++) {
      row(
          table,
          "load of axle " + axles.get(i).name(),
          f.axleLoads().get(i),
          v == null ? null : v.axleLoads().get(i),
          1,
          "N");
    }
    row(table, "smallest gap", f.leastGap(), v == null ? null : v.leastGap(), 1e3, "mm");
    row(table, "fan flow", f.fanFlow(), v == null ? null : v.fanFlow(), 1e3, "L/s");
    row(table, "air power", f.airPower(), v == null ? null : v.airPower(), 1, "W");
    row(table, "shaft power", f.shaftPower(), v == null ? null : v.shaftPower(), 1, "W");
    row(
        table,
        "electrical power",
        f.electricalPower(),
        v == null ? null : v.electricalPower(),
        1,
        "W");
    row(
        table,
        "run time on the battery",
        f.runTime(),
        v == null ? null : v.runTime(),
        1.0 / 60,
        "min");
    lines.addAll(table.lines(INDENT));
    caution(BalanceWords.FAN_CAUTION);
    caution(BalanceWords.BATTERY_CAUTION);
  }

  private static void row(
      TextTable table,
      String name,
      Estimate rest,
      @Nullable Estimate moving,
      double factor,
      String unit) {
    table.row(
        name,
        BalanceWords.figure(rest, factor),
        unit,
        moving == null ? "" : BalanceWords.figure(moving, factor));
  }

  private void height(@Nullable RideHeight r) {
    if (r == null) {
      return;
    }
    title("Ride height and suck-down");
    BalanceWords.rideHeight(machine, r)
        .forEach(
            s -> lines.addAll(TextTable.wrapped(s, INDENT, INDENT + INDENT, ResultText.WIDTH)));
    caution(BalanceWords.PINCH_CAUTION);
  }

  private void valve(@Nullable ValveSetting v) {
    if (v == null) {
      return;
    }
    title("Relief valve");
    BalanceWords.valve(v)
        .forEach(
            s -> lines.addAll(TextTable.wrapped(s, INDENT, INDENT + INDENT, ResultText.WIDTH)));
  }

  private void holds() {
    title("Holding still, fan on (worst heading; 1 is the limit)");
    TextTable table =
        new TextTable(
            Lean.LEFT,
            Lean.LEFT,
            Lean.LEFT,
            Lean.RIGHT,
            Lean.RIGHT,
            Lean.RIGHT,
            Lean.RIGHT,
            Lean.RIGHT);
    table.row("", "holds", "limited by", "slip", "sliding", "tip", "axle lift", "peel-off");
    for (Hold h : balance.holds()) {
      table.row(
          BalanceWords.place(h),
          h.holds() ? "yes" : "no",
          h.limitedBy(),
          margin(h.slip()),
          margin(h.sliding()),
          margin(h.tip()),
          margin(h.axleLift()),
          margin(h.peelOff()));
    }
    lines.addAll(table.lines(INDENT));
    caution(BalanceWords.HOLD_CAUTION);
  }

  private static String margin(@Nullable Estimate e) {
    return e == null ? "-" : BalanceWords.figure(e, 1);
  }

  private void launch(@Nullable Launch l) {
    if (l == null) {
      return;
    }
    title("Going, on level ground");
    lines.addAll(
        TextTable.wrapped(BalanceWords.launch(l, G), INDENT, INDENT + INDENT, ResultText.WIDTH));
  }

  private void steps() {
    if (balance.steps().isEmpty()) {
      return;
    }
    title(BalanceWords.stepTitle(machine));
    TextTable table = new TextTable(Lean.LEFT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.LEFT);
    table.row("under edge", "suction, Pa", "downforce, N", "kept, %", "holds on a wall");
    for (StepCrossing s : balance.steps()) {
      Hold wall = s.wall();
      Estimate kept = s.kept();
      table.row(
          String.valueOf(s.edge()),
          margin(s.suction()),
          margin(s.downforce()),
          kept == null ? "-" : BalanceWords.figure(kept, 100),
          wall == null
              ? "no: the suction is lost"
              : wall.holds() ? "yes" : "no: " + wall.limitedBy());
    }
    lines.addAll(table.lines(INDENT));
  }

  private void trades() {
    title("One change at a time");
    lines.addAll(table(balance.trades(), true));
    BalanceWords.best(balance.trades())
        .ifPresent(s -> lines.addAll(TextTable.wrapped(s, INDENT, INDENT, ResultText.WIDTH)));
    if (!balance.lips().isEmpty()) {
      title("Other lips all round, by downforce on this fan");
      lines.addAll(table(balance.lips(), false));
    }
  }

  private static List<String> table(List<Trade> trades, boolean factors) {
    TextTable table =
        new TextTable(
            Lean.LEFT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.RIGHT, Lean.LEFT);
    table.row(
        factors ? "change" : "lip",
        factors ? "times" : "",
        "downforce, N",
        "shaft, W",
        "N per W",
        "gap, mm",
        "");
    for (Trade t : trades) {
      table.row(
          t.kind() == Trade.Kind.LIP ? t.name() : t.kind().key(),
          t.kind() == Trade.Kind.AS_IT_IS || t.kind() == Trade.Kind.LIP
              ? ""
              : Digits.plain(t.factor(), 3),
          t.downforce() == null ? "does not settle" : BalanceWords.figure(t.downforce(), 1),
          t.shaftPower() == null ? "" : BalanceWords.figure(t.shaftPower(), 1),
          t.perWatt() == null ? "" : BalanceWords.figure(t.perWatt(), 1),
          t.leastGap() == null ? "" : BalanceWords.figure(t.leastGap(), 1000),
          t.beyond() ? "beyond the solved sections" : "");
    }
    return table.lines(INDENT);
  }
}
