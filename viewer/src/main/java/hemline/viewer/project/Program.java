package hemline.viewer.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A running program. Process numbers mean something on one computer only, and are given again; on a
 * shared drive programs of several computers meet.
 *
 * @param computer name of the computer, for people
 * @param machine digits that tell computers apart, even two of one name
 * @param pid process number there
 * @param start when it was started; null where the system does not tell
 */
public record Program(String computer, String machine, long pid, @Nullable Instant start) {
  /** Largest error of a start time by the system's clock. */
  private static final Duration CLOCK = Duration.ofSeconds(3);

  private static final int DIGITS = 8;

  /** The program that runs this. */
  public static Program here() {
    ProcessHandle self = ProcessHandle.current();
    return new Program(name(), machineHere(), self.pid(), self.info().startInstant().orElse(null));
  }

  /** The program that a document tells of; a moment that is none is a {@link DateTimeException}. */
  static Program read(JsonNode document) {
    JsonNode start = document.path("start");
    return new Program(
        document.path("computer").asText(),
        document.path("machine").asText(),
        document.path("pid").asLong(),
        start.isTextual() ? Instant.parse(start.asText()) : null);
  }

  /** Puts the keys that {@link #read} reads. */
  void write(ObjectNode document) {
    document.put("computer", computer);
    document.put("machine", machine);
    document.put("pid", pid);
    document.put("start", start == null ? null : start.toString());
  }

  /** False only when it is certain that it ended: it ran on this computer and is gone. */
  boolean mayRun() {
    if (!machine.equals(machineHere())) {
      return true;
    }
    Optional<ProcessHandle> found = ProcessHandle.of(pid).filter(ProcessHandle::isAlive);
    if (found.isEmpty()) {
      return false;
    }
    Instant began = found.get().info().startInstant().orElse(null);
    return start == null
        || began == null
        || Duration.between(start, began).abs().compareTo(CLOCK) <= 0;
  }

  boolean elsewhere() {
    return !machine.equals(machineHere());
  }

  /** Part of a file name that no other program has. */
  String id() {
    String since = start == null ? "" : "-" + Long.toString(start.getEpochSecond(), 36);
    return machine + "-" + pid + since;
  }

  private static String machineHere() {
    String id =
        Stream.of("/etc/machine-id", "/var/lib/dbus/machine-id")
            .map(Program::line)
            .filter(text -> !text.isEmpty())
            .findFirst()
            .orElse("");
    try {
      byte[] bytes = (name() + "\n" + id).getBytes(StandardCharsets.UTF_8);
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(digest).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static String name() {
    Map<String, String> environment = System.getenv();
    return Stream.of(
            line("/proc/sys/kernel/hostname"),
            environment.getOrDefault("COMPUTERNAME", ""),
            environment.getOrDefault("HOSTNAME", ""))
        .filter(text -> !text.isBlank())
        .findFirst()
        .orElse("this computer");
  }

  private static String line(String file) {
    try {
      return Files.readString(Path.of(file)).strip();
    } catch (IOException | SecurityException e) {
      return "";
    }
  }
}
