package hemline.viewer.project;

import hemline.shared.file.TextFiles;
import hemline.shared.problem.InputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HexFormat;

/** Tells whether a file is still the one that was read. */
public final class FileDigest {
  private FileDigest() {}

  /** Digits that change with what a text file holds; empty for one that cannot be read. */
  public static String of(Path file) {
    try {
      byte[] text = TextFiles.read(file).getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(Engine.sha256().digest(text));
    } catch (InputException e) {
      return "";
    }
  }
}
