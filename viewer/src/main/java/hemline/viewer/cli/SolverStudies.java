package hemline.viewer.cli;

import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakPoint;
import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.shared.vehicle.Machine;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.improve.CornerEffect;
import hemline.solver.improve.CornerSpace;
import hemline.solver.improve.CornerStudy;
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.Improvement;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.plenum.MachineStudy;
import hemline.solver.refine.SectionFamily;
import hemline.solver.rig.Calibrations;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.PredictionStudy;
import hemline.solver.rig.RigPoint;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.BatchRunner;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.GapDistribution;
import hemline.solver.study.LeakStudy;
import hemline.solver.study.PoolRunner;
import hemline.solver.study.RankingAnswer;
import hemline.solver.study.RankingStudy;
import hemline.solver.study.RelativeAnswer;
import hemline.solver.study.RelativeSweep;
import hemline.solver.study.ResultStore;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionAnswer;
import hemline.solver.study.SectionStudy;
import hemline.solver.study.SweepResult;
import hemline.solver.study.SweepStudy;
import hemline.solver.study.Swept;
import hemline.validation.reference.ReferenceCase;
import hemline.validation.run.CaseResult;
import hemline.validation.run.CheckStudy;
import hemline.viewer.project.SectionStore;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;

/**
 * The studies on a given way to solve sections.
 *
 * @param keptOnly true when a balance is to end with a {@link KeptOnly.MissingException} where it
 *     would have to solve a section
 */
record SolverStudies(SectionFamily family, boolean keptOnly) implements Studies {

  @Override
  public Studies keeping(SectionStore store, boolean fields) {
    return new SolverStudies(store.over(family, fields), keptOnly);
  }

  @Override
  public SectionAnswer run(
      Section section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    return new SectionStudy(family).run(section, options, cancel, progress);
  }

  @Override
  public RelativeAnswer relativeLeak(
      SealSection section, RunOptions options, CancelToken cancel, ProgressListener progress) {
    return new SectionStudy(family).relativeLeak(section, options, cancel, progress);
  }

  @Override
  public SweepResult over(
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    return new SweepStudy(family).over(swept, base, values, options, cancel, progress);
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
    return new SweepStudy(family).against(baseline, swept, base, values, options, cancel, progress);
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
    return new RankingStudy(family)
        .rank(candidates, baseline, ground, conditions, options, cancel, progress);
  }

  @Override
  public List<Prediction> predict(
      List<RigPoint> points,
      SealSection base,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    return new PredictionStudy(family).at(points, base, options, cancel, progress);
  }

  @Override
  public BatchAnswer batch(
      List<SealSection> sections,
      RunOptions options,
      ResultStore<SectionResult> store,
      UnaryOperator<BatchRunner> place,
      CancelToken cancel,
      ProgressListener progress) {
    return new BatchStudy(place.apply(new PoolRunner(family)), store)
        .run(sections, options, cancel, progress);
  }

  @Override
  public Improvement improve(
      ImproveStudy.Asked asked,
      RunOptions options,
      ResultStore<SectionResult> store,
      BooleanSupplier spent,
      CancelToken cancel,
      ProgressListener progress) {
    return new ImproveStudy(family, store).of(asked, options, spent, all -> {}, cancel, progress);
  }

  @Override
  public List<CornerEffect> corners(
      LipDrawing lip,
      SealSection section,
      RunOptions options,
      ResultStore<SectionResult> store,
      CancelToken cancel,
      ProgressListener progress) {
    return new CornerStudy(family, store)
        .of(
            lip,
            section,
            options.closure(),
            CornerSpace.free(lip),
            options.threads(),
            cancel,
            progress);
  }

  @Override
  public List<CaseResult> check(
      List<ReferenceCase> cases, int threads, CancelToken cancel, ProgressListener progress) {
    return new CheckStudy(family).run(cases, threads, cancel, progress);
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
    ResultStore<LeakPoint> known = keptOnly ? new KeptOnly(store) : store;
    return new MachineStudy(new LeakStudy(family, known), calibrations)
        .of(machine, others, factor, options, cancel, progress);
  }
}
