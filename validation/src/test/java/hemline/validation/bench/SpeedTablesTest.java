package hemline.validation.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.result.SolveStatus;
import hemline.solver.flow.Closure;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** Tables and pictures of speed and growth, from made-up rows. */
class SpeedTablesTest {
  private static final Yardstick TWENTY = new Yardstick(20e9);

  private static final SpeedRow ROW =
      new SpeedRow(
          new GridCount(
              new SolvedFlow("plain-flat-8", 600, Closure.SST),
              3,
              new GridWork(10_000, SolveStatus.CONVERGED, 100, 1_500_000),
              170),
          0.96,
          TWENTY);

  private static List<GrowthRow> growth() {
    List<GrowthRow> rows = new ArrayList<>();
    double all = 0;
    long cellPasses = 0;
    for (int cells : new int[] {2_000, 5_000, 20_000, 80_000, 160_000}) {
      boolean settled = cells < 100_000;
      int passes = (int) Math.rint(100 * Math.pow(cells / 5e3, 0.5));
      double seconds = (settled ? 1 : 7) * passes * cells * 1e-6;
      all += seconds;
      cellPasses += (long) cells * passes;
      rows.add(
          new GrowthRow(
              new SolvedFlow("plain-flat-8", 600, Closure.SST),
              new GridWork(
                  cells,
                  settled ? SolveStatus.CONVERGED : SolveStatus.UNSTEADY,
                  passes,
                  cellPasses),
              seconds,
              all,
              0.048,
              1e-3));
    }
    return rows;
  }

  @Test
  void idealPassesTakeTheTimeOfTheirBytes() {
    // 1.5 million cell passes of 128 bytes at 20 GB/s
    assertThat(TWENTY.ratio(1.5e6 * 128 / 20e9, 1.5e6, Closure.SST)).isCloseTo(1, within(1e-12));
    assertThat(Yardstick.bytesPerCell(Closure.LAMINAR)).isEqualTo(80);
  }

  @Test
  void aRowOfSpeedHoldsTheRatio() {
    assertThat(SpeedRow.text(List.of(ROW), "light").lines().toList().get(1))
        .isEqualTo("plain-flat-8,600,sst,10000,converged,150.0,0.96,640,100.0,20.0,light");
  }

  @Test
  void growthIsFittedToSettledGridsAfterTheFirst() {
    GrowthFit fit = GrowthFit.of(growth());
    assertThat(fit.pass().exponent()).isCloseTo(1, within(1e-9));
    assertThat(fit.passes().exponent()).isCloseTo(0.5, within(1e-2));
    assertThat(fit.cost().exponent())
        .isCloseTo(fit.pass().exponent() + fit.passes().exponent(), within(1e-12));
    assertThat(GrowthFit.text(List.of(fit)))
        .contains("plain-flat-8,600,sst,us_per_pass,1.000,0,5000,80000,3\n");
  }

  @Test
  void anUnsettledGridIsToldInTheTable() {
    List<String> lines = GrowthRow.text(growth(), TWENTY, "light").lines().toList();
    assertThat(lines).hasSize(6);
    assertThat(lines.get(5)).startsWith("plain-flat-8,600,sst,160000,unsteady,566,");
    assertThat(lines.get(0).split(",")).hasSameSizeAs(lines.get(5).split(","));
  }

  @Test
  void picturesAreWellFormedAndShowEachRow() throws Exception {
    Document speed = parse(SpeedChart.of(List.of(ROW, ROW)));
    assertThat(speed.getElementsByTagName("circle").getLength()).isEqualTo(2 * 3);
    Document growth = parse(GrowthChart.of(List.of(GrowthFit.of(growth()))));
    assertThat(growth.getElementsByTagName("circle").getLength()).isEqualTo(5 * 3);
  }

  private static Document parse(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }
}
