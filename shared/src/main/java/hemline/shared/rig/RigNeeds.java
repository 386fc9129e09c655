package hemline.shared.rig;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** What a rig must state so that its readings prove something. */
final class RigNeeds {
  private RigNeeds() {}

  /** Tells what is missing. */
  static void check(
      List<RigReading> readings,
      Map<Instrument, Accuracy> accuracy,
      boolean hasFan,
      double fanAccuracy,
      double volume,
      Consumer<String> problem) {
    need(Instrument.GAP, true, accuracy, problem);
    need(Instrument.SUCTION, true, accuracy, problem);
    need(Instrument.LIP_LENGTH, true, accuracy, problem);
    boolean metered = readings.stream().anyMatch(r -> !Double.isNaN(r.flow()));
    need(Instrument.FLOW, metered, accuracy, problem);
    boolean blown =
        hasFan
            && readings.stream()
                .anyMatch(r -> r.kind() != RigReading.Kind.DECAY && Double.isNaN(r.flow()));
    need(Instrument.FAN_SPEED, blown, accuracy, problem);
    if (blown && Double.isNaN(fanAccuracy)) {
      problem.accept(
          "the accuracy of the fan curve is missing; give it in a line \"accuracy %\", column \"fan"
              + " curve\"");
    }
    boolean decays = readings.stream().anyMatch(r -> r.kind() == RigReading.Kind.DECAY);
    if (decays && Double.isNaN(volume)) {
      problem.accept(
          "a decay needs the volume of the box, column \"box volume\" of a line \"rig\"");
    }
    need(Instrument.BOX_VOLUME, decays, accuracy, problem);
    need(Instrument.TIME, decays, accuracy, problem);
  }

  private static void need(
      Instrument instrument,
      boolean used,
      Map<Instrument, Accuracy> accuracy,
      Consumer<String> problem) {
    if (used && !accuracy.getOrDefault(instrument, Accuracy.NONE).stated()) {
      problem.accept(
          "the accuracy of the "
              + instrument.title()
              + " is missing; give it in a line \"accuracy\" or \"accuracy %\": a measurement"
              + " without one proves nothing");
    }
  }
}
