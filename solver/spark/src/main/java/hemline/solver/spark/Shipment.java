package hemline.solver.spark;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.apache.spark.SparkContext;

/** The program for machines that have nothing but the engine: all of the class path but that. */
final class Shipment {
  private Shipment() {}

  /** Jars to send, folders of classes packed into jars that go with the program. */
  static List<String> jars() {
    try {
      Path engine =
          Path.of(SparkContext.class.getProtectionDomain().getCodeSource().getLocation().toURI())
              .getParent();
      List<String> jars = new ArrayList<>();
      for (String name : System.getProperty("java.class.path").split(File.pathSeparator)) {
        Path entry = Path.of(name).toAbsolutePath();
        if (Files.isDirectory(entry)) {
          jars.add(packed(entry).toString());
        } else if (Files.isRegularFile(entry)
            && !engine.equals(entry.getParent())
            && !entry.getFileName().toString().startsWith("javafx-")) {
          jars.add(entry.toString());
        }
      }
      return jars;
    } catch (IOException | java.net.URISyntaxException e) {
      throw new IllegalStateException("the program cannot be sent: " + e.getMessage(), e);
    }
  }

  private static Path packed(Path folder) throws IOException {
    Path jar = Files.createTempFile("hemline", ".jar");
    jar.toFile().deleteOnExit();
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar));
        Stream<Path> files = Files.walk(folder)) {
      files
          .filter(Files::isRegularFile)
          .sorted()
          .forEach(
              file -> {
                try {
                  String name = folder.relativize(file).toString().replace(File.separatorChar, '/');
                  out.putNextEntry(new JarEntry(name));
                  Files.copy(file, out);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    }
    return jar;
  }
}
