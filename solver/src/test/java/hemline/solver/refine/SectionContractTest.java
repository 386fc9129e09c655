package hemline.solver.refine;

import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.result.Estimate;
import hemline.shared.result.Figure;
import hemline.shared.result.GridRun;
import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Wall;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.Closure;
import hemline.solver.flow.Lips;
import hemline.solver.flow.ProgressListener;
import hemline.solver.grid.MeshLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

/** What every kind of section owes its reader, on laminar flows of one coarse grid. */
class SectionContractTest {
  private static final CancelToken NEVER = new CancelToken();

  /** Every member passes these; the section is solved once for all of them. */
  @TestInstance(Lifecycle.PER_CLASS)
  abstract static class Contract {
    private @Nullable GridFamily solved;

    /** Solves with the drive times a factor. */
    abstract GridFamily solve(
        double factor, int grids, CancelToken cancel, ProgressListener progress);

    abstract Section question();

    private GridFamily once() {
      GridFamily kept = solved;
      if (kept == null) {
        kept = solve(1, 1, NEVER, ProgressListener.NONE);
        solved = kept;
      }
      return kept;
    }

    private static double figure(GridFamily family, Figure figure) {
      return Objects.requireNonNull(family.runs().get(0).figures().scalars().get(figure));
    }

    @Test
    void convergesOnTheGridsAskedFor() {
      assertThat(once().closure()).isEqualTo(Closure.LAMINAR);
      assertThat(once().runs()).hasSize(1);
      GridRun run = once().runs().get(0);
      assertThat(run.status()).isEqualTo(SolveStatus.CONVERGED);
      assertThat(run.cells()).isBetween(100, 4000);
      assertThat(run.massResidual()).isBetween(0.0, 1e-6);
      assertThat(once().cancelled()).isFalse();
    }

    @Test
    void everyFigureIsANumberAndFitsTheOthers() {
      GridFamily f = once();
      assertThat(f.runs().get(0).figures().scalars().values()).allMatch(Double::isFinite);
      assertThat(figure(f, Figure.LIP_FORCE_X))
          .isEqualTo(figure(f, Figure.LIP_PRESSURE_FORCE_X) + figure(f, Figure.LIP_SHEAR_FORCE_X));
      double jet = Math.sqrt(2 * figure(f, Figure.PRESSURE_DROP) / question().fluid().density());
      assertThat(figure(f, Figure.LEAK_FLOW) / jet / figure(f, Figure.EFFECTIVE_GAP))
          .isBetween(1 - 1e-12, 1 + 1e-12);
      assertThat(figure(f, Figure.EFFECTIVE_GAP) / figure(f, Figure.DISCHARGE_COEFFICIENT))
          .isBetween((1 - 1e-12) * question().gap(), (1 + 1e-12) * question().gap());
      double shares =
          once().runs().get(0).figures().stageShares().stream()
              .mapToDouble(Double::doubleValue)
              .sum();
      assertThat(shares).isBetween(1 - 1e-12, 1 + 1e-12);
      // the leak pushes the lip along
      assertThat(figure(f, Figure.LIP_FORCE_X)).isPositive();
      assertThat(figure(f, Figure.GROUND_DRAG)).isPositive();
    }

    @Test
    void theLeakFollowsItsDrive() {
      GridFamily back = solve(-1, 1, NEVER, ProgressListener.NONE);
      GridFamily there = once();
      assertThat(figure(there, Figure.LEAK_FLOW)).isPositive();
      assertThat(figure(back, Figure.LEAK_FLOW)).isNegative();
      assertThat(figure(back, Figure.DISCHARGE_COEFFICIENT))
          .isBetween(0.5 * figure(there, Figure.DISCHARGE_COEFFICIENT), 1.5);
      assertThat(figure(back, Figure.LIP_FORCE_X)).isNegative();
    }

    @Test
    void theSameQuestionHasTheSameBitsAndTellsItsProgress() {
      List<Double> told = new ArrayList<>();
      GridFamily again = solve(1, 1, NEVER, (share, what) -> told.add(share));
      assertThat(again.runs()).isEqualTo(once().runs());
      assertThat(told).isNotEmpty().isSorted().allMatch(share -> share >= 0 && share <= 1);
    }

    @Test
    void theAnswerNamesItsQuestionAndHasBands() {
      SectionResult result =
          Estimates.result(question(), MeshLevel.COARSE, once(), List.of(), List.of(), false);
      assertThat(result.name()).isEqualTo(question().name());
      assertThat(result.conditions().gap()).isEqualTo(question().gap());
      assertThat(result.status()).isEqualTo(SolveStatus.CONVERGED);
      assertThat(result.closure()).isEqualTo("laminar");
      // one grid: a fifth of the value
      Estimate leak = Objects.requireNonNull(result.figures().get(Figure.DISCHARGE_COEFFICIENT));
      assertThat(leak.high() - leak.value()).isBetween(0.199 * leak.value(), 0.201 * leak.value());
    }

    @Test
    void aStopIsAStatusAndNoException() {
      CancelToken now = new CancelToken();
      now.cancel();
      GridFamily stopped = solve(1, 3, now, ProgressListener.NONE);
      assertThat(stopped.grids().size()).isLessThanOrEqualTo(1);
      assertThat(stopped.finestUsable()).isNull();
      SectionResult result =
          Estimates.result(question(), MeshLevel.COARSE, stopped, List.of(), List.of(), true);
      assertThat(result.status()).isEqualTo(SolveStatus.CANCELLED);
      assertThat(result.figures().scalars()).isEmpty();
      assertThat(result.notices()).isNotEmpty();
    }
  }

  @Nested
  class Lip extends Contract {
    private SealSection section(double factor) {
      return Lips.section(Lips.flat(8), 2, factor * 5, 0, 0);
    }

    @Override
    GridFamily solve(double factor, int grids, CancelToken cancel, ProgressListener progress) {
      return new FamilySolver()
          .solve(
              SolveRequest.cold(section(factor), MeshLevel.COARSE, grids, Closure.AUTO),
              cancel,
              progress);
    }

    @Override
    Section question() {
      return section(1);
    }
  }

  @Nested
  class Duct extends Contract {
    private DuctSection section(double factor) {
      Outline tooth =
          new Outline(
              List.of(new Vertex(0, 1), new Vertex(1, 1), new Vertex(1, 3), new Vertex(0, 3)));
      return new DuctSection(
          "duct",
          new DuctSection.Channel(-8, 16, 3),
          List.of(tooth),
          new FluidState(2, 0.05),
          new DuctSection.Inflow(new Drive.PressureDrop(factor * 3), Inlet.DEVELOPED),
          new DuctSection.Walls(new Wall(0, 0, false), new Wall(0, 0, false), null),
          new DuctSection.Measures(null, 1),
          "auto");
    }

    @Override
    GridFamily solve(double factor, int grids, CancelToken cancel, ProgressListener progress) {
      return new FamilySolver()
          .solve(
              SolveRequest.cold(section(factor), MeshLevel.COARSE, grids, Closure.AUTO),
              cancel,
              progress);
    }

    @Override
    Section question() {
      return section(1);
    }
  }
}
