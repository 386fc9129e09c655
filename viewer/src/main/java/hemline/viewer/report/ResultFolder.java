package hemline.viewer.report;

import hemline.shared.problem.InputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Locale;

/** A folder for results; every file appears whole or not at all. */
public final class ResultFolder {
  private final Path folder;

  private ResultFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * Opens the folder and makes it when missing.
   *
   * @throws InputException if it cannot be made or is no folder
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
    if (!Files.isWritable(folder)) {
      throw fault(folder, "the folder cannot be written to; name another one");
    }
    return new ResultFolder(folder);
  }

  public Path path() {
    return folder;
  }

  /**
   * Writes a text file in UTF-8.
   *
   * @param name file name, with folders inside this one where it has slashes
   */
  public Path write(String name, String text) throws InputException {
    return write(name, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes a file through a neighbour of another name, then renames it. */
  public Path write(String name, byte[] content) throws InputException {
    Path target = folder.resolve(name);
    try {
      Path parent = target.toAbsolutePath().getParent();
      if (parent == null) {
        throw new IllegalArgumentException("no file name in \"" + name + "\"");
      }
      Files.createDirectories(parent);
      Path draft = Files.createTempFile(parent, ".hemline", ".part");
      try {
        Files.write(draft, content);
        makeReadable(draft);
        move(draft, target);
      } finally {
        Files.deleteIfExists(draft);
      }
      return target;
    } catch (IOException e) {
      throw fault(target, "cannot be written (" + reason(e) + "); free the place or name another");
    }
  }

  /** A name as part of a file name: small letters, digits and hyphens. */
  public static String fileName(String name) {
    String plain =
        name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    return plain.isEmpty() ? "unnamed" : plain.length() > 80 ? plain.substring(0, 80) : plain;
  }

  /** Drafts are made private; results are for everyone whom the folder lets in. */
  private static void makeReadable(Path draft) throws IOException {
    if (Files.getFileStore(draft).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(draft, PosixFilePermissions.fromString("rw-r--r--"));
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static String reason(IOException e) {
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getReason();
    }
    if (e instanceof AccessDeniedException) {
      return "no permission";
    }
    return e instanceof NoSuchFileException ? "no such place" : e.getClass().getSimpleName();
  }

  private static InputException fault(Path place, String text) {
    return new InputException("out.write", place.toString(), text);
  }
}
