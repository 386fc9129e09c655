import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Gathers reports of mutation testing into a table of scores, one line a package.
 *
 * <p>Arguments: the table, then folders that hold a folder with mutations.xml for each package. A
 * package without a new report keeps its line; several reports of one package are added up.
 */
final class MutationTable {
  private static final String HEAD =
      "package,mutants,killed,timed_out,survived,not_covered,score_percent";

  private MutationTable() {}

  public static void main(String[] args) throws Exception {
    Path table = Path.of(args[0]);
    Map<String, String> lines = new TreeMap<>();
    if (Files.exists(table)) {
      for (String line : Files.readAllLines(table)) {
        if (!line.equals(HEAD)) {
          lines.put(line.substring(0, line.indexOf(',')), line);
        }
      }
    }
    Map<String, Map<String, Integer>> counts = new TreeMap<>();
    for (int k = 1; k < args.length; k++) {
      for (Path report : reports(Path.of(args[k]))) {
        count(report, counts);
      }
    }
    counts.forEach((name, count) -> lines.put(name, line(name, count)));
    Files.createDirectories(table.toAbsolutePath().getParent());
    Files.writeString(
        table, HEAD + "\n" + lines.values().stream().collect(Collectors.joining("\n", "", "\n")));
  }

  private static List<Path> reports(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(folder, 2)) {
      return all.filter(p -> p.endsWith("mutations.xml")).sorted().toList();
    }
  }

  private static void count(Path report, Map<String, Map<String, Integer>> counts)
      throws Exception {
    NodeList mutants =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(report.toFile())
            .getElementsByTagName("mutation");
    for (int i = 0; i < mutants.getLength(); i++) {
      Element mutant = (Element) mutants.item(i);
      String type = mutant.getElementsByTagName("mutatedClass").item(0).getTextContent();
      counts
          .computeIfAbsent(type.substring(0, type.lastIndexOf('.')), name -> new TreeMap<>())
          .merge(mutant.getAttribute("status"), 1, Integer::sum);
    }
  }

  private static String line(String name, Map<String, Integer> count) {
    int all = count.values().stream().mapToInt(Integer::intValue).sum();
    int killed = count.getOrDefault("KILLED", 0) + count.getOrDefault("MEMORY_ERROR", 0);
    int late = count.getOrDefault("TIMED_OUT", 0);
    return String.format(
        Locale.ROOT,
        "%s,%d,%d,%d,%d,%d,%.1f",
        name,
        all,
        killed,
        late,
        count.getOrDefault("SURVIVED", 0),
        count.getOrDefault("NO_COVERAGE", 0),
        all == 0 ? 0 : 100.0 * (killed + late) / all);
  }
}
