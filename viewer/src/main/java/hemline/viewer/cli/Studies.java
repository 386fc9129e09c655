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
import hemline.solver.improve.ImproveStudy;
import hemline.solver.improve.Improvement;
import hemline.solver.plenum.MachineBalance;
import hemline.solver.rig.Calibrations;
import hemline.solver.rig.Prediction;
import hemline.solver.rig.RigPoint;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.BatchRunner;
import hemline.solver.study.GapDistribution;
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
import hemline.viewer.project.SectionStore;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;

/** The studies that the commands call. */
interface Studies {
  /**
   * The same studies, which take solved sections from a store.
   *
   * @param fields true where pictures are wanted
   */
  Studies keeping(SectionStore store, boolean fields);

  SectionAnswer run(
      Section section, RunOptions options, CancelToken cancel, ProgressListener progress);

  /** A lip and the plain flat lip as wide as it. */
  RelativeAnswer relativeLeak(
      SealSection section, RunOptions options, CancelToken cancel, ProgressListener progress);

  /** A lip over values of one condition. */
  SweepResult over(
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress);

  /** The same together with a baseline. */
  RelativeSweep against(
      LipProfile baseline,
      Swept swept,
      SealSection base,
      List<Double> values,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress);

  RankingAnswer rank(
      List<LipProfile> candidates,
      LipProfile baseline,
      GapDistribution ground,
      SealSection conditions,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress);

  /** Predicts the points of a test rig. */
  List<Prediction> predict(
      List<RigPoint> points,
      SealSection base,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress);

  /**
   * Many sections for one table.
   *
   * @param place is given this machine and says where to solve
   */
  BatchAnswer batch(
      List<SealSection> sections,
      RunOptions options,
      ResultStore<SectionResult> store,
      UnaryOperator<BatchRunner> place,
      CancelToken cancel,
      ProgressListener progress);

  /**
   * Searches for a lip that leaks less.
   *
   * @param spent true once the time for the search is up
   */
  Improvement improve(
      ImproveStudy.Asked asked,
      RunOptions options,
      ResultStore<SectionResult> store,
      BooleanSupplier spent,
      CancelToken cancel,
      ProgressListener progress);

  /**
   * What moving each corner of a lip does to its leak; empty when stopped.
   *
   * @param section of the lip as it is
   */
  List<CornerEffect> corners(
      LipDrawing lip,
      SealSection section,
      RunOptions options,
      ResultStore<SectionResult> store,
      CancelToken cancel,
      ProgressListener progress);

  /** Solves flows with known answers. */
  List<CaseResult> check(
      List<ReferenceCase> cases, int threads, CancelToken cancel, ProgressListener progress);

  /** Balance of a machine, with other lips in place of its own tried too. */
  MachineBalance balance(
      Machine machine,
      List<LipProfile> others,
      double factor,
      RunOptions options,
      ResultStore<LeakPoint> store,
      Calibrations calibrations,
      CancelToken cancel,
      ProgressListener progress);
}
