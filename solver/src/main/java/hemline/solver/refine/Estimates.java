package hemline.solver.refine;

import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.Section;
import hemline.shared.section.SectionConditions;
import hemline.solver.flow.Closure;
import hemline.solver.grid.MeshLevel;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Turns the runs of a grid family into the answer to a section: every figure with its band.
 *
 * <p>The numerical part comes from {@link ThreeGrid}. The iteration part is half the spread of the
 * leak flow over the closing iterations, carried over to the other figures: once for those that go
 * with the flow, twice for pressures, forces and shares, which go with its square, and for those
 * against the figure's natural size where its value is smaller. The model part is the distance to
 * the same figure under each other flow model, on the finest grid both have, faded through
 * transition; in turbulent flow at least the residual of the class of flow.
 */
public final class Estimates {
  private final Section section;
  private final GridFamily family;
  private final List<GridFamily> others;
  private final FigureSeries series;
  private final double dynamicPressure;
  private final double gapReynolds;
  private final ModelSpread models;
  private final ModelResidual residual;
  private final double leastWidth;

  private Estimates(
      Section section, double leastWidth, GridFamily family, List<GridFamily> others) {
    this.section = section;
    this.leastWidth = leastWidth;
    this.family = family;
    this.others = others;
    series = FigureSeries.of(family);
    double leak = series.finest() < 0 ? 0 : series.scalar(Figure.LEAK_FLOW, series.finest());
    double speed = Double.isFinite(leak) ? leak / section.gap() : 0;
    dynamicPressure = 0.5 * section.fluid().density() * speed * speed;
    gapReynolds =
        (Double.isFinite(leak) ? leak : expectedLeak(section))
            / section.fluid().kinematicViscosity();
    models = new ModelSpread(family.closure(), series, others, gapReynolds);
    residual =
        series.finest() < 0 || !series.run(series.finest()).figures().stageShares().isEmpty()
            ? ModelResidual.SEPARATED
            : ModelResidual.ATTACHED;
  }

  /**
   * The answer from solved families.
   *
   * @param section the question
   * @param level of its grids
   * @param family the runs with the chosen flow model
   * @param others runs with other plausible flow models; their distance widens the bands
   * @param notices what is known already; others are added
   * @param stopped true when the solve was stopped on request before it was complete
   */
  public static SectionResult result(
      Section section,
      MeshLevel level,
      GridFamily family,
      List<GridFamily> others,
      List<Notice> notices,
      boolean stopped) {
    double leastWidth = GridClass.leastWidth(section, level, family.closure());
    return result(section, leastWidth, family, others, notices, stopped);
  }

  /**
   * The answer with a given least band.
   *
   * @param leastWidth least half-width of the numerical part of the leak, of its value
   */
  static SectionResult result(
      Section section,
      double leastWidth,
      GridFamily family,
      List<GridFamily> others,
      List<Notice> notices,
      boolean stopped) {
    Estimates estimates = new Estimates(section, leastWidth, family, others);
    List<Notice> all = new ArrayList<>(notices);
    if (estimates.series.finest() < 0) {
      SolveStatus status = stopped ? SolveStatus.CANCELLED : SolveStatus.FAILED;
      all.add(stopped ? NoticeKind.SOLVE_STOPPED_EARLY.of() : ResultNotices.failed(family));
      return estimates.withoutFigures(status, all);
    }
    return estimates.withFigures(stopped, all);
  }

  /**
   * An answer without figures.
   *
   * @param section the question
   * @param closure flow model that was asked
   * @param status how it ended
   * @param reason why
   */
  public static SectionResult without(
      Section section, Closure closure, SolveStatus status, Notice reason) {
    return new SectionResult(
        section.name(),
        SectionConditions.of(section),
        status,
        Regime.at(expectedLeak(section) / section.fluid().kinematicViscosity()),
        closure.key(),
        SectionFigures.NONE,
        List.of(reason),
        List.of());
  }

  /** Leak flow to judge the flow by before any is computed: a jet of coefficient 0.7, m²/s. */
  static double expectedLeak(Section section) {
    if (section.drive() instanceof Drive.LeakFlow flow) {
      return flow.value();
    }
    double drop = section.askedDrop();
    return 0.7
        * section.gap()
        * Math.signum(drop)
        * Math.sqrt(2 * Math.abs(drop) / section.fluid().density());
  }

  private SectionResult withoutFigures(SolveStatus status, List<Notice> notices) {
    double reynolds = expectedLeak(section) / section.fluid().kinematicViscosity();
    return assemble(
        status, Regime.at(reynolds), Map.of(), List.of(), List.of(), List.of(), notices);
  }

  private SectionResult withFigures(boolean stopped, List<Notice> notices) {
    Map<Figure, Estimate> figures = new EnumMap<>(Figure.class);
    for (Figure figure : Figure.values()) {
      Estimate estimate = scalar(figure);
      if (estimate != null) {
        figures.put(figure, estimate);
      }
    }
    if (section.drive() instanceof Drive.Suction && section.askedDrop() != 0) {
      figures.put(Figure.EXPANSIBILITY, Estimate.exact(ResultNotices.expansibility(section)));
    }
    GridRun finest = series.run(series.finest());
    Estimate leak = figures.get(Figure.LEAK_FLOW);
    double reynolds =
        (leak == null ? expectedLeak(section) : leak.value())
            / section.fluid().kinematicViscosity();
    notices.addAll(
        new ResultNotices(section, leastWidth, family, others, series, stopped)
            .list(figures, reynolds));
    return assemble(
        stopped ? SolveStatus.CANCELLED : finest.status(),
        Regime.at(reynolds),
        figures,
        shares(),
        list(run -> run.figures().carryOver()),
        VortexMatching.estimates(series, others, models),
        notices);
  }

  private SectionResult assemble(
      SolveStatus status,
      Regime regime,
      Map<Figure, Estimate> figures,
      List<Estimate> shares,
      List<Estimate> carryOver,
      List<SectionFigures.TrappedVortex> vortices,
      List<Notice> notices) {
    Estimate drop = figures.get(Figure.PRESSURE_DROP);
    double suction =
        section.drive() instanceof Drive.Suction || drop == null
            ? section.askedDrop()
            : drop.value();
    return new SectionResult(
        section.name(),
        SectionConditions.of(section, suction),
        status,
        regime,
        family.closure().key(),
        new SectionFigures(figures, shares, carryOver, vortices),
        notices,
        family.runs());
  }

  private @Nullable Estimate scalar(Figure figure) {
    double scale = scale(figure);
    double factor = prescribed(figure) ? 0 : goesWithFlow(figure) ? 1 : 2;
    return estimate(
        run -> run.figures().scalars().getOrDefault(figure, Double.NaN),
        scale,
        factor,
        value -> prescribed(figure) ? 0 : residual.of(family.closure(), figure, value, scale));
  }

  /**
   * The stage shares on the finest grid, scaled so that they sum to 1 to round-off; a single one is
   * 1 by definition.
   */
  private List<Estimate> shares() {
    List<Estimate> raw = list(run -> run.figures().stageShares());
    if (raw.size() == 1) {
      return List.of(Estimate.exact(1));
    }
    double sum = raw.stream().mapToDouble(Estimate::value).sum();
    return Math.abs(sum) > 0.5 ? raw.stream().map(e -> e.times(1 / sum)).toList() : raw;
  }

  private List<Estimate> list(Function<GridRun, List<Double>> of) {
    List<Double> finest = of.apply(series.run(series.finest()));
    List<Estimate> estimates = new ArrayList<>();
    for (int i = 0; i < finest.size(); i++) {
      int index = i;
      Estimate estimate =
          estimate(
              run -> of.apply(run).size() == finest.size() ? of.apply(run).get(index) : Double.NaN,
              1,
              2,
              value -> residual.share(family.closure(), value, 1));
      if (estimate == null) {
        return List.of();
      }
      estimates.add(estimate);
    }
    return estimates;
  }

  private @Nullable Estimate estimate(
      ToDoubleFunction<GridRun> of, double scale, double factor, DoubleUnaryOperator residualAt) {
    GridValues values =
        series.values(of, (value, spread) -> factor * spread * Math.max(Math.abs(value), scale));
    if (values == null) {
      return null;
    }
    double least = factor * leastWidth;
    double value = Math.abs(values.value(values.count() - 1));
    Estimate grid =
        reaching(
            least > 0
                ? ThreeGrid.calibrated(values, scale, least * Math.max(value, scale))
                : ThreeGrid.estimate(values, scale),
            of);
    return models.widen(grid, of, residualAt.applyAsDouble(grid.value()));
  }

  /**
   * The estimate with a band that reaches the other flow on the finest grid, where there is one.
   */
  private Estimate reaching(Estimate e, ToDoubleFunction<GridRun> of) {
    GridRun other = family.other();
    double distance = other == null ? Double.NaN : Math.abs(of.applyAsDouble(other) - e.value());
    return distance > e.numerical()
        ? new Estimate(e.value(), distance, e.iteration(), e.modelLow(), e.modelHigh(), e.trend())
        : e;
  }

  private boolean prescribed(Figure figure) {
    Drive drive = section.drive();
    Figure given = drive instanceof Drive.LeakFlow ? Figure.LEAK_FLOW : Figure.PRESSURE_DROP;
    return drive != null && figure == given;
  }

  private static boolean goesWithFlow(Figure figure) {
    return switch (figure) {
      case LEAK_FLOW, DISCHARGE_COEFFICIENT, EFFECTIVE_GAP -> true;
      default -> false;
    };
  }

  /** Natural size of a figure: what a value of order one of its coefficient would be. */
  private double scale(Figure figure) {
    double h = section.gap();
    return switch (figure) {
      case LEAK_FLOW, DISCHARGE_COEFFICIENT, EFFECTIVE_GAP, EXPANSIBILITY -> 0;
      case PRESSURE_RECOVERY -> 1;
      case PRESSURE_DROP -> dynamicPressure;
      case LIP_MOMENT -> dynamicPressure * h * h;
      case GROUND_DRAG_SPANWISE -> section.ground().spanwiseSpeed() == 0 ? 0 : dynamicPressure * h;
      case GROUND_POWER -> dynamicPressure * h * Math.abs(section.ground().speed());
      default -> dynamicPressure * h;
    };
  }
}
