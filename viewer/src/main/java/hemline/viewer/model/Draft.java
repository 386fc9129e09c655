package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import java.util.Map;

/**
 * What undo brings back: the lip with its conditions.
 *
 * @param drawing the lip
 * @param setting its conditions
 * @param measures places of the sliders that the lip was last shaped with, by name; empty for none
 * @param lip number of the lip: another one for each that was put on the bench
 */
record Draft(LipDrawing drawing, Setting setting, Map<String, Double> measures, int lip) {
  Draft {
    measures = Map.copyOf(measures);
  }

  Draft withDrawing(LipDrawing other) {
    return new Draft(other, setting, measures, lip);
  }

  Draft withSetting(Setting other) {
    return new Draft(drawing, other, measures, lip);
  }
}
