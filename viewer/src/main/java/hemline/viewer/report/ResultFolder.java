package hemline.viewer.report;

import hemline.shared.file.WholeFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A folder for results; every file appears whole or not at all. A file that fails takes no other
 * with it: its problem is kept, and whoever wrote tells all of them in the end. Several threads may
 * write at once.
 */
public final class ResultFolder {
  /** Longest part of a file name, bytes: disks take 255, and endings are added. */
  private static final int LONGEST = 120;

  private final Path folder;
  private final List<Problem> problems = new ArrayList<>();
  private int kept;

  private ResultFolder(Path folder) {
    this.folder = folder;
  }

  /** Content of a file, made when its turn comes. */
  @FunctionalInterface
  public interface Content {
    byte[] bytes() throws IOException;
  }

  /**
   * Opens the folder, makes it when missing, and tries that a file can be kept in it.
   *
   * @throws InputException if it cannot be made, is no folder or takes no file
   */
  public static ResultFolder at(Path folder) throws InputException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw fault(folder, "is a file; name a folder to write results to");
    }
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw fault(folder, "the folder cannot be made (" + reason(e) + "); name another one");
    }
    tryIn(folder);
    return new ResultFolder(folder);
  }

  /**
   * Tries that a file can be kept in a folder.
   *
   * @throws InputException if not
   */
  public static void tryIn(Path folder) throws InputException {
    try {
      WholeFile.tryIn(folder);
    } catch (IOException e) {
      throw fault(folder, "no file can be written here (" + reason(e) + "); name another folder");
    }
  }

  public Path path() {
    return folder;
  }

  /** What could not be written so far, in the order of the files' places. */
  public synchronized List<Problem> problems() {
    return problems.stream().sorted((a, b) -> a.place().compareTo(b.place())).toList();
  }

  /** Number of files written so far. */
  public synchronized int kept() {
    return kept;
  }

  /** One line on what was written, for a window. */
  public String told() {
    List<Problem> lost = problems();
    return lost.isEmpty()
        ? "Saved in " + folder
        : lost.get(0) + (lost.size() > 1 ? "; " + (lost.size() - 1) + " more files failed" : "");
  }

  /**
   * Writes a text file in UTF-8.
   *
   * @param name file name, with folders inside this one where it has slashes
   */
  public void write(String name, String text) {
    write(name, () -> text.getBytes(StandardCharsets.UTF_8));
  }

  /** Makes and writes a file; a failure of either is added to the problems. */
  public void write(String name, Content content) {
    Path target = folder.resolve(name);
    byte[] bytes;
    try {
      bytes = content.bytes();
    } catch (IOException | RuntimeException | LinkageError | InternalError e) {
      // a picture needs fonts and libraries of the system, which may be missing or broken
      failed(target, "cannot be made (" + e + "); .ci/setup installs what pictures need");
      return;
    }
    try {
      Files.createDirectories(target.toAbsolutePath().getParent());
      WholeFile.write(target, bytes);
    } catch (IOException e) {
      failed(target, "cannot be written (" + reason(e) + "); free the place or name another");
      return;
    }
    synchronized (this) {
      kept++;
    }
  }

  /**
   * A name as part of a file name: small letters, digits and hyphens, short enough for any disk.
   */
  public static String fileName(String name) {
    String plain =
        name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    while (plain.getBytes(StandardCharsets.UTF_8).length > LONGEST) {
      plain = plain.substring(0, plain.offsetByCodePoints(plain.length(), -1));
    }
    return plain.isEmpty() ? "unnamed" : plain;
  }

  /**
   * Names as parts of file names, each different from all others: of names that only differ in what
   * a file name leaves out, the second gets a 2, and so on.
   */
  public static List<String> fileNames(List<String> names) {
    Set<String> taken = new LinkedHashSet<>();
    for (String name : names) {
      String plain = fileName(name);
      String free = plain;
      for (int n = 2; !taken.add(free); n++) {
        free = plain + "-" + n;
      }
    }
    return List.copyOf(taken);
  }

  private synchronized void failed(Path target, String text) {
    problems.add(new Problem("out.write", target.toString(), text));
  }

  private static String reason(IOException e) {
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getReason();
    }
    if (e instanceof AccessDeniedException) {
      return "no permission";
    }
    if (e instanceof NoSuchFileException) {
      return "no such place";
    }
    String message = e.getMessage();
    return message == null ? e.getClass().getSimpleName() : message;
  }

  private static InputException fault(Path place, String text) {
    return new InputException("out.write", place.toString(), text);
  }
}
