package hemline.shared.file;

import hemline.shared.problem.InputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Whole files, read with clear problems and written in one step. */
public final class TextFiles {
  private static final long LARGEST = 16L << 20;

  private TextFiles() {}

  /**
   * Text of a UTF-8 file, without a byte order mark.
   *
   * @throws InputException if there is no such readable text file, it is a pipe or a device, or
   *     larger than 16 MB
   */
  public static String read(Path file) throws InputException {
    byte[] bytes = readBytes(file);
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new InputException(
          "file.encoding", file.toString(), "this is no UTF-8 text; save the file as UTF-8");
    }
  }

  static byte[] readBytes(Path file) throws InputException {
    String place = file.toString();
    if (Files.isDirectory(file)) {
      throw new InputException("file.read", place, "this is a folder; name a file in it");
    }
    if (!Files.exists(file)) {
      throw new InputException("file.read", place, "there is no such file; check the path");
    }
    if (!Files.isRegularFile(file)) {
      // opening a pipe would wait for a writer that may never come
      throw new InputException(
          "file.read", place, "this is a pipe or a device; save what it holds in a file first");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes((int) LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw new InputException("file.read", place, "the file is larger than 16 MB");
      }
      return bytes;
    } catch (IOException e) {
      throw new InputException(
          "file.read", place, "the file cannot be read; check its permissions (" + reason(e) + ")");
    }
  }

  /**
   * Writes a UTF-8 file in one step: readers see the old file or the new one, never a part.
   *
   * @throws InputException if the folder is missing or cannot be written
   */
  public static void write(Path file, String text) throws InputException {
    write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes bytes as {@link #write(Path, String)} writes text. */
  public static void write(Path file, byte[] bytes) throws InputException {
    try {
      Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
      Path folder = target.getParent();
      if (folder == null || !Files.isDirectory(folder)) {
        throw new InputException(
            "file.write", file.toString(), "the folder of this file does not exist; make it first");
      }
      WholeFile.write(target, bytes);
    } catch (IOException e) {
      throw new InputException(
          "file.write",
          file.toString(),
          "the file cannot be written; check the folder's permissions and space ("
              + reason(e)
              + ")");
    }
  }

  private static String reason(IOException e) {
    return e.getClass()
        .getSimpleName()
        .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
        .toLowerCase(Locale.ROOT);
  }
}
