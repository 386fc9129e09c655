package hemline.viewer.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

final class LibrariesTest {
  /** Beginnings of jars that are here for tests alone. */
  private static final List<String> FOR_TESTS =
      List.of(
          "testfx",
          "openjfx-monocle",
          "archunit",
          "json-schema-validator",
          "itu",
          "slf4j",
          "junit",
          "opentest4j",
          "apiguardian",
          "assertj",
          "byte-buddy",
          "hamcrest",
          "org.osgi",
          "surefire",
          "maven");

  @Test
  void everyJarOfTheProgramIsNamedWithItsVersion() {
    List<String> jars =
        Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
            .map(path -> new File(path).getName())
            .filter(name -> name.endsWith(".jar") && !name.startsWith("hemline-"))
            .filter(name -> FOR_TESTS.stream().noneMatch(name::startsWith))
            .toList();
    assertThat(jars).hasSizeGreaterThan(10);
    for (String jar : jars) {
      assertThat(Libraries.all())
          .as("a line for %s", jar)
          .anyMatch(one -> jar.startsWith(one.jar()) && jar.contains(one.version()));
    }
  }
}
