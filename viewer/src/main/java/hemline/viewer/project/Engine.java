package hemline.viewer.project;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.Figure;
import hemline.solver.refine.SectionFamily;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** Tells one build of the solver from another, so that an old answer is not taken for a new one. */
public final class Engine {
  private static final int LENGTH = 16;
  private static final int DIGEST_LENGTH = 24;

  private Engine() {}

  /** Sixteen digits that change with the code of solver and vocabulary; some tens of ms. */
  public static String fingerprint() {
    try {
      MessageDigest digest = sha256();
      for (Class<?> part : List.of(Figure.class, SectionFamily.class)) {
        CodeSource source = part.getProtectionDomain().getCodeSource();
        if (source == null || source.getLocation() == null) {
          return "unknown";
        }
        add(digest, Path.of(source.getLocation().toURI()));
      }
      return HexFormat.of().formatHex(digest.digest()).substring(0, LENGTH);
    } catch (IOException | URISyntaxException e) {
      return "unknown";
    }
  }

  private static void add(MessageDigest digest, Path place) throws IOException {
    try (Stream<Path> files = Files.walk(place)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        digest.update(place.relativize(file).toString().getBytes(StandardCharsets.UTF_8));
        digest.update(Files.readAllBytes(file));
      }
    }
  }

  /** Twenty-four digits that change with a content, but not with notes and families of lips. */
  static String digest(ObjectMapper json, Object content) {
    try {
      JsonNode tree = json.valueToTree(content);
      tree.findParents("notes").forEach(lip -> ((ObjectNode) lip).remove("notes"));
      tree.findParents("family").forEach(lip -> ((ObjectNode) lip).remove("family"));
      byte[] text = json.writeValueAsString(tree).getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(sha256().digest(text)).substring(0, DIGEST_LENGTH);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
