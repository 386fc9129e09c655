package hemline.shared.file;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Files that appear whole or not at all: written beside their place under a name that nobody can
 * foresee, brought to the disk unless they can be made again, then renamed. Whoever may read a file
 * follows from the process's mask, as for any new file.
 */
public final class WholeFile {
  private static final byte[] TRIAL =
      "This file tries whether results can be kept.\n".getBytes(US_ASCII);

  private WholeFile() {}

  /**
   * Writes a file, in place of one of that name. A link of that name is replaced, not followed.
   *
   * @param file in a folder that exists
   * @throws IOException if it cannot be written; then the old file, if any, is as it was
   */
  public static void write(Path file, byte[] content) throws IOException {
    write(file, content, true);
  }

  /**
   * Writes what can be made again as {@link #write} does, but leaves it to the system when the disk
   * gets it: other programs see it whole or not at all, while a power failure may leave a damaged
   * file. Its reader must notice that.
   *
   * @param file in a folder that exists
   * @throws IOException if it cannot be written; then the old file, if any, is as it was
   */
  public static void writeUnsynced(Path file, byte[] content) throws IOException {
    write(file, content, false);
  }

  private static void write(Path file, byte[] content, boolean synced) throws IOException {
    Path target = file.toAbsolutePath();
    Path folder = target.getParent();
    if (folder == null) {
      throw new IllegalArgumentException("no file name in \"" + file + "\"");
    }
    Path draft = draft(folder);
    try {
      fill(draft, content, synced);
      move(draft, target);
    } finally {
      Files.deleteIfExists(draft);
    }
    if (synced) {
      sync(folder);
    }
  }

  /**
   * Does once in a folder what keeping a file there needs: a new file, its name changed, and it
   * taken away again.
   *
   * @throws IOException if any of that fails
   */
  public static void tryIn(Path folder) throws IOException {
    Path trial = draft(folder.toAbsolutePath());
    try {
      write(trial, TRIAL);
    } finally {
      Files.deleteIfExists(trial);
    }
  }

  private static Path draft(Path folder) {
    return folder.resolve(".hemline-" + UUID.randomUUID() + ".part");
  }

  /** Fills a new file; one of that name, were it a link, is a failure. */
  private static void fill(Path draft, byte[] content, boolean synced) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            draft,
            StandardOpenOption.CREATE_NEW,
            StandardOpenOption.WRITE,
            LinkOption.NOFOLLOW_LINKS)) {
      ByteBuffer buffer = ByteBuffer.wrap(content);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      if (synced) {
        channel.force(true);
      }
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Brings the new name to the disk, where the system can do that for a folder. */
  private static void sync(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // the file itself is safe; some systems open no folders
    }
  }
}
