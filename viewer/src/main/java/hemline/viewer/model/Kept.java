package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;

/**
 * A lip set aside for comparison.
 *
 * @param drawing the lip
 * @param setting its conditions
 * @param shown its flow
 */
public record Kept(LipDrawing drawing, Setting setting, Shown shown) {}
