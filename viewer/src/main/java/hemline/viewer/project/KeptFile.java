package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.file.Seal;
import hemline.shared.file.TextFiles;
import hemline.shared.file.WholeFile;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.stream.Stream;

/**
 * Files that the window writes for itself and reads back: sealed JSON. They lie in a folder that
 * may come from anybody, so each is read as if a stranger had written it.
 */
final class KeptFile {
  static final String END = ".json";

  /** Code of a file of another kind or version, which is left alone. */
  private static final String OTHER = "kept.schema";

  private static final int MOST_SET_ASIDE = 100;

  private KeptFile() {}

  /** A document with schema and seal before its other keys. */
  static ObjectNode start(ObjectMapper json, String schema) {
    return json.createObjectNode().put("schema", schema).put("seal", Seal.BLANK);
  }

  /** Sealed text of a document from {@link #start}. */
  static String text(ObjectMapper json, ObjectNode document) throws JsonProcessingException {
    return Seal.close(json.writeValueAsString(document));
  }

  /**
   * Reads a document.
   *
   * @param schemas that can be read, the present one first
   * @throws InputException if it is no ordinary file of this schema with a sound seal; code {@link
   *     #OTHER} if it is a sound document of another kind or version
   */
  static JsonNode read(ObjectMapper json, Path file, String... schemas) throws InputException {
    if (isOther(file)) {
      throw new InputException("kept.form", file.toString(), "is no ordinary file; remove it");
    }
    String text = TextFiles.read(file);
    JsonNode document;
    try {
      document = json.readTree(text);
    } catch (JsonProcessingException e) {
      throw new InputException("kept.form", file.toString(), "is damaged: it is no sound JSON");
    }
    String found = document.path("schema").asText();
    if (!List.of(schemas).contains(found)) {
      String schema = schemas[0];
      boolean ours = found.startsWith(schema.substring(0, schema.indexOf('/') + 1));
      throw new InputException(
          ours ? OTHER : "kept.form",
          file.toString(),
          ours
              ? "was written by another version of the program; it is left as it is"
              : "is damaged: its schema is not \"" + schema + "\"");
    }
    Seal.check(text, file.toString());
    return document;
  }

  /**
   * Writes a file in one step; a link in its place is replaced, not followed.
   *
   * @throws InputException if the folder is a link or the file cannot be written
   */
  static void write(Path file, String text) throws InputException {
    write(file, target -> TextFiles.write(target, text));
  }

  /**
   * Writes as {@link #write(Path, String)} does, without waiting for the disk: for figures, which
   * are solved again where a power failure damaged their file.
   *
   * @throws InputException if the folder is a link or the file cannot be written
   */
  static void writeFigures(Path file, String text) throws InputException {
    write(file, target -> WholeFile.writeUnsynced(target, text.getBytes(StandardCharsets.UTF_8)));
  }

  private static void write(Path file, Writing writing) throws InputException {
    Path folder = file.toAbsolutePath().getParent();
    try {
      if (folder == null || linked(folder)) {
        throw new InputException(
            "kept.link", file.toString(), "its folder is a link; make it an ordinary folder");
      }
      Files.createDirectories(folder);
      if (Files.isSymbolicLink(file)) {
        Files.delete(file);
      }
      writing.to(file);
    } catch (IOException e) {
      throw new InputException(
          "file.write",
          file.toString(),
          "the file cannot be written; check the folder's permissions and space");
    }
  }

  private interface Writing {
    void to(Path file) throws IOException, InputException;
  }

  /** True where a folder, or one above it up to that of the window, leads elsewhere. */
  static boolean linked(Path folder) {
    boolean link = Files.isSymbolicLink(folder);
    boolean above = false;
    for (Path at = folder; at != null; at = at.getParent()) {
      above |= Files.isSymbolicLink(at);
      if (at.endsWith(ProjectFolder.HIDDEN)) {
        return above;
      }
    }
    return link;
  }

  /**
   * Files of a folder that may be kept documents, by name; none where it cannot be read or leads
   * elsewhere.
   */
  static List<Path> in(Path folder) {
    if (!Files.isDirectory(folder) || linked(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(END)).sorted().toList();
    } catch (IOException | java.io.UncheckedIOException e) {
      return List.of();
    }
  }

  /** Deletes work that was put by; what cannot be deleted is offered once more. */
  static void drop(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // better than lost work
    }
  }

  /** True for a folder, link or device; a file that its program has just taken away is none. */
  private static boolean isOther(Path file) {
    try {
      return !Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS)
          .isRegularFile();
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Takes a file that cannot be used out of the way, so that it is told once and never read again,
   * but is not lost. One of another version stays where it is.
   *
   * @return what to tell
   */
  static Problem setAside(Path file, InputException why) {
    Problem first = why.problems().get(0);
    String kept = "";
    boolean stays = first.code().equals("file.read") || first.code().equals(OTHER);
    for (int k = 1; k <= MOST_SET_ASIDE && kept.isEmpty() && !stays; k++) {
      Path aside = file.resolveSibling(file.getFileName() + (k == 1 ? "" : "-" + k) + ".refused");
      try {
        if (Files.notExists(aside, LinkOption.NOFOLLOW_LINKS)) {
          Files.move(file, aside);
          kept = "; it is set aside as " + aside.getFileName();
        }
      } catch (IOException e) {
        break;
      }
    }
    return new Problem(first.code(), first.place(), first.text() + kept);
  }
}
