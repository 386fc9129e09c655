package hemline.solver.rig;

import hemline.shared.rig.Accuracy;
import hemline.shared.rig.Instrument;
import hemline.shared.rig.Rig;
import java.util.ArrayList;
import java.util.List;

/** Lists the errors of a rig as input quantities, in the order of {@link Errors}. */
final class ErrorList {
  /** Half-width of the exponent of a blower's pressure over its flow; judged, no source. */
  private static final double BLOWER_EXPONENT = 0.25;

  private final Rig rig;
  private final List<InputQuantity> list = new ArrayList<>();

  private ErrorList(Rig rig) {
    this.rig = rig;
  }

  /**
   * All errors.
   *
   * @param points of the lip
   * @param taped points with the lip taped
   * @param box leaks of the box
   * @param flow of the readings
   * @param scatter of the readings
   */
  static List<InputQuantity> of(
      Rig rig,
      List<RigPoint> points,
      List<RigPoint> taped,
      BoxLeak box,
      FlowReader flow,
      Scatter scatter) {
    ErrorList errors = new ErrorList(rig);
    errors.shared(Source.GAP, Instrument.GAP);
    errors.shared(Source.SUCTION, Instrument.SUCTION);
    errors.shared(Source.FLOW, Instrument.FLOW);
    errors.shared(Source.FAN, Instrument.FAN_SPEED);
    errors.within(Source.FAN, rig.fan().curve() == null ? 0 : rig.fan().accuracy());
    errors.shared(Source.LIP_LENGTH, Instrument.LIP_LENGTH);
    errors.within(Source.AIR, rig.of(Instrument.TEMPERATURE).absolute());
    errors.within(Source.AIR, rig.of(Instrument.BAROMETER).absolute());
    errors.within(Source.EXPANSION, 0.5);
    errors.within(Source.BOX, box.exponentSpread());
    errors.shared(Source.BOX, Instrument.BOX_VOLUME);
    errors.within(Source.BOX, box.polytropicSpread());
    errors.within(Source.BOX, rig.of(Instrument.TIME).ofReading());
    errors.list.add(decay(box, flow));
    errors.within(Source.FAN, flow.relative() ? BLOWER_EXPONENT : 0);
    for (int k = 0; k < points.size(); k++) {
      errors.own(k, points.get(k).readings().size(), scatter);
    }
    for (RigPoint point : taped) {
      errors.own(InputQuantity.SHARED, point.readings().size(), Scatter.NONE);
    }
    return List.copyOf(errors.list);
  }

  private static InputQuantity decay(BoxLeak box, FlowReader flow) {
    if (box.decays().isEmpty()) {
      return InputQuantity.normal(Source.BOX, InputQuantity.SHARED, 0);
    }
    Decay first = box.decays().get(0);
    return new InputQuantity(
        Source.BOX,
        InputQuantity.SHARED,
        0,
        first.scatter(flow),
        first.degreesOfFreedom(),
        InputQuantity.Shape.STUDENT);
  }

  private void shared(Source source, Instrument instrument) {
    Accuracy accuracy = rig.of(instrument);
    within(source, accuracy.absolute());
    within(source, accuracy.ofReading());
  }

  private void within(Source source, double halfWidth) {
    list.add(InputQuantity.within(source, InputQuantity.SHARED, halfWidth));
  }

  private void own(int place, int readings, Scatter scatter) {
    list.add(InputQuantity.within(Source.GAP, place, 0.5 * rig.of(Instrument.GAP).resolution()));
    list.add(
        InputQuantity.within(Source.SUCTION, place, 0.5 * rig.of(Instrument.SUCTION).resolution()));
    list.add(InputQuantity.within(Source.FLOW, place, 0.5 * rig.of(Instrument.FLOW).resolution()));
    list.add(
        new InputQuantity(
            Source.SCATTER,
            place,
            0,
            scatter.share() / Math.sqrt(readings),
            scatter.degreesOfFreedom(),
            scatter.share() > 0 ? InputQuantity.Shape.STUDENT : InputQuantity.Shape.NORMAL));
  }
}
