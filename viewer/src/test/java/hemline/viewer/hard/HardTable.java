package hemline.viewer.hard;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The table of what was tried, {@code validation/hard/hard.csv}, one line a part. A run with {@code
 * -Dhemline.hard=write} puts its lines in place of those of the same part.
 */
final class HardTable {
  private static final Path FILE = Path.of("..", "validation", "hard", "hard.csv");
  private static final String HEAD =
      "part,seed,tried,refused,read,solved,hung,crashed,lost,longest_cpu_s";

  private HardTable() {}

  /** Counts of one part. */
  static final class Tally {
    final String part;
    final long seed;
    int tried;
    int refused;
    int read;
    int solved;
    int hung;
    int crashed;
    int lost;
    double longest;

    Tally(String part, long seed) {
      this.part = part;
      this.seed = seed;
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%s,%d,%d,%d,%d,%d,%d,%d,%d,%.2f",
          part,
          seed,
          tried,
          refused,
          read,
          solved,
          hung,
          crashed,
          lost,
          longest);
    }
  }

  static void write(List<Tally> tallies) throws IOException {
    tallies.forEach(System.out::println);
    if (!"write".equals(System.getProperty("hemline.hard"))) {
      return;
    }
    Map<String, String> lines = new LinkedHashMap<>();
    if (Files.exists(FILE)) {
      Files.readAllLines(FILE).stream()
          .skip(1)
          .forEach(line -> lines.put(line.substring(0, line.indexOf(',')), line));
    }
    tallies.forEach(tally -> lines.put(tally.part, tally.toString()));
    Files.createDirectories(FILE.getParent());
    Files.writeString(FILE, HEAD + "\n" + String.join("\n", lines.values()) + "\n");
  }
}
