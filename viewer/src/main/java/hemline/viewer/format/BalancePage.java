package hemline.viewer.format;

import hemline.shared.fluid.Air;
import hemline.shared.problem.Notice;
import hemline.shared.result.Estimate;
import hemline.shared.vehicle.Axle;
import hemline.shared.vehicle.Machine;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.OperatingPoint;
import hemline.solver.plenum.SettledFigures;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A machine's balance as blocks of text and tables, for every face of the program alike. */
public final class BalancePage {
  private static final double G = Air.GRAVITY;

  private final MachineBalance balance;
  private final Machine machine;
  private final List<Block> blocks = new ArrayList<>();

  /** What a block is about. */
  public enum Topic {
    POINTS,
    FIGURES,
    EDGES,
    HEIGHT,
    VALVE,
    HOLDS,
    ENDS,
    MANOEUVRES,
    SENSITIVITIES,
    ASSUMPTIONS,
    LAUNCH,
    STEP,
    TRADES,
    LIPS,
    NOTICES
  }

  /**
   * A titled part of the page.
   *
   * @param topic what it is about
   * @param title heading
   * @param table rows of cells, the head first; empty for none
   * @param sentences below the table
   * @param cautions to be set beside the figures
   */
  public record Block(
      Topic topic,
      String title,
      List<List<String>> table,
      List<String> sentences,
      List<String> cautions) {
    public Block {
      table = List.copyOf(table);
      sentences = List.copyOf(sentences);
      cautions = List.copyOf(cautions);
    }
  }

  private BalancePage(MachineBalance balance) {
    this.balance = balance;
    machine = balance.machine();
  }

  /** Name of the machine, and that it is invented where it is. */
  public static String title(Machine machine) {
    return machine.name() + (machine.invented() ? " (invented figures)" : "");
  }

  /** The blocks of a complete balance, in reading order. */
  public static List<Block> of(MachineBalance balance) {
    BalancePage page = new BalancePage(balance);
    page.points();
    page.figures();
    page.edges();
    page.height();
    HoldPage holds = new HoldPage(balance);
    page.blocks.add(holds.holds());
    page.blocks.add(HoldEndPage.ends(balance));
    page.launch();
    Block manoeuvres = HoldEndPage.manoeuvres(balance);
    if (manoeuvres != null) {
      page.blocks.add(manoeuvres);
    }
    Block steps = holds.steps();
    if (steps != null) {
      page.blocks.add(steps);
    }
    page.trades();
    Block sensitivities = SensitivityPage.sensitivities(balance);
    if (sensitivities != null) {
      page.blocks.add(sensitivities);
    }
    page.blocks.add(SensitivityPage.assumptions(balance));
    page.notices();
    return page.blocks;
  }

  private void add(
      Topic topic,
      String title,
      List<List<String>> table,
      List<String> sentences,
      String... cautions) {
    blocks.add(new Block(topic, title, table, sentences, List.of(cautions)));
  }

  private void points() {
    List<List<String>> table = new ArrayList<>();
    if (!balance.operatingPoints().isEmpty()) {
      table.add(List.of("suction, Pa", "fan, L/s", "seal, L/s", "valve, L/s", "other, L/s", ""));
    }
    for (OperatingPoint p : balance.operatingPoints()) {
      table.add(
          List.of(
              BalanceWords.figure(p.suction(), 1),
              BalanceWords.figure(p.fanFlow(), 1000),
              BalanceWords.figure(p.leakFlow(), 1000),
              BalanceWords.figure(p.valveFlow(), 1000),
              BalanceWords.figure(p.otherFlow(), 1000),
              BalanceWords.point(p)));
    }
    add(
        Topic.POINTS,
        "Operating points: fan against all leaks",
        table,
        table.isEmpty() ? List.of("There is none.") : List.of());
  }

  private void figures() {
    SettledFigures f = balance.rest();
    if (f == null) {
      return;
    }
    SettledFigures v = balance.travelling();
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "", "at rest", v == null ? "" : "at " + BalanceWords.speed(machine.travelSpeed()), ""));
    row(table, "suction", f.suction(), v == null ? null : v.suction(), 1, "Pa");
    row(table, "downforce", f.downforce(), v == null ? null : v.downforce(), 1, "N");
    row(
        table,
        "\u00b7 suction on the floor",
        f.floorForce(),
        v == null ? null : v.floorForce(),
        1,
        "N");
    row(table, "\u00b7 air on the lips", f.lipForce(), v == null ? null : v.lipForce(), 1, "N");
    row(table, "\u00b7 thrust of the fan", f.thrust(), v == null ? null : v.thrust(), 1, "N");
    row(
        table,
        "\u00b7 jet of the valve",
        f.valveForce(),
        v == null ? null : v.valveForce(),
        1,
        "N");
    row(
        table,
        "centre of pressure, forwards",
        f.centreX(),
        v == null ? null : v.centreX(),
        1e3,
        "mm");
    List<Axle> axles = machine.running().axles();
    for (int i = 0; i < axles.size(); i++) {
      row(
          table,
          "axle load, " + axles.get(i).name(),
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
        "electrical power of the fan",
        f.electricalPower(),
        v == null ? null : v.electricalPower(),
        1,
        "W");
    row(
        table,
        "run time on the battery, fan alone",
        f.runTime(),
        v == null ? null : v.runTime(),
        1.0 / 60,
        "min");
    row(
        table,
        "run time, drive at full power",
        f.runTimeDriving(),
        v == null ? null : v.runTimeDriving(),
        1.0 / 60,
        "min");
    add(
        Topic.FIGURES,
        "Where it settles, on level ground",
        table,
        List.of(BalanceWords.centre(machine, f)),
        BalanceWords.FAN_CAUTION,
        BalanceWords.BATTERY_CAUTION);
  }

  private static void row(
      List<List<String>> table,
      String name,
      Estimate rest,
      @Nullable Estimate moving,
      double factor,
      String unit) {
    table.add(
        List.of(
            name,
            BalanceWords.figure(rest, factor),
            moving == null ? "" : BalanceWords.figure(moving, factor),
            unit));
  }

  private void edges() {
    SettledFigures f = balance.rest();
    if (f == null) {
      return;
    }
    SettledFigures v = balance.travelling();
    List<List<String>> table = new ArrayList<>();
    table.add(
        List.of(
            "edge",
            "faces",
            "lip",
            "static gap, mm",
            "gap, mm",
            "leak at rest, L/s",
            v == null ? "" : "at " + BalanceWords.speed(machine.travelSpeed())));
    for (int i = 0; i < f.edgeGaps().size(); i++) {
      table.add(
          List.of(
              String.valueOf(i),
              BalanceWords.faces(machine, i),
              machine.floor().edges().get(i).lip().name(),
              Digits.plain(1000 * machine.floor().edges().get(i).gap(), 4),
              BalanceWords.figure(f.edgeGaps().get(i), 1000),
              BalanceWords.figure(f.edgeLeaks().get(i), 1000),
              v == null ? "" : BalanceWords.figure(v.edgeLeaks().get(i), 1000)));
    }
    add(Topic.EDGES, "Edge by edge, springs included", table, List.of());
  }

  private void height() {
    var r = balance.rideHeight();
    if (r != null) {
      add(
          Topic.HEIGHT,
          "Ride height and suck-down",
          List.of(),
          RideHeightWords.of(machine, r),
          BalanceWords.PINCH_CAUTION);
    }
    var v = balance.valve();
    if (v != null) {
      add(Topic.VALVE, "Relief valve", List.of(), BalanceWords.valve(v, balance.rest() != null));
    }
  }

  /** A figure, or a dash where there is none. */
  static String margin(@Nullable Estimate e) {
    return e == null ? "-" : BalanceWords.figure(e, 1);
  }

  private void launch() {
    var l = balance.launch();
    if (l != null) {
      add(Topic.LAUNCH, "Going, on level ground", List.of(), List.of(BalanceWords.launch(l, G)));
    }
  }

  private void trades() {
    add(
        Topic.TRADES,
        "One change at a time",
        TradeTables.trades(balance.trades()),
        BalanceWords.best(balance.trades()).stream().toList());
    if (!balance.lips().isEmpty()) {
      add(
          Topic.LIPS,
          "Other lips all round, by downforce on this fan",
          TradeTables.lips(balance.lips()),
          BalanceWords.lipRanks(balance.lips()));
    }
  }

  private void notices() {
    if (!balance.notices().isEmpty()) {
      add(
          Topic.NOTICES,
          "To know",
          List.of(),
          balance.notices().stream().map(Notice::text).toList());
    }
  }
}
