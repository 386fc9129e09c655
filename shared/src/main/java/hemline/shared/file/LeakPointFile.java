package hemline.shared.file;

import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.Problem;
import hemline.shared.result.Estimate;
import hemline.shared.result.GridLeak;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SolveStatus;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Solved leak points as text, schema {@code hemline.leak/3}, SI; kept between runs. Each tells what
 * it was made of and is sealed.
 */
public final class LeakPointFile {
  private static final String KIND = "leak";
  private static final int VERSION = 3;

  /** Numbers of a grid: place, cells, discharge, spread, lift. */
  private static final int NUMBERS = 5;

  private LeakPointFile() {}

  /**
   * A point as it was kept.
   *
   * @param origin what it was asked for
   * @param solver fingerprint of the solver that found it
   * @param invented true if no solver found it
   */
  public record Kept(LeakPoint point, LeakOrigin origin, String solver, boolean invented) {}

  /** Text of a point with what it was made of; parameters as in {@link Kept}. */
  public static String text(LeakPoint point, LeakOrigin origin, String solver, boolean invented) {
    Map<String, Object> top = new LinkedHashMap<>();
    top.put("schema", "hemline." + KIND + "/" + VERSION);
    top.put("seal", Seal.BLANK);
    top.put("solver", solver);
    top.put("invented", invented);
    Map<String, Object> made = new LinkedHashMap<>();
    made.put("lip", origin.lip());
    made.put("density", LengthUnit.decimal(origin.density()));
    made.put("kinematicViscosity", LengthUnit.decimal(origin.kinematicViscosity()));
    made.put("mesh", origin.mesh());
    made.put("flowModel", origin.flowModel());
    made.put("modelSpread", origin.modelSpread());
    top.put("origin", made);
    top.put("lip", point.lip());
    top.put("gap", LengthUnit.decimal(point.gap()));
    top.put("suction", LengthUnit.decimal(point.suction()));
    top.put("groundSpeed", LengthUnit.decimal(point.groundSpeed()));
    top.put("spanwiseSpeed", LengthUnit.decimal(point.spanwiseSpeed()));
    top.put("status", point.status().key());
    top.put("regime", point.regime().key());
    top.put("discharge", estimate(point.discharge()));
    top.put("lift", estimate(point.lift()));
    List<Object> notices = new ArrayList<>();
    point.notices().forEach(n -> notices.add(List.of(n.code(), n.text())));
    top.put("notices", notices);
    top.put("grids", point.grids().stream().map(LeakPointFile::grid).toList());
    top.put("otherModel", point.otherModel().stream().map(LeakPointFile::grid).toList());
    return Seal.close(JsonLayout.text(top));
  }

  private static List<Object> grid(GridLeak g) {
    return List.of(
        BigDecimal.valueOf(g.place()),
        BigDecimal.valueOf(g.cells()),
        LengthUnit.decimal(g.discharge()),
        LengthUnit.decimal(g.spread()),
        LengthUnit.decimal(g.lift()));
  }

  private static List<GridLeak> grids(JsonKeys keys, String key) {
    List<GridLeak> grids = new ArrayList<>();
    for (JsonItem item : keys.list(key)) {
      if (item instanceof JsonItem.Array numbers && numbers.items().size() == NUMBERS) {
        double[] v = new double[NUMBERS];
        for (int i = 0; i < NUMBERS; i++) {
          v[i] =
              numbers.items().get(i) instanceof JsonItem.Number n
                  ? Double.parseDouble(n.literal())
                  : Double.NaN;
        }
        boolean sound = v[0] >= 0 && v[1] >= 1 && v[3] >= 0;
        if (sound && Double.isFinite(v[0] + v[1] + v[2] + v[3] + v[4])) {
          grids.add(new GridLeak((int) v[0], (int) v[1], v[2], v[3], v[4]));
        }
      }
    }
    return grids;
  }

  private static Map<String, Object> estimate(Estimate e) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("value", LengthUnit.decimal(e.value()));
    map.put("numerical", LengthUnit.decimal(e.numerical()));
    map.put("iteration", LengthUnit.decimal(e.iteration()));
    map.put("modelLow", LengthUnit.decimal(e.modelLow()));
    map.put("modelHigh", LengthUnit.decimal(e.modelHigh()));
    map.put("trend", e.trend().name().toLowerCase(Locale.ROOT));
    return map;
  }

  /**
   * Reads the text of a point.
   *
   * @throws InputException if it is none, or was changed after it was sealed
   */
  public static Kept parse(String text, String file) throws InputException {
    Seal.check(text, file);
    JsonItem.Members top = JsonTree.read(text, file);
    List<Problem> problems = new ArrayList<>();
    JsonKeys keys = new JsonKeys(file, "", top, problems);
    if (!SchemaKey.check(keys, KIND, VERSION)) {
      throw new InputException(problems);
    }
    List<Notice> notices = new ArrayList<>();
    for (JsonItem item : keys.list("notices")) {
      if (item instanceof JsonItem.Array pair
          && pair.items().size() == 2
          && pair.items().get(0) instanceof JsonItem.Text code
          && pair.items().get(1) instanceof JsonItem.Text said) {
        notices.add(new Notice(code.value(), said.value()));
      }
    }
    SolveStatus status = choice(keys, "status", SolveStatus.values(), SolveStatus::key);
    Regime regime = choice(keys, "regime", Regime.values(), Regime::key);
    Estimate discharge = estimate(keys, "discharge");
    Estimate lift = estimate(keys, "lift");
    JsonKeys made = keys.group("origin");
    Kept kept = null;
    if (made != null && status != null && regime != null && discharge != null && lift != null) {
      LeakPoint point =
          new LeakPoint(
              keys.text("lip", "", "flat"),
              keys.number("gap", "a number in m"),
              keys.number("suction", "a number in Pa"),
              keys.number("groundSpeed", "a number in m/s"),
              keys.number("spanwiseSpeed", "a number in m/s"),
              status,
              regime,
              discharge,
              lift,
              notices,
              grids(keys, "grids"),
              grids(keys, "otherModel"));
      kept =
          new Kept(
              point,
              origin(made, point),
              keys.text("solver", "the solver's fingerprint"),
              keys.truth("invented", true));
    }
    if (kept == null || !problems.isEmpty()) {
      if (problems.isEmpty()) {
        problems.add(new Problem("file.leak", file, "is no whole leak point; delete it"));
      }
      throw new InputException(problems);
    }
    return kept;
  }

  private static LeakOrigin origin(JsonKeys made, LeakPoint point) {
    return new LeakOrigin(
        made.text("lip", "the digest of the lip"),
        point.gap(),
        point.suction(),
        point.groundSpeed(),
        point.spanwiseSpeed(),
        made.number("density", "a number in kg/m\u00b3"),
        made.number("kinematicViscosity", "a number in m\u00b2/s"),
        made.text("mesh", "coarse"),
        made.text("flowModel", "auto"),
        made.truth("modelSpread", false));
  }

  private static <T> @Nullable T choice(
      JsonKeys keys, String key, T[] values, Function<T, String> name) {
    String written = keys.text(key, "converged");
    for (T value : values) {
      if (name.apply(value).equals(written)) {
        return value;
      }
    }
    return null;
  }

  private static @Nullable Estimate estimate(JsonKeys keys, String key) {
    JsonKeys group = keys.group(key);
    if (group == null) {
      return null;
    }
    Estimate.Trend trend =
        choice(group, "trend", Estimate.Trend.values(), t -> t.name().toLowerCase(Locale.ROOT));
    double value = group.number("value", "a number");
    double numerical = group.number("numerical", "a number");
    double iteration = group.number("iteration", "a number");
    double low = group.number("modelLow", "a number");
    double high = group.number("modelHigh", "a number");
    boolean sound =
        Double.isFinite(value)
            && numerical >= 0
            && iteration >= 0
            && low >= 0
            && high >= 0
            && Double.isFinite(numerical + iteration + low + high);
    return sound && trend != null
        ? new Estimate(value, numerical, iteration, low, high, trend)
        : null;
  }
}
