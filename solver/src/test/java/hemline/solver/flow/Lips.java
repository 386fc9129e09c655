package hemline.solver.flow;

import hemline.shared.file.LipFile;
import hemline.shared.fluid.Air;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipProfile;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.MountEdge;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Lips and sections for tests; lengths in mm here, metres in what is made. */
public final class Lips {
  private static final double[] LEANING = {
    0, 0, 0.8, 0, 2.8, 4, 4, 4, 3, 0, 3.8, 0, 6, 5, 8, 5, 8, 10, 0, 10
  };

  private Lips() {}

  /** A lip from its outline x, y, x, y, … and those of its detached parts, mm. */
  public static LipProfile lip(String name, double[] outline, double[]... detached) {
    List<Vertex> body = vertices(outline);
    List<DrawnOutline> parts = new ArrayList<>();
    for (double[] part : detached) {
      parts.add(new DrawnOutline(vertices(part)));
    }
    try {
      return LipResolver.resolve(
          new LipDrawing(
              name,
              "",
              "",
              true,
              "",
              new DrawnOutline(body),
              MountEdge.findAtTop(body).orElseThrow(),
              parts));
    } catch (InputException e) {
      throw new IllegalArgumentException(e);
    }
  }

  public static LipProfile flat(double width) {
    return lip("flat", new double[] {0, 0, width, 0, width, 10, 0, 10});
  }

  /** Two teeth that lean towards ambient under a plate: nothing about it is symmetric. */
  public static LipProfile leaningTeeth() {
    return leaningTeeth(1);
  }

  /** The same at another size. */
  public static LipProfile leaningTeeth(double scale) {
    double[] xy = LEANING.clone();
    for (int k = 0; k < xy.length; k++) {
      xy[k] *= scale;
    }
    return lip("leaning teeth", xy);
  }

  /** The same seen from the other side. */
  public static LipProfile leaningTeethMirrored() {
    double[] mirrored = new double[LEANING.length];
    for (int k = 0; k < mirrored.length; k += 2) {
      mirrored[k] = 8 - LEANING[mirrored.length - 2 - k];
      mirrored[k + 1] = LEANING[mirrored.length - 1 - k];
    }
    return lip("leaning teeth mirrored", mirrored);
  }

  /** A lip from the folder of profiles, by file name without ending. */
  public static LipProfile shipped(String file) {
    try {
      return LipFile.load(Path.of("..", "profiles", file + ".json")).profile();
    } catch (InputException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** A section in standard air over plain ground. */
  public static SealSection section(
      LipProfile lip, double gap, double suction, double ground, double spanwise) {
    return new SealSection(
        lip, 1e-3 * gap, suction, new GroundMotion(ground, spanwise), Air.STANDARD, List.of());
  }

  /** The section with solids on the ground, outlines x, y, x, y, … in mm. */
  public static SealSection withBumps(SealSection section, double[]... bumps) {
    List<Outline> outlines = new ArrayList<>();
    for (double[] bump : bumps) {
      outlines.add(new Outline(vertices(bump)));
    }
    return new SealSection(
        section.profile(),
        section.gap(),
        section.suction(),
        section.ground(),
        section.fluid(),
        outlines);
  }

  private static List<Vertex> vertices(double[] xy) {
    List<Vertex> v = new ArrayList<>();
    for (int k = 0; k < xy.length; k += 2) {
      v.add(new Vertex(1e-3 * xy[k], 1e-3 * xy[k + 1]));
    }
    return v;
  }
}
