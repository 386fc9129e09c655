package hemline.viewer.rules;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import hemline.shared.problem.NoticeKind;
import hemline.shared.result.LeakPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Directions of modules and packages, and what may be used where; DEVELOPERS.md gives reasons. */
final class ArchitectureTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("hemline");

  /** Modules in the order in which they may use each other: each uses only those before it. */
  private static final List<String> MODULES = List.of("shared", "solver", "validation", "viewer");

  /** Packages of each module in that same sense; a package that is missing here fails the test. */
  private static final Map<String, List<String>> PACKAGES =
      Map.of(
          "shared",
          List.of(
              "problem",
              "units",
              "fluid",
              "geometry",
              "profile",
              "section",
              "vehicle",
              "result",
              "file",
              "rig"),
          "solver",
          List.of(
              "grid",
              "field",
              "linear",
              "scheme",
              "turbulence",
              "flow",
              "measure",
              "refine",
              "study",
              "rig",
              "plenum",
              "improve"),
          "validation",
          List.of("reference", "exact", "run", "bench"),
          "viewer",
          List.of(
              "format", "picture", "page", "report", "project", "cli", "edit", "model", "draw",
              "screen", "app"));

  /** Most components of a record. */
  private static final int MOST_COMPONENTS = 8;

  private static final String CURE =
      "; turn the dependency round or move the class, see DEVELOPERS.md, Layout";

  @TestFactory
  List<DynamicTest> modulesUseOnlyThoseBeforeThem() {
    return MODULES.stream()
        .map(
            module ->
                rule(
                    module + " uses no later module",
                    noClasses()
                        .that()
                        .resideInAPackage("hemline." + module + "..")
                        .should()
                        .dependOnClassesThat(
                            resideInAnyPackage(
                                after(MODULES, module).stream()
                                    .map(later -> "hemline." + later + "..")
                                    .toArray(String[]::new)))
                        .because("modules form a chain" + CURE)))
        .toList();
  }

  @TestFactory
  List<DynamicTest> packagesUseOnlyThoseBeforeThem() {
    return MODULES.stream()
        .flatMap(
            module ->
                PACKAGES.get(module).stream()
                    .map(
                        name ->
                            rule(
                                module + "." + name + " uses no later package",
                                noClasses()
                                    .that()
                                    .resideInAPackage("hemline." + module + "." + name + "..")
                                    .should()
                                    .dependOnClassesThat(
                                        resideInAnyPackage(
                                            after(PACKAGES.get(module), name).stream()
                                                .map(l -> "hemline." + module + "." + l + "..")
                                                .toArray(String[]::new)))
                                    .because("packages of a module are layered" + CURE))))
        .toList();
  }

  @Test
  void everyPackageHasItsPlaceInTheLists() {
    TreeSet<String> known = new TreeSet<>();
    PACKAGES.forEach(
        (module, names) -> names.forEach(name -> known.add("hemline." + module + "." + name)));
    TreeSet<String> found = new TreeSet<>();
    CLASSES.forEach(c -> found.add(c.getPackageName()));
    assertThat(found)
        .as("packages; add a new one to this test and to DEVELOPERS.md")
        .isSubsetOf(known)
        .contains("hemline.shared.result", "hemline.solver.flow", "hemline.viewer.cli");
  }

  @Test
  void packagesAreFreeOfCycles() {
    slices().matching("hemline.(*).(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void screensAloneKnowJavaFx() {
    noClasses()
        .that(
            DescribedPredicate.not(
                resideInAnyPackage(
                    "hemline.viewer.screen..", "hemline.viewer.draw..", "hemline.viewer.app..")))
        .should()
        .dependOnClassesThat(
            resideInAPackage("javafx..")
                .and(
                    DescribedPredicate.not(
                        resideInAnyPackage("javafx.beans..", "javafx.concurrent.."))))
        .because("everything but the screens runs without a display")
        .check(CLASSES);
    noClasses()
        .that(DescribedPredicate.not(resideInAPackage("hemline.viewer..")))
        .should()
        .dependOnClassesThat(resideInAPackage("javafx.."))
        .because("only the viewer may use JavaFX")
        .check(CLASSES);
  }

  @Test
  void oneLinearAlgebraPackageKnowsTheLibrary() {
    noClasses()
        .that(DescribedPredicate.not(resideInAPackage("hemline.solver.linear..")))
        .should()
        .dependOnClassesThat(resideInAPackage("org.ejml.."))
        .because("solver.linear hides the matrix library")
        .check(CLASSES);
  }

  @Test
  void sharedAndSolverNeverPrint() {
    noClasses()
        .that(quietModules())
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(Throwable.class, "printStackTrace")
        .because("results and notices carry what there is to say")
        .check(CLASSES);
  }

  @Test
  void theSolverMakesNoSentences() {
    noClasses()
        .that()
        .resideInAPackage("hemline.solver..")
        .should()
        .callMethodWhere(
            DescribedPredicate.describe(
                "formats a text",
                (JavaAccess<?> call) ->
                    call.getTarget().getName().startsWith("format")
                        && call.getTargetOwner().isEquivalentTo(String.class)))
        .because("a notice is a kind with its values; its words stand in viewer.format")
        .check(CLASSES);
  }

  @Test
  void everyKindOfNoticeIsGiven() {
    JavaClass kinds = CLASSES.get(NoticeKind.class);
    for (NoticeKind kind : NoticeKind.values()) {
      assertThat(kinds.getField(kind.name()).getAccessesToSelf())
          .as("uses of %s", kind)
          .anyMatch(use -> !use.getOriginOwner().equals(kinds));
    }
  }

  @Test
  void sharedAndSolverKnowNoClock() {
    noClasses()
        .that(quietModules())
        .should()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .dependOnClassesThat(resideInAPackage("java.time.."))
        .because("the same input must give the same bits")
        .check(CLASSES);
  }

  @Test
  void sharedAndSolverHaveNoChance() {
    noClasses()
        .that(quietModules())
        .should()
        .dependOnClassesThat(
            DescribedPredicate.describe(
                "are sources of chance",
                c ->
                    c.isAssignableTo(Random.class)
                        || c.getName().startsWith("java.util.Splittable")))
        .orShould()
        .callMethod(Math.class, "random")
        .because("the same input must give the same bits")
        .check(CLASSES);
  }

  @Test
  void chanceElsewhereHasASeed() {
    noClasses()
        .should()
        .callConstructor(Random.class)
        .orShould()
        .callConstructor(java.util.SplittableRandom.class)
        .orShould()
        .callMethod(Math.class, "random")
        .because("a failure must be repeatable; pass a seed")
        .check(CLASSES);
  }

  @Test
  void noStaticStateChanges() {
    ArchRule rule =
        ArchRuleDefinition.classes()
            .that(quietModules())
            .should(
                new ArchCondition<JavaClass>("have no static field that is not final") {
                  @Override
                  public void check(JavaClass item, ConditionEvents events) {
                    for (JavaField field : item.getFields()) {
                      boolean free =
                          field.getModifiers().contains(JavaModifier.STATIC)
                              && !field.getModifiers().contains(JavaModifier.FINAL);
                      if (free && !field.getModifiers().contains(JavaModifier.SYNTHETIC)) {
                        events.add(
                            SimpleConditionEvent.violated(
                                item, field.getFullName() + " is static and can be assigned"));
                      }
                    }
                  }
                })
            .because("solves run side by side and share nothing");
    rule.check(CLASSES);
  }

  @Test
  void recordsGroupWhatBelongsTogether() {
    List<String> large = new ArrayList<>();
    for (JavaClass c : CLASSES) {
      long parts =
          c.isAssignableTo(Record.class)
              ? c.getFields().stream()
                  .filter(f -> !f.getModifiers().contains(JavaModifier.STATIC))
                  .count()
              : 0;
      if (parts > MOST_COMPONENTS) {
        large.add(c.getName() + " has " + parts);
      }
    }
    assertThat(CLASSES.get(LeakPoint.class).isAssignableTo(Record.class)).isTrue();
    assertThat(large)
        .as("records with so many components that arguments swap unseen; group what belongs")
        .isEmpty();
  }

  @Test
  void onlyTheStartEndsTheProgram() {
    noClasses()
        .that(
            DescribedPredicate.not(
                DescribedPredicate.describe(
                    "start the program", c -> c.getSimpleName().equals("Main"))))
        .should()
        .callMethodWhere(
            DescribedPredicate.describe(
                "ends the program",
                (JavaAccess<?> call) ->
                    call.getTarget().getName().equals("exit")
                        && call.getTargetOwner().isEquivalentTo(System.class)))
        .because("a library call must never end its caller")
        .check(CLASSES);
  }

  private static DescribedPredicate<JavaClass> quietModules() {
    return resideInAnyPackage("hemline.shared..", "hemline.solver..");
  }

  private static List<String> after(List<String> all, String one) {
    return all.subList(all.indexOf(one) + 1, all.size());
  }

  private static DynamicTest rule(String name, ArchRule rule) {
    return DynamicTest.dynamicTest(name, () -> rule.allowEmptyShould(true).check(CLASSES));
  }
}
