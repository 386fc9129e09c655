package hemline.validation.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;

/** Text files that come with the program. */
final class Resource {
  private static final String ROOT = "/hemline/validation/";

  private Resource() {}

  static String text(String path) {
    try (InputStream in = Resource.class.getResourceAsStream(ROOT + path)) {
      if (in == null) {
        throw new IllegalArgumentException("no reference data named " + path);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static boolean exists(String path) {
    return Resource.class.getResource(ROOT + path) != null;
  }

  /** The paragraph that starts with Source or Sources, as one line. */
  static String citation(String source) {
    return paragraph(source, "Source");
  }

  /** The paragraph that starts with a word, as one line, from its colon on. */
  static String paragraph(String source, String word) {
    String paragraph =
        source
            .lines()
            .dropWhile(line -> !line.startsWith(word))
            .takeWhile(line -> !line.isBlank())
            .collect(Collectors.joining(" "));
    return paragraph.substring(paragraph.indexOf(':') + 1).strip();
  }
}
