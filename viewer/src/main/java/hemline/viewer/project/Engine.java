package hemline.viewer.project;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Figure;
import hemline.solver.refine.SectionFamily;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipFile;

/** Tells one build of the solver from another, so that an old answer is not taken for a new one. */
public final class Engine {
  private static final int LENGTH = 16;
  private static final int DIGEST_LENGTH = 24;

  private Engine() {}

  /** Fingerprint where the classes cannot be read; nothing kept is then believed. */
  public static final String UNKNOWN = "unknown";

  /**
   * Packages whose code makes the figures of a section; files, machines and all that only shows
   * figures are not among them.
   */
  private static final List<String> MAKERS =
      Stream.concat(
              Stream.of("fluid", "geometry", "profile", "result", "section")
                  .map(name -> "hemline/shared/" + name + "/"),
              Stream.of(
                      "field",
                      "flow",
                      "grid",
                      "linear",
                      "measure",
                      "refine",
                      "scheme",
                      "study",
                      "turbulence")
                  .map(name -> "hemline/solver/" + name + "/"))
          .toList();

  /**
   * Sixteen digits that change with the code that makes the figures of a section; the same for
   * classes in folders and in a jar. A few ms for a jar, some tens for folders.
   */
  public static String fingerprint() {
    try {
      TreeMap<String, Long> sums = new TreeMap<>();
      for (Class<?> part : List.of(Figure.class, SectionFamily.class)) {
        CodeSource source = part.getProtectionDomain().getCodeSource();
        if (source == null || source.getLocation() == null) {
          return UNKNOWN;
        }
        Path place = Path.of(source.getLocation().toURI());
        if (Files.isDirectory(place)) {
          addFolder(sums, place);
        } else {
          addJar(sums, place);
        }
      }
      MessageDigest digest = sha256();
      sums.forEach((name, sum) -> digest.update((name + " " + sum + "\n").getBytes(UTF_8)));
      return HexFormat.of().formatHex(digest.digest()).substring(0, LENGTH);
    } catch (IOException | URISyntaxException e) {
      return UNKNOWN;
    }
  }

  private static boolean makes(String name) {
    return name.endsWith(".class")
        && !name.endsWith("-info.class")
        && MAKERS.stream().anyMatch(name::startsWith);
  }

  private static void addFolder(Map<String, Long> sums, Path place) throws IOException {
    try (Stream<Path> files = Files.walk(place)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = place.relativize(file).toString().replace('\\', '/');
        if (makes(name)) {
          CRC32 sum = new CRC32();
          sum.update(Files.readAllBytes(file));
          sums.put(name, sum.getValue());
        }
      }
    }
  }

  /** A jar tells the sums of its entries without their being read. */
  private static void addJar(Map<String, Long> sums, Path place) throws IOException {
    try (ZipFile jar = new ZipFile(place.toFile())) {
      jar.stream()
          .filter(entry -> makes(entry.getName()))
          .forEach(entry -> sums.put(entry.getName(), entry.getCrc()));
    }
  }

  /** Twenty-four digits that change with a content, but not with notes and families of lips. */
  static String digest(ObjectMapper json, Object content) {
    try {
      JsonNode tree = json.valueToTree(content);
      tree.findParents("notes").forEach(lip -> ((ObjectNode) lip).remove("notes"));
      tree.findParents("family").forEach(lip -> ((ObjectNode) lip).remove("family"));
      byte[] text = json.writeValueAsString(tree).getBytes(UTF_8);
      return HexFormat.of().formatHex(sha256().digest(text)).substring(0, DIGEST_LENGTH);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
