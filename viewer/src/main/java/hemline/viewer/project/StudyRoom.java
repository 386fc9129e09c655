package hemline.viewer.project;

import hemline.shared.problem.Problem;
import hemline.solver.grid.MeshLevel;
import hemline.solver.study.RunOptions;
import java.util.List;
import java.util.Locale;

/**
 * How large a study may be: asked before it starts, not found out hours later.
 *
 * <p>A ranking holds the flow of every section, for its pictures, and each thread needs room to
 * solve one. The bytes by mesh are measured (viewer/NOTES.md, 2026-11-30).
 */
public final class StudyRoom {
  /** Most lips of a ranking: so many rows can still be read in its charts. */
  public static final int MOST_LIPS = 200;

  /** Share of Java's memory that flows and solves may take; figures and pictures need the rest. */
  private static final double SHARE = 0.8;

  private StudyRoom() {}

  /**
   * What is too large in a ranking; empty when it can be started.
   *
   * @param where what is told of, such as an option or a place
   * @param lips lips, the baseline among them
   * @param gaps gaps that each is solved at
   * @param memory most that Java may take, bytes
   */
  public static List<Problem> ranking(
      String where, int lips, int gaps, RunOptions options, long memory) {
    if (lips > MOST_LIPS) {
      return List.of(
          new Problem(
              "study.lips",
              where,
              "a ranking takes at most "
                  + MOST_LIPS
                  + " lips, the baseline among them, not "
                  + lips));
    }
    int sections = lips * gaps;
    MeshLevel level = options.level();
    int threads = Math.min(options.threads(), sections);
    double needed = 1e6 * (sections * flow(level) + threads * solve(level)) / SHARE;
    if (needed <= memory) {
      return List.of();
    }
    String size =
        String.format(
            Locale.ROOT,
            "%.1f GB of memory, and Java may take %.1f GB",
            1e-9 * needed,
            1e-9 * memory);
    return List.of(
        new Problem(
            "study.memory",
            where,
            sections
                + " sections on "
                + level.key()
                + " meshes, "
                + threads
                + " at once, need about "
                + size
                + "; ask for fewer lips or gaps or a coarser mesh, or set JAVA_TOOL_OPTIONS=-Xmx"
                + (long) Math.ceil(1e-9 * needed)
                + "g"));
  }

  /** A flow that is held, MB: half as much again as that of five teeth. */
  private static double flow(MeshLevel level) {
    return switch (level) {
      case COARSE -> 2;
      case MEDIUM -> 4;
      case FINE -> 12;
    };
  }

  /** A direct solution of the finest grid, the hungriest, MB. */
  private static double solve(MeshLevel level) {
    return switch (level) {
      case COARSE -> 60;
      case MEDIUM -> 160;
      case FINE -> 470;
    };
  }
}
