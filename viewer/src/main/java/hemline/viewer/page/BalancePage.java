package hemline.viewer.page;

import hemline.shared.fluid.Air;
import hemline.shared.result.Estimate;
import hemline.shared.result.MachineFigure;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.DownforcePoint;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.OperatingPoint;
import hemline.solver.plenum.RankedLip;
import hemline.solver.plenum.SettledFigures;
import hemline.solver.plenum.Trade;
import hemline.viewer.format.BalanceWords;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import hemline.viewer.format.TradeUnit;
import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.DownforceChart;
import hemline.viewer.picture.FanChart;
import hemline.viewer.picture.MachinePlan;
import hemline.viewer.picture.TradeChart;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A machine's balance, each caution beside the figures it belongs to. */
public final class BalancePage {
  private final MachineBalance balance;
  private final Machine machine;
  private final Page page;

  private BalancePage(MachineBalance balance) {
    this.balance = balance;
    machine = balance.machine();
    page = new Page(title(machine));
  }

  /**
   * The page of a complete balance.
   *
   * @param mesh level of its sections
   */
  public static Page of(MachineBalance balance, String mesh) {
    BalancePage p = new BalancePage(balance);
    p.page.quiet(BalanceWords.conditions(p.machine));
    p.page.texts(BalanceWords.headline(balance), Tone.FINDING);
    p.page.plot(() -> MachinePlan.of(p.machine), "floor, axles, fan and centre of gravity in plan");
    p.page.details().plain(p.machine.description().notes()).everywhere();
    p.points();
    SettledFigures rest = balance.operation().rest();
    if (rest != null) {
      p.figures(rest, balance.operation().travelling());
      p.edges(rest, balance.operation().travelling());
    }
    p.height();
    HoldBlocks holds = new HoldBlocks(balance, p.page);
    holds.holds();
    HoldEndBlocks.ends(balance, p.page);
    var launch = balance.driving().launch();
    if (launch != null) {
      p.page.heading("Going, on level ground");
      p.page.plain(BalanceWords.launch(launch, Air.GRAVITY));
    }
    HoldEndBlocks.manoeuvres(balance, p.page);
    holds.steps();
    p.trades();
    SensitivityBlocks.sensitivities(balance, p.page);
    SensitivityBlocks.assumptions(balance.machine(), p.page);
    p.page.notices(balance.notices());
    p.page.details();
    return p.page.quiet(
        "%d sections solved on %s grids. Every figure comes with the band that the leaks' own bands"
                .formatted(balance.leakPoints().size(), mesh)
            + " leave it.");
  }

  /** What stands over the pages of a machine. */
  public static String title(Machine machine) {
    Machine.Description told = machine.description();
    return told.name() + (told.invented() ? " (invented figures)" : "");
  }

  private void points() {
    page.heading("Operating points: fan against all leaks");
    PageTable table =
        PageTable.of("suction, Pa", "fan, L/s", "seal, L/s", "valve, L/s", "other, L/s", "");
    for (OperatingPoint p : balance.operation().points()) {
      table.row(
          BalanceWords.figure(p.suction(), 1),
          BalanceWords.figure(p.flows().fan(), 1000),
          BalanceWords.figure(p.flows().leak(), 1000),
          BalanceWords.figure(p.flows().valve(), 1000),
          BalanceWords.figure(p.flows().other(), 1000),
          BalanceWords.point(p));
    }
    page.table(table).plain(balance.operation().points().isEmpty() ? "There is none." : "");
    page.plot(() -> FanChart.of(balance), "pressure of the fan and of all leaks over the flow");
  }

  private String travelling() {
    return "at " + BalanceWords.speed(machine.duty().travelSpeed());
  }

  private void figures(SettledFigures rest, @Nullable SettledFigures moving) {
    PageTable table = PageTable.of("", "at rest", moving == null ? "" : travelling(), "");
    for (MachineFigure figure : MachineFigure.values()) {
      row(table, figure.title(), rest, moving, TradeUnit.of(figure), f -> f.get(figure));
      table.help(figure.symbol() + ": " + figure.meaning() + ".");
      if (figure == MachineFigure.CENTRE_Y) {
        List<Axle> axles = machine.running().axles();
        for (int i = 0; i < axles.size(); i++) {
          int k = i;
          String name = "axle load, " + axles.get(i).name();
          row(table, name, rest, moving, new TradeUnit(1, "N"), f -> f.axleLoads().get(k));
        }
      }
    }
    page.heading("Where it settles, on level ground").table(table);
    page.plain(BalanceWords.centre(machine, rest));
    page.text(BalanceWords.FAN_CAUTION, Tone.CAUTION);
    page.text(BalanceWords.BATTERY_CAUTION, Tone.CAUTION);
    page.plot(() -> DownforceChart.of(balance), "downforce over the static gap and the fan speed");
    page.details();
    changes(
        "smallest static gap, " + LengthUnit.unit(),
        balance.changes().overGap(),
        LengthUnit.factor() * machine.floor().leastGap());
    changes("fan speed, 1000 rpm", balance.changes().overSpeed(), 0.06 * machine.fan().speed());
    page.everywhere();
  }

  /** What the chart shows, as numbers. */
  private void changes(String what, List<DownforcePoint> points, double unit) {
    PageTable table = PageTable.of(what, "downforce, N", "suction, Pa");
    for (DownforcePoint p : points) {
      table.row(Digits.plain(unit * p.factor(), 4), margin(p.downforce()), margin(p.suction()));
    }
    page.table(table);
  }

  private static void row(
      PageTable table,
      String name,
      SettledFigures rest,
      @Nullable SettledFigures moving,
      TradeUnit unit,
      Function<SettledFigures, Estimate> figure) {
    table.row(
        name,
        BalanceWords.figure(figure.apply(rest), unit.factor()),
        moving == null ? "" : BalanceWords.figure(figure.apply(moving), unit.factor()),
        unit.unit());
  }

  private void edges(SettledFigures rest, @Nullable SettledFigures moving) {
    PageTable table =
        PageTable.of(
            "edge",
            "faces",
            "lip",
            "static gap, " + LengthUnit.unit(),
            "gap, " + LengthUnit.unit(),
            "leak at rest, L/s",
            moving == null ? "" : travelling());
    for (int i = 0; i < rest.edgeGaps().size(); i++) {
      table.row(
          String.valueOf(i),
          BalanceWords.faces(machine, i),
          machine.floor().edges().get(i).lip().name(),
          LengthUnit.bare(machine.floor().edges().get(i).gap(), 4),
          BalanceWords.figure(rest.edgeGaps().get(i), LengthUnit.factor()),
          BalanceWords.figure(rest.edgeLeaks().get(i), 1000),
          moving == null ? "" : BalanceWords.figure(moving.edgeLeaks().get(i), 1000));
    }
    page.heading("Edge by edge, springs included").table(table);
  }

  private void height() {
    var r = balance.drawDown().margin();
    if (r != null) {
      page.heading("Ride height and suck-down");
      page.texts(HeightWords.rideHeight(r), Tone.PLAIN);
      page.text(BalanceWords.PINCH_CAUTION, Tone.CAUTION);
    }
    var v = balance.drawDown().valve();
    if (v != null) {
      page.heading("Relief valve");
      page.texts(HeightWords.valve(v, balance.operation().rest() != null), Tone.PLAIN);
    }
  }

  /** A figure, or a dash where there is none. */
  static String or(@Nullable Estimate e, double factor) {
    return e == null ? "-" : BalanceWords.figure(e, factor);
  }

  /** A margin, or a dash where there is none. */
  static String margin(@Nullable Estimate e) {
    return or(e, 1);
  }

  private void trades() {
    PageTable table =
        PageTable.of(
            "change",
            "downforce, N",
            "shaft, W",
            "N per electrical W",
            "gap, " + LengthUnit.unit(),
            "");
    for (Trade t : balance.changes().trades()) {
      table.row(
          BalanceWords.change(t),
          margin(t.downforce()),
          margin(t.shaftPower()),
          margin(t.perWatt()),
          or(t.leastGap(), LengthUnit.factor()),
          remark(t));
    }
    page.heading("One change at a time").table(table);
    page.texts(TradeWords.best(balance.changes().trades()).stream().toList(), Tone.FINDING);
    page.plot(() -> TradeChart.of(balance), "downforce, and downforce per watt, change by change");
    if (!balance.changes().lips().isEmpty()) {
      page.heading("Other lips all round, by downforce on this fan").table(lips());
      page.texts(TradeWords.lipRanks(balance.changes().lips()), Tone.PLAIN);
    }
  }

  private PageTable lips() {
    PageTable table =
        PageTable.of(
            "lip",
            "rank",
            "over as it is",
            "downforce, N",
            "N per electrical W",
            "gap, " + LengthUnit.unit(),
            "ties with",
            "");
    for (RankedLip lip : balance.changes().lips()) {
      Trade t = lip.trade();
      table.row(
          lip.name(),
          String.valueOf(lip.rank()),
          margin(lip.relative()),
          margin(t.downforce()),
          margin(t.perWatt()),
          or(t.leastGap(), LengthUnit.factor()),
          TradeWords.ties(lip, balance.changes().lips()),
          remark(t));
    }
    return table;
  }

  private static String remark(Trade t) {
    return t.downforce() == null
        ? "does not settle"
        : t.beyond() ? "beyond the solved sections" : "";
  }
}
