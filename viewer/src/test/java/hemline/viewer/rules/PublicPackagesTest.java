package hemline.viewer.rules;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import example.LeakOfALip;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The packages that others may build on, and that these need no other. */
final class PublicPackagesTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("hemline.shared", "hemline.solver");

  /** Packages and types as the developers' page names them. */
  private static final List<String> NAMED = named();

  private static List<String> named() {
    try {
      String page = Files.readString(Path.of("..", "DEVELOPERS.md"));
      int from = page.indexOf("Public packages:");
      String list = page.substring(from, page.indexOf("All others are closed", from));
      return Pattern.compile("`([a-zA-Z.]+)`")
          .matcher(list)
          .results()
          .map(found -> "hemline." + found.group(1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean inPublicPackage(JavaClass type) {
    String name = type.getPackageName();
    return NAMED.contains(name) || name.startsWith("hemline.shared.");
  }

  private static boolean isPublic(JavaClass type) {
    return inPublicPackage(type)
        || !type.getName().startsWith("hemline.")
        || NAMED.contains(type.getBaseComponentType().getName());
  }

  @Test
  void everyNameOfThePageIsThere() {
    TreeSet<String> known = new TreeSet<>(List.of("hemline.shared"));
    for (JavaClass type : CLASSES) {
      known.add(type.getName());
      known.add(type.getPackageName());
    }
    assertThat(NAMED).hasSizeGreaterThan(8).isSubsetOf(known);
  }

  @Test
  void theExampleUsesWhatIsPublicAlone() {
    classes()
        .should()
        .onlyDependOnClassesThat(
            DescribedPredicate.describe(
                "are public to others", type -> isPublic(type.getBaseComponentType())))
        .check(new ClassFileImporter().importPackages("example"));
  }

  /** Of the types named one by one some let closed ones through, which stay closed. */
  @Test
  void publicSignaturesNameNothingClosed() {
    TreeSet<String> leaks = new TreeSet<>();
    for (JavaClass type : CLASSES) {
      if (type.getModifiers().contains(JavaModifier.PUBLIC) && inPublicPackage(type)) {
        for (JavaMember member : type.getMembers()) {
          if (member.getModifiers().contains(JavaModifier.PUBLIC)) {
            types(member)
                .flatMap(used -> used.getAllInvolvedRawTypes().stream())
                .map(JavaClass::getBaseComponentType)
                .filter(used -> !isPublic(used))
                .forEach(used -> leaks.add(member.getFullName() + " names " + used.getName()));
          }
        }
      }
    }
    assertThat(leaks).isEmpty();
  }

  private static Stream<JavaType> types(JavaMember member) {
    return member instanceof JavaField field
        ? Stream.of(field.getType())
        : Stream.concat(
            Stream.of(((JavaCodeUnit) member).getReturnType()),
            ((JavaCodeUnit) member).getParameterTypes().stream());
  }

  @Test
  void theExampleSolvesSweepsAndPrintsBands() throws Exception {
    PrintStream before = System.out;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
      LeakOfALip.main(new String[] {"../profiles/plain-flat-8.json"});
    } finally {
      System.setOut(before);
    }
    List<String> lines = said.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0)).isEqualTo("plain flat 8: converged");
    double last = 0;
    for (String line : lines.subList(1, 3)) {
      Matcher numbers =
          Pattern.compile("gap 0\\.[23] mm: (\\S+) \\((\\S+) to (\\S+)\\) L/s per m").matcher(line);
      assertThat(numbers.matches()).as(line).isTrue();
      double leak = Double.parseDouble(numbers.group(1));
      assertThat(leak)
          .isGreaterThan(last)
          .isBetween(Double.parseDouble(numbers.group(2)), Double.parseDouble(numbers.group(3)));
      last = leak;
    }
  }
}
