package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import java.util.Map;

/**
 * What undo brings back: the lip with its conditions.
 *
 * @param drawing the lip
 * @param setting its conditions
 * @param measures places of the sliders that the lip was last shaped with, by name; empty for none
 */
record Draft(LipDrawing drawing, Setting setting, Map<String, Double> measures) {
  Draft {
    measures = Map.copyOf(measures);
  }

  Draft withDrawing(LipDrawing other) {
    return new Draft(other, setting, measures);
  }

  Draft withSetting(Setting other) {
    return new Draft(drawing, other, measures);
  }
}
