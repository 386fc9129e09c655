package hemline.solver.rig;

import hemline.shared.fluid.Air;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.Figure;
import hemline.shared.result.SectionResult;
import hemline.shared.rig.Rig;
import hemline.shared.rig.RigReading;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.SectionFamily;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SweepStudy;
import hemline.solver.study.Swept;
import java.util.ArrayList;
import java.util.List;

/** Predicts the points of a rig: for each gap one sweep over its suctions. */
public final class PredictionStudy {
  private final SectionFamily family;

  public PredictionStudy(SectionFamily family) {
    this.family = family;
  }

  /**
   * Predictions in the order of the points.
   *
   * @param base lip, ground and air; its gap and suction do not count
   */
  public List<Prediction> at(
      List<RigPoint> points,
      SealSection base,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress) {
    Prediction[] all = new Prediction[points.size()];
    List<Double> gaps = points.stream().map(RigPoint::gap).distinct().sorted().toList();
    for (int g = 0; g < gaps.size(); g++) {
      double gap = gaps.get(g);
      List<Integer> here = new ArrayList<>();
      for (int k = 0; k < points.size(); k++) {
        if (points.get(k).gap() == gap) {
          here.add(k);
        }
      }
      double done = (double) g / gaps.size();
      double part = 1.0 / gaps.size();
      List<SectionResult> results =
          new SweepStudy(family)
              .over(
                  Swept.SUCTION,
                  base.withGap(gap),
                  here.stream().map(k -> points.get(k).suction()).toList(),
                  options,
                  cancel,
                  (share, what) -> progress.progress(done + part * share, what))
              .points();
      for (int i = 0; i < here.size(); i++) {
        all[here.get(i)] = of(results.get(i));
      }
    }
    return List.of(all);
  }

  /** A lip at rest in the mean air of a rig; gap and suction are those of the first reading. */
  public static SealSection base(Rig rig, LipProfile lip) {
    List<RigReading> readings = rig.of(RigReading.Kind.LIP);
    return new SealSection(
        lip,
        readings.get(0).gap(),
        readings.get(0).suction(),
        new GroundMotion(0, 0),
        Air.at(
            readings.stream().mapToDouble(r -> r.air().temperature()).average().orElseThrow(),
            readings.stream().mapToDouble(r -> r.air().barometer()).average().orElseThrow()),
        List.of());
  }

  /** The prediction that a solved section makes. */
  public static Prediction of(SectionResult r) {
    return new Prediction(
        r.conditions().gap(),
        r.conditions().suction(),
        r.status(),
        r.figures().get(Figure.DISCHARGE_COEFFICIENT),
        r.notices());
  }
}
