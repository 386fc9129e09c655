package hemline.viewer.cli;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.result.Estimate;
import hemline.shared.result.Estimate.Trend;
import hemline.shared.result.LeakGrids;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.Regime;
import hemline.shared.result.SectionFigures;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.shared.section.SectionConditions;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.improve.CornerEffect;
import hemline.solver.improve.DownforceGoal;
import hemline.solver.improve.Evaluation;
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.Improvement;
import hemline.solver.improve.LeakGoal;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.FamilySolver;
import hemline.solver.rig.Calibrations;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.PredictionStudy;
import hemline.solver.rig.RigPoint;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.BatchRunner;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.Placement;
import hemline.solver.study.Ranking;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RelativeAnswer;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.solver.study.SweepResult;
import hemline.solver.study.Swept;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.run.CaseResult;
import hemline.viewer.picture.InventedStudies;
import hemline.viewer.project.SectionStore;
import hemline.viewer.report.InventedChecks;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Answers at once with invented figures, and remembers what it was asked. */
final class FakeStudies implements Studies {
  @Override
  public Studies keeping(SectionStore store, boolean fields) {
    return this;
  }

  final List<Object> asked = new ArrayList<>();
  SolveStatus status = SolveStatus.CONVERGED;

  /** Questions answered before the rest counts as cancelled. */
  int patience = Integer.MAX_VALUE;

  private SectionResult answer(String name, double gap, double suction) {
    SolveStatus ended = patience-- > 0 ? status : SolveStatus.CANCELLED;
    SectionResult r = InventedStudies.result(name, gap, Math.max(1, suction), 0.7);
    boolean empty = ended == SolveStatus.CANCELLED || ended == SolveStatus.FAILED;
    return new SectionResult(
        name,
        new SectionConditions(gap, suction, 0, 0),
        ended,
        Regime.TURBULENT,
        "sst",
        new SectionFigures(
            empty ? Map.of() : r.figures().scalars(), List.of(), List.of(), List.of()),
        List.of(),
        List.of());
  }

  /** Computed over reference, less one, in a check; allowed errors are whole tolerances. */
  double checkError;

  @Override
  public SectionAnswer run(
      Section section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    asked.add(section);
    asked.add(options);
    progress.progress(1, section.name());
    double suction = section instanceof SealSection lip ? lip.suction() : 5;
    return new SectionAnswer(answer(section.name(), section.gap(), suction), null);
  }

  @Override
  public RelativeAnswer relativeLeak(
      SealSection section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    SectionAnswer lip = run(section, options, cancel, progress);
    return new RelativeAnswer(lip, lip, new Estimate(0.93, 0.02, 0, 0, 0, Trend.MONOTONE));
  }

  @Override
  public SweepResult over(
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(values);
    List<SectionResult> points = new ArrayList<>();
    for (double value : values) {
      SealSection at = swept.at(base, value);
      points.add(answer(at.profile().name(), at.gap(), at.suction()));
    }
    return new SweepResult(
        points, swept == Swept.GAP ? InventedStudies.sweep().gapExponent() : null);
  }

  @Override
  public RelativeSweep against(
      LipProfile baseline,
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(baseline);
    SweepResult lip = over(swept, base, values, options, cancel, progress);
    List<Estimate> ratios =
        values.stream().map(v -> new Estimate(0.93, 0.02, 0, 0, 0, Trend.MONOTONE)).toList();
    return new RelativeSweep(
        lip,
        over(swept, base.withProfile(baseline), values, options, cancel, progress),
        new ArrayList<>(ratios));
  }

  @Override
  public RankingAnswer rank(
      List<LipProfile> candidates,
      LipProfile baseline,
      GapDistribution ground,
      SealSection conditions,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(candidates.stream().map(LipProfile::name).toList());
    asked.add(baseline.name());
    asked.add(ground.gaps());
    asked.add(ground.weights());
    // as many answers as the invented ranking has gaps
    List<SectionAnswer> answers = new ArrayList<>();
    for (LipProfile lip : candidates) {
      for (double gap : InventedStudies.ranking().gaps()) {
        answers.add(new SectionAnswer(answer(lip.name(), gap, conditions.suction()), null));
      }
    }
    return new RankingAnswer(InventedStudies.ranking(), answers);
  }

  @Override
  public List<Prediction> predict(
      List<RigPoint> points,
      SealSection base,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(base);
    return points.stream()
        .map(p -> PredictionStudy.of(answer(base.profile().name(), p.gap(), p.suction())))
        .toList();
  }

  @Override
  public BatchAnswer batch(
      List<SealSection> sections,
      RunOptions options,
      ResultStore<SectionResult> store,
      UnaryOperator<BatchRunner> place,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(sections);
    asked.add(options);
    List<SectionResult> results =
        sections.stream()
            .map(at -> answer(at.profile().name(), at.gap(), at.suction()))
            .filter(result -> result.status() != SolveStatus.CANCELLED)
            .toList();
    return new BatchAnswer(results, results.size() == sections.size(), 0, results.size());
  }

  /** Two lips near the middle of the space, the better one with 0.9 of the start's leak. */
  @Override
  public Improvement improve(
      ImproveStudy.Asked asked,
      RunOptions options,
      ResultStore<SectionResult> store,
      BooleanSupplier spent,
      CancelToken cancel,
      ProgressListener progress) {
    this.asked.add(asked);
    List<Evaluation> history = new ArrayList<>();
    for (double at = 0.5; history.size() < 2 && at > 0; at -= 0.01) {
      double share = at;
      List<Double> lengths = asked.space().lengths().stream().map(l -> l.at(share)).toList();
      double[] values = lengths.stream().mapToDouble(Double::doubleValue).toArray();
      LipDrawing lip = asked.space().drawing(values);
      if (LipResolver.check(lip).profile() != null) {
        double score = status == SolveStatus.FAILED ? Double.NaN : 0.9;
        history.add(new Evaluation(history.size() + 1, lengths, score, null, lip));
      }
    }
    Improvement searched = Improvement.without(asked, history, "", status);
    if (status != SolveStatus.CONVERGED) {
      return searched;
    }
    LipDrawing best = history.get(0).drawing();
    LipProfile profile = LipResolver.check(best).profile();
    Improvement.Found found =
        new Improvement.Found(best, Objects.requireNonNull(profile), history.get(0));
    if (!(asked.goal() instanceof LeakGoal goal)) {
      Machine machine = ((DownforceGoal) asked.goal()).machine();
      MachineBalance balance =
          balance(
              machine,
              List.of(found.profile()),
              1.5,
              options,
              ResultStore.none(),
              Calibrations.NONE,
              cancel,
              progress);
      return searched.proven(new Improvement.Proof(List.of(found), null, null, balance));
    }
    Estimate less = new Estimate(0.9, 0.02, 0, 0.01, 0.01, Trend.MONOTONE);
    Ranking.Row row =
        new Ranking.Row(
            best.name(), 1, List.of(), Placement.of(less), 1, less, List.of(), List.of());
    Ranking ranking =
        new Ranking(
            asked.start().name(),
            goal.ground(),
            goal.conditions().suction(),
            List.of(row),
            List.of(),
            List.of(),
            List.of());
    List<SectionAnswer> answers =
        goal.ground().gaps().stream()
            .map(g -> new SectionAnswer(answer(best.name(), g, 600), null))
            .toList();
    RankingAnswer proof = new RankingAnswer(ranking, answers);
    return searched.proven(new Improvement.Proof(List.of(found), proof, proof, null));
  }

  @Override
  public List<CornerEffect> corners(
      LipDrawing lip,
      SealSection section,
      RunOptions options,
      ResultStore<SectionResult> store,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(lip);
    Estimate less = new Estimate(-0.004, 0.001, 0, 0, 0, Trend.UNKNOWN);
    return List.of(
        new CornerEffect(0, 0, 0, less, null, true),
        new CornerEffect(1, 8e-3, 0, null, less, true));
  }

  @Override
  public List<CaseResult> check(
      List<ReferenceCase> cases, int threads, CancelToken cancel, ProgressListener progress) {
    asked.addAll(cases);
    return cases.stream()
        .map(one -> InventedChecks.answer(one, patience-- > 0, checkError))
        .toList();
  }

  @Override
  public MachineBalance balance(
      Machine machine,
      List<LipProfile> others,
      double factor,
      RunOptions options,
      ResultStore<LeakPoint> store,
      Calibrations calibrations,
      CancelToken cancel,
      ProgressListener progress) {
    asked.add(machine);
    return new MachineStudy(new LeakStudy(new FamilySolver(), leaks(cancel)), calibrations)
        .of(machine, others, factor, options, cancel, progress);
  }

  /** Leaks that end as asked; a stop comes with the first that is asked for beyond the patience. */
  private ResultStore<LeakPoint> leaks(CancelToken cancel) {
    return new ResultStore<LeakPoint>() {
      @Override
      public @Nullable LeakPoint find(LeakOrigin asked) {
        if (patience-- <= 0) {
          cancel.cancel();
          return null;
        }
        LeakPoint p = Objects.requireNonNull(InventedStudies.LEAKS.find(asked));
        return new LeakPoint(
            p.lip(),
            new SectionConditions(
                p.conditions().gap(),
                p.conditions().suction(),
                p.conditions().groundSpeed(),
                p.conditions().spanwiseSpeed()),
            status,
            p.regime(),
            p.discharge(),
            p.lift(),
            p.notices(),
            LeakGrids.NONE);
      }

      @Override
      public void keep(LeakOrigin asked, LeakPoint point) {}
    };
  }
}
