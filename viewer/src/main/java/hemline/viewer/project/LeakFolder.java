package hemline.viewer.project;

import hemline.shared.file.LeakPointFile;
import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import hemline.shared.result.LeakOrigin;
import hemline.shared.result.LeakPoint;
import hemline.solver.study.LeakKey;
import hemline.solver.study.LeakStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Keeps solved leak points in a folder, one file each, named by the content of the question and the
 * solver.
 *
 * <p>A kept point decides whether a machine holds. It is therefore believed only if its seal is
 * sound and what it says it was made of is what is asked, of the solver that asks. Any other file
 * counts as missing and is replaced once the section is solved again; a folder that cannot be
 * written keeps nothing. Then only time is lost.
 */
public final class LeakFolder implements LeakStore {
  /** Most points of a folder, about 40 MB; a machine needs some dozens. */
  private static final int MOST = 20_000;

  /** Share of the oldest points that make room when there are more. */
  private static final double DROPPED = 0.1;

  private final Path folder;
  private final String solver;
  private final int most;
  private final boolean invented;

  /** Where programs of this user keep what can be made again. */
  public static Path usual() {
    Map<String, String> environment = System.getenv();
    String named = environment.getOrDefault("XDG_CACHE_HOME", "");
    Path base =
        named.isEmpty()
            ? ProjectFolder.home(environment, System.getProperty("user.home", "."))
                .resolve(".cache")
            : Path.of(named);
    return base.resolve("hemline").resolve("leaks");
  }

  /**
   * Points of a solver.
   *
   * @param solver {@link Engine#fingerprint} of the solver that asks
   */
  public LeakFolder(Path folder, String solver) {
    this(folder, solver, false);
  }

  /**
   * Points of a solver, or invented ones to rehearse with.
   *
   * @param invented true to take and keep only invented points, which are never taken otherwise
   */
  public LeakFolder(Path folder, String solver, boolean invented) {
    this(folder, solver, invented, MOST);
  }

  LeakFolder(Path folder, String solver, boolean invented, int most) {
    this.most = most;
    this.folder = folder;
    this.solver = solver;
    this.invented = invented;
  }

  @Override
  public @Nullable LeakPoint find(LeakOrigin asked) {
    Path file = file(asked);
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return null;
    }
    try {
      LeakPointFile.Kept kept = LeakPointFile.parse(TextFiles.read(file), file.toString());
      boolean same =
          kept.origin().text().equals(asked.text())
              && kept.solver().equals(solver)
              && kept.invented() == invented;
      return same && !solver.equals(Engine.UNKNOWN) ? kept.point() : null;
    } catch (InputException e) {
      return null;
    }
  }

  @Override
  public void keep(LeakOrigin asked, LeakPoint point) {
    try {
      KeptFile.writeFigures(file(asked), LeakPointFile.text(point, asked, solver, invented));
      makeRoom();
    } catch (InputException e) {
      // nothing is kept; the point is solved again when it is needed
    }
  }

  /** Drops the oldest points where there are too many; those of former solvers are among them. */
  private void makeRoom() {
    List<Path> points = KeptFile.in(folder).stream().filter(LeakFolder::named).toList();
    if (points.size() <= most) {
      return;
    }
    points.stream()
        .sorted(Comparator.comparingLong(LeakFolder::written))
        .limit(points.size() - (long) ((1 - DROPPED) * most))
        .forEach(
            point -> {
              try {
                Files.deleteIfExists(point);
              } catch (IOException e) {
                // another program dropped it
              }
            });
  }

  /** True for the name of a point; other files of the folder are not touched. */
  private static boolean named(Path file) {
    return file.getFileName().toString().matches("[0-9a-f]+" + Pattern.quote(KeptFile.END));
  }

  private static long written(Path file) {
    try {
      return Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toMillis();
    } catch (IOException e) {
      return Long.MAX_VALUE;
    }
  }

  private Path file(LeakOrigin asked) {
    return folder.resolve(LeakKey.digest(asked.text() + "solver " + solver) + KeptFile.END);
  }
}
