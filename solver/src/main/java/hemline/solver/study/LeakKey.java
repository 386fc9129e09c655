package hemline.solver.study;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.LeakOrigin;
import hemline.shared.section.SealSection;
import hemline.shared.section.SectionConditions;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Tells by its content what a leak point was asked for. */
public final class LeakKey {
  private LeakKey() {}

  /** The question for a section. */
  public static LeakOrigin of(SealSection section, RunOptions options) {
    return new LeakOrigin(
        lip(section),
        SectionConditions.of(section),
        section.fluid(),
        options.level().key(),
        options.closure().key(),
        options.modelSpread());
  }

  private static String lip(SealSection section) {
    LipProfile lip = section.profile();
    StringBuilder text = new StringBuilder().append(lip.mountEdge()).append('\n');
    outline(text, lip.outline());
    lip.detached().forEach(part -> outline(text, part));
    text.append("ground\n");
    section.groundBumps().forEach(bump -> outline(text, bump));
    return digest(text.toString());
  }

  /** SHA-256 of a text, in hexadecimal digits. */
  public static String digest(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static void outline(StringBuilder text, Outline outline) {
    for (Vertex v : outline.vertices()) {
      for (double number : new double[] {v.x(), v.y(), v.bulge()}) {
        text.append(number == 0 ? "0" : Double.toString(number)).append(' ');
      }
      text.append('\n');
    }
    text.append("end\n");
  }
}
