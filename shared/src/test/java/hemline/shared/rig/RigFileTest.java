package hemline.shared.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.InputException;
import hemline.shared.problem.NoticeKind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is read from a rig file, and what each broken one is told. */
final class RigFileTest {
  private static final String GOOD =
      """
      # a remark
      what,gap (mm),suction (Pa),flow (L/s),lip length (mm),temperature (degC),barometer (hPa)
      accuracy,0.03,5,,1,1,2
      accuracy %,,1,2,,,
      resolution,0.02,1,0.1,,,
      rig,,,,600,21,1004
      taped,,300,0.7,,,
      ,,,,,,
      lip,1,300,10.4,,,
      lip,2,0.6e3,27.2,,22.5,
      """;

  @TempDir Path dir;

  private static Rig read(String text) throws InputException {
    return RigFile.parse(text, "rig.csv", null, false);
  }

  /** A file of 5000 readings once took minutes to compare. */
  @Test
  void aRigHoldsAsManyReadingsAsCanBeCompared() throws Exception {
    String one = "lip,1,300,10.4,,,\n";
    assertThat(read(GOOD + one.repeat(297)).readings()).hasSize(300);
    assertThatThrownBy(() -> read(GOOD + one.repeat(298)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("line 308")
        .hasMessageContaining("a rig holds at most 300 readings; put repeats together");
  }

  @Test
  void everyCellFindsItsPlaceInSi() throws Exception {
    Rig rig = read(GOOD);
    assertThat(rig.lipLength()).isEqualTo(0.6);
    assertThat(rig.invented()).isFalse();
    assertThat(rig.notices()).isEmpty();
    assertThat(rig.of(Instrument.GAP)).isEqualTo(new Accuracy(0.03e-3, 0, 0.02e-3));
    assertThat(rig.of(Instrument.SUCTION)).isEqualTo(new Accuracy(5, 0.01, 1));
    assertThat(rig.of(Instrument.FLOW)).isEqualTo(new Accuracy(0, 0.02, 1e-4));
    assertThat(rig.of(Instrument.TEMPERATURE).absolute()).isEqualTo(1, within(1e-12));
    assertThat(rig.of(RigReading.Kind.TAPED)).hasSize(1);
    List<RigReading> lips = rig.of(RigReading.Kind.LIP);
    assertThat(lips.get(0).line()).isEqualTo(9);
    assertThat(lips.get(0).gap()).isEqualTo(1e-3);
    assertThat(lips.get(0).flow()).isEqualTo(10.4e-3);
    assertThat(lips.get(0).air().temperature()).isEqualTo(294.15);
    assertThat(lips.get(1).air().temperature()).isEqualTo(295.65);
    assertThat(lips.get(1).suction()).isEqualTo(600);
    assertThat(lips.get(1).air().barometer()).isEqualTo(100400);
    assertThat(lips.get(1).time()).isNaN();
  }

  @Test
  void spreadsheetsMayUseSemicolonsTabsOtherUnitsAndAMark() throws Exception {
    assertThat(read(GOOD.replace(',', ';')).readings()).isEqualTo(read(GOOD).readings());
    assertThat(read(GOOD.replace(',', '\t')).readings()).isEqualTo(read(GOOD).readings());
    String inches =
        GOOD.replace("lip length (mm)", "lip length (in)").replace("rig,,,,600", "rig,,,,10");
    assertThat(read(inches).lipLength()).isEqualTo(0.254);
    Path file = Files.writeString(dir.resolve("rig.csv"), "\uFEFF" + GOOD.replace("\n", "\r\n"));
    assertThat(RigFile.read(file).readings()).isEqualTo(read(GOOD).readings());
  }

  @Test
  void theTemplateIsARig() throws Exception {
    Rig rig = read(RigTemplate.TEXT);
    assertThat(rig.invented()).isTrue();
    assertThat(rig.of(RigReading.Kind.LIP)).hasSize(8);
    assertThat(rig.boxVolume()).isEqualTo(0.045);
  }

  @Test
  void theFlowMayComeFromAFanCurve() throws Exception {
    Files.writeString(
        dir.resolve("fan.csv"), "flow (L/s), static pressure (Pa)\n0, 900\n20, 700\n40, 0\n");
    String text =
        """
        what,gap (mm),suction (Pa),fan speed (rpm),lip length (mm),curve speed (rpm),fan curve
        accuracy,0.03,5,10,1,,
        accuracy %,,,,,,3
        rig,,,,600,20000,fan.csv
        lip,1,300,21000,,,
        """;
    Rig rig = RigFile.parse(text, "rig.csv", dir, false);
    assertThat(rig.fan().curve()).isNotNull();
    assertThat(rig.fan().accuracy()).isEqualTo(0.03);
    assertThat(rig.of(RigReading.Kind.LIP).get(0).fanSpeed()).isEqualTo(350);
    assertThat(rig.notices())
        .containsExactlyInAnyOrder(
            NoticeKind.RIG_TEMPERATURE_UNREAD.of(5, 293.15),
            NoticeKind.RIG_BAROMETER_UNREAD.of(3000, 101325),
            NoticeKind.RIG_BOX.of());
    assertThatThrownBy(() -> RigFile.parse(text.replace(",3\n", ",\n"), "rig.csv", dir, false))
        .hasMessageContaining("accuracy of the fan curve is missing");
    assertThatThrownBy(() -> RigFile.parse(text.replace("20000", ""), "rig.csv", dir, false))
        .hasMessageContaining("curve speed");
  }

  /** Each broken file gets one sentence that names the place. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          what,gap (mm)          | gap (mm)                  | line 2: the head line must begin with "what"
          gap (mm)               | gap                       | the unit is missing; write it in brackets, as gap (mm)
          gap (mm)               | gap (Pa)                  | is a pressure, but a length is needed
          gap (mm)               | slot (mm)                 | is no column of a rig file
          suction (Pa)           | gap (mm)                  | is there twice
          lip,1,300              | leak,1,300                | the first cell must be rig
          lip,1,300              | lip,,300                  | needs its gap
          lip,1,300              | lip,-1,300                | a gap must be above 0
          lip,1,300              | lip,1,-300                | without a minus sign
          lip,1,300,10.4         | lip,1,300,many            | "many" is no number for the column "flow"
          lip,1,300,10.4         | lip,1,300,0               | a flow out of the box is above 0
          lip,1,300,10.4         | "lip,1,300,10.4           | cannot be told apart
          lip,1,300,10.4,,,      | lip,1,300,10,4,,,1        | has a value in column 8
          taped,,300             | taped,1,300               | leave the cell empty
          600,21,1004            | ,21,1004                  | length of the lip must be given
          600,21,1004            | 600,21,10                 | the barometer must show 500 to 1200 hPa
          600,21,1004            | 600,900,1004              | check its unit
          accuracy,0.03          | accuracy,                 | the accuracy of the gap is missing
          accuracy,0.03          | accuracy,-0.03            | must not be negative
          accuracy %,,1,2        | accuracy %,,1,            | the accuracy of the flow is missing
          accuracy %,,1,2        | accuracy %,,1,200          | more than 50 % is no accuracy
          accuracy,0.03          | accuracy,0.6               | of the gap reach half of its smallest reading
          accuracy,0.03,5,,1     | accuracy,0.03,5,,400       | of the lip length reach half
          taped,,300,0.7         | decay,,300,0.7            | needs its time
          """)
  void aBrokenFileIsToldInASentence(String good, String bad, String told) {
    String broken = GOOD.replace(good, bad);
    assertThat(broken).isNotEqualTo(GOOD);
    assertThatThrownBy(() -> read(broken))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("rig.csv")
        .hasMessageContaining(told)
        .extracting(e -> ((InputException) e).problems().get(0).text().length())
        .satisfies(length -> assertThat((int) length).isBetween(25, 260));
  }

  @Test
  void aFileWithoutReadingsOrWithoutTextIsTold() throws Exception {
    assertThatThrownBy(() -> read("")).hasMessageContaining("--template");
    String none = GOOD.replaceAll("(?m)^(lip|taped),.*\n", "");
    assertThatThrownBy(() -> read(none)).hasMessageContaining("there is no reading of a lip");
    assertThat(RigFile.parse(none, "rig.csv", null, true).readings()).isEmpty();
    String untaped = GOOD.replaceAll("(?m)^taped,.*\n", "");
    assertThat(read(untaped).notices()).containsExactly(NoticeKind.RIG_BOX.of());
  }
}
