package hemline.solver.study;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.SealSection;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Name of a leak point by the content of its question: outline of the lip, conditions, mesh level,
 * flow model and version of the solver. Names and notes of the lip do not count.
 */
public final class LeakKey {
  /** To be raised whenever the solver gives other figures for the same section. */
  private static final int SOLVER_RESULTS = 8;

  private LeakKey() {}

  /** SHA-256 of the content, in hexadecimal digits. */
  public static String of(SealSection section, RunOptions options) {
    StringBuilder text = new StringBuilder("leak ").append(SOLVER_RESULTS).append('\n');
    text.append(options.level().key()).append(' ').append(options.closure().key());
    text.append(' ').append(options.modelSpread()).append('\n');
    numbers(
        text,
        section.gap(),
        section.suction(),
        section.ground().speed(),
        section.ground().spanwiseSpeed(),
        section.fluid().density(),
        section.fluid().kinematicViscosity());
    LipProfile lip = section.profile();
    text.append(lip.mountEdge()).append('\n');
    outline(text, lip.outline());
    lip.detached().forEach(part -> outline(text, part));
    section.groundBumps().forEach(bump -> outline(text, bump));
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256")
              .digest(text.toString().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void outline(StringBuilder text, Outline outline) {
    for (Vertex v : outline.vertices()) {
      numbers(text, v.x(), v.y(), v.bulge());
    }
    text.append("end\n");
  }

  private static void numbers(StringBuilder text, double... values) {
    for (double v : values) {
      text.append(v == 0 ? "0" : Double.toString(v)).append(' ');
    }
    text.append('\n');
  }
}
