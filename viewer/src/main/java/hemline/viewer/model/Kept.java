package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import org.jspecify.annotations.Nullable;

/**
 * A lip set aside for comparison.
 *
 * @param drawing the lip
 * @param setting its conditions
 * @param lip its number on the bench
 * @param shown its flow; null where it was not solved
 */
public record Kept(LipDrawing drawing, Setting setting, int lip, @Nullable Shown shown) {}
