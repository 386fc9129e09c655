package hemline.solver.improve;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.file.LipFile;
import hemline.shared.problem.Problem;
import hemline.shared.profile.LipDrawing;
import hemline.shared.profile.LipResolver;
import hemline.shared.profile.SearchLimits;
import hemline.shared.profile.Starter;
import hemline.shared.units.QuantityRange;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lips that a search may try. */
final class SearchSpaceTest {
  private static final Double[] LENGTHS = {
    null, 8e-3, 14e-3, 0.8e-3, 1e-9, 0.0, -1e-3, 1.0, 1e9, Double.NaN, Double.POSITIVE_INFINITY
  };
  private static final String[] FAMILIES = {
    null, "flat", "teeth", "pockets", "nose", "hook", "", "x"
  };
  private static final Integer[] NUMBERS = {null, 1, 3, 12, 0, -4, Integer.MAX_VALUE};

  private static LipDrawing lip(String name) throws Exception {
    return LipFile.read(Path.of("..", "profiles", name + ".json"));
  }

  private static @Nullable SearchSpace space(
      SearchLimits said, LipDrawing lip, List<Problem> problems) throws Exception {
    return SearchSpace.of(said, lip, LipResolver.resolve(lip), problems);
  }

  private static <T> T any(T[] values, RandomGenerator chance) {
    return chance.nextBoolean() ? values[0] : values[chance.nextInt(values.length)];
  }

  /** Impossible, empty and huge limits: a sentence each, or lips to look among. */
  @Test
  void whateverIsSaidGivesLipsOrASentence() throws Exception {
    RandomGenerator chance = new Well19937c(5);
    LipDrawing flat = lip("plain-flat-8");
    int spaces = 0;
    for (int k = 0; k < 3000; k++) {
      List<Integer> corners =
          chance.nextInt(3) > 0
              ? null
              : List.of(chance.nextInt(6) - 1, chance.nextInt(5)).subList(0, chance.nextInt(3));
      SearchLimits said =
          new SearchLimits(
              new SearchLimits.Sizes(
                  any(LENGTHS, chance),
                  any(LENGTHS, chance),
                  any(LENGTHS, chance),
                  any(LENGTHS, chance)),
              new SearchLimits.Family(
                  any(FAMILIES, chance),
                  any(NUMBERS, chance),
                  chance.nextBoolean() ? Map.of() : Map.of("width", new QuantityRange(-1, 1e6))),
              new SearchLimits.Corners(corners, any(LENGTHS, chance), chance.nextBoolean()));
      List<Problem> problems = new ArrayList<>();
      SearchSpace space = space(said, flat, problems);
      assertThat(space == null).as("%s", said).isEqualTo(!problems.isEmpty());
      for (Problem p : problems) {
        assertThat(p.place()).isNotEmpty();
        assertThat(p.text()).as("%s", said).isNotEmpty().doesNotContain("\n", "NaN", "null");
      }
      if (space != null) {
        spaces++;
        assertThat(space.space().lengths()).isNotEmpty();
        double[] v = space.space().lengths().stream().mapToDouble(l -> l.at(0.5)).toArray();
        space.limits().judge(space.space().drawing(v));
      }
    }
    assertThat(spaces).isGreaterThan(30);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "plain-flat-8",
        "knife-fin",
        "vortex-trap-two-pockets",
        "round-nose",
        "chamfered-flat"
      })
  void lipsThatAreAlikeFromBothSidesStaySo(String name) throws Exception {
    LipDrawing lip = lip(name);
    List<Problem> problems = new ArrayList<>();
    SearchLimits said =
        new SearchLimits(
            new SearchLimits.Sizes(null, null, null, null),
            new SearchLimits.Family(null, null, Map.of()),
            new SearchLimits.Corners(null, 1e-3, true));
    SearchSpace space = space(said, lip, problems);
    if (name.equals("chamfered-flat")) {
      assertThat(space).isNull();
      assertThat(problems).extracting(Problem::place).containsExactly("symmetric");
      return;
    }
    assertThat(space).isNotNull();
    int free = new CornerSpace(lip, CornerSpace.free(lip), 1e-3).lengths().size();
    assertThat(space.space().lengths()).hasSize(free / 2);
    staysAlike(space.space());
  }

  /** A slot half as deep as the least one is wide, but a twentieth as wide, closes in print. */
  @Test
  void shortSlotsThatPrintShutAreRefused() {
    ShapeLimits limits = new ShapeLimits(8e-3, 10e-3, 0.8e-3, 0.8e-3);
    double foot = 0.8e-3;
    var open = new Starter.Hook(5e-3, 1.7e-3, foot, 0.5e-3, 8e-3, 10e-3).drawing();
    var shut = new Starter.Hook(3.36e-3, 1.72e-3, foot, 0.5e-3, 8e-3, 10e-3).drawing();
    assertThat(limits.judge(open).why()).isEmpty();
    assertThat(limits.judge(shut).why()).isEqualTo("a slot is narrower than 0.8 mm");
  }

  @Test
  void teethAndPocketsCanBeAlikeFromBothSides() throws Exception {
    for (String family : List.of("flat", "teeth", "pockets")) {
      SearchLimits said =
          new SearchLimits(
              new SearchLimits.Sizes(14e-3, null, null, null),
              new SearchLimits.Family(family, 2, Map.of()),
              new SearchLimits.Corners(null, null, true));
      SearchSpace space = space(said, lip("plain-flat-8"), new ArrayList<>());
      assertThat(space).as(family).isNotNull();
      assertThat(space.space().lengths()).extracting(NamedLength::name).doesNotContain("lean");
      staysAlike(space.space());
    }
  }

  private static void staysAlike(LipSpace space) {
    RandomGenerator chance = new Well19937c(2);
    for (int k = 0; k < 50; k++) {
      double[] v = space.lengths().stream().mapToDouble(l -> l.at(chance.nextDouble())).toArray();
      assertThat(MirroredSpace.fault(space.drawing(v))).isEmpty();
    }
  }
}
