package hemline.shared.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.problem.InputException;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantitiesTest {
  private static final String PLACE = "--gap";

  /** Factors: exact by definition of the units; columns of water conventional. */
  @ParameterizedTest
  @CsvSource({
    "LENGTH, 2mm, 0.002",
    "LENGTH, 2 mm, 0.002",
    "LENGTH, +.5 cm, 0.005",
    "LENGTH, 1.25e1mm, 0.0125",
    "LENGTH, 3.m, 3",
    "LENGTH, 1in, 0.0254",
    "LENGTH, 2inch, 0.0508",
    "LENGTH, 250um, 0.00025",
    "LENGTH, 0, 0",
    "PRESSURE, 600Pa, 600",
    "PRESSURE, 0.6kPa, 600",
    "PRESSURE, 6hPa, 600",
    "PRESSURE, 6mbar, 600",
    "PRESSURE, 1.01325bar, 101325",
    "PRESSURE, 1inH2O, 249.08891",
    "PRESSURE, 1 inH₂O, 249.08891",
    "PRESSURE, 10mmH2O, 98.0665",
    "PRESSURE, 1psi, 6894.757293168361",
    "PRESSURE, -20Pa, -20",
    "SPEED, 15m/s, 15",
    "SPEED, 54km/h, 15",
    "SPEED, 1mph, 0.44704",
    "FLOW_PER_LENGTH, 43.1L/s/m, 0.0431",
    "FLOW_PER_LENGTH, 43.1 L/s per m, 0.0431",
    "FLOW_PER_LENGTH, 0.0431 m2/s, 0.0431",
    "FLOW_PER_LENGTH, 0.0431m²/s, 0.0431",
    "VOLUME_FLOW, 36m3/h, 0.01",
    "VOLUME_FLOW, 10L/s, 0.01",
    "VOLUME_FLOW, 0.01 m³/s, 0.01",
    "VOLUME_FLOW, 1cfm, 0.0004719474432",
    "FORCE, 120N, 120",
    "FORCE, 1lbf, 4.4482216152605",
    "ANGLE, 180deg, 3.141592653589793",
    "ANGLE, 90°, 1.5707963267948966",
    "TEMPERATURE, 15degC, 288.15",
    "TEMPERATURE, 15 °C, 288.15",
    "TEMPERATURE, 300K, 300",
    "LENGTH, 3cm, 0.03",
    "LENGTH, 250µm, 0.00025",
    "PRESSURE, 2 mmH₂O, 19.6133",
    "SPEED, 30mm/s, 0.03",
    "SPEED, 90 m/min, 1.5",
    "FLOW_PER_LENGTH, 43.1l/s/m, 0.0431",
    "VOLUME_FLOW, 10l/s, 0.01",
    "VOLUME_FLOW, 600L/min, 0.01",
    "VOLUME_FLOW, 36m³/h, 0.01",
    "VOLUME_FLOW, 0.01m3/s, 0.01",
    "FORCE, 1.2kN, 1200",
    "ANGLE, 0.5rad, 0.5",
    "TEMPERATURE, 20C, 293.15",
    "AREA, 20mm2, 2e-5",
    "AREA, 20 mm², 2e-5",
    "AREA, 20cm2, 2e-3",
    "AREA, 20cm², 2e-3",
    "AREA, 0.2m2, 0.2",
    "AREA, 0.2m², 0.2",
    "MASS, 1.5kg, 1.5",
    "MASS, 250g, 0.25",
    "MASS, 10lb, 4.5359237",
    "DENSITY, 1.2kg/m3, 1.2",
    "DENSITY, 1.2 kg/m³, 1.2",
    "STIFFNESS, 40N/mm, 40000",
    "STIFFNESS, 40N/m, 40",
    "STIFFNESS, 4kN/m, 4000",
    // 4.4482216152605 N over 0.0254 m
    "STIFFNESS, 1lbf/in, 175.1268352464764",
    "ANGULAR_STIFFNESS, 900Nm/rad, 900",
    "ANGULAR_STIFFNESS, 900 N m/rad, 900",
    // times 180/π
    "ANGULAR_STIFFNESS, 1Nm/deg, 57.29577951308232",
    "ANGULAR_STIFFNESS, 1 N m/deg, 57.29577951308232",
    "POWER, 120W, 120",
    "POWER, 0.12kW, 120",
    "ENERGY, 40Wh, 144000",
    "ENERGY, 0.04kWh, 144000",
    "ENERGY, 500J, 500",
    "ENERGY, 0.5kJ, 500",
    "TURNING_SPEED, 24000rpm, 400",
    "TURNING_SPEED, 24000 1/min, 400",
    "TURNING_SPEED, 400rev/s, 400",
    "TURNING_SPEED, 400 1/s, 400",
  })
  void reads(QuantityKind kind, String text, double si) throws InputException {
    assertThat(Quantities.read(kind, PLACE, text)).isCloseTo(si, within(1e-15 * Math.abs(si)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "LENGTH | 2 | has no unit; write a length as 2mm",
        "LENGTH | '' | is missing; write it as 2mm",
        "LENGTH | mm | does not begin with a number",
        "LENGTH | 1,5mm | with a point, as in 1.5mm",
        "LENGTH | 2 MM | the unit is written mm",
        "LENGTH | 2 furlong | no unit known here",
        "LENGTH | 600Pa | is a pressure, but a length is needed, such as 2mm",
        "LENGTH | 2mm3 | no unit known here",
        "LENGTH | --2mm | does not begin with a number",
        "LENGTH | NaN mm | does not begin with a number",
        "LENGTH | 1e999mm | is too large",
        "PRESSURE | 600 pa | the unit is written Pa",
        "PRESSURE | 15m/s | is a speed, but a pressure is needed, such as 600Pa",
        "SPEED | 10 | has no unit; write a speed as 15m/s",
        "TEMPERATURE | 0 | has no unit",
        "TEMPERATURE | -300degC | absolute zero",
        "TEMPERATURE | 0K | absolute zero; try 15degC",
        "SPEED | 10 | 10\" has no unit; write a speed as 15m/s (units: m/s, km/h, mph, mm/s,"
            + " m/min)",
        "SPEED | 10 furlong | \"furlong\" in \"10 furlong\" is no unit known here; write a speed as"
            + " 15m/s (units: m/s, km/h, mph, mm/s, m/min)",
        "LENGTH | 0.5mm,3mm | is more than a length; write one, as 2mm, or a range where one may"
            + " stand, as 1mm..6mm",
        "LENGTH | 1mm 3mm | is more than a length",
        "ENERGY | 12W | is a power, but an energy is needed, such as 40Wh",
      })
  void explains(QuantityKind kind, String text, String hint) {
    InputException e =
        catchThrowableOfType(InputException.class, () -> Quantities.read(kind, PLACE, text));
    assertThat(e).as(text).isNotNull();
    assertThat(e.problems()).hasSize(1);
    assertThat(e.problems().get(0).place()).isEqualTo(PLACE);
    assertThat(e.problems().get(0).text()).contains(hint);
  }

  @Test
  void theMinusSignOfTypesettingCountsAsMinus() throws Exception {
    assertThat(Quantities.read(QuantityKind.SPEED, "ground", "\u22125 m/s")).isEqualTo(-5);
    assertThat(Quantities.readRange(QuantityKind.SPEED, "ground", "\u22125..5m/s").low())
        .isEqualTo(-5);
  }

  @Test
  void longTextsAreCutInTheMessage() {
    String forty = "x".repeat(40);
    assertThat(problem(forty)).startsWith("\"" + forty + "\" does not begin with a number");
    assertThat(problem(forty + "y")).startsWith("\"" + forty + "…\" does not begin");
    assertThat(problem("1" + " ".repeat(98) + "m")).isEqualTo("none");
    assertThat(problem("1" + " ".repeat(99) + "m")).contains("too long for a quantity");
    assertThat(problem("2\u0007mm")).contains("\"2?mm\"");
  }

  private static String problem(String text) {
    try {
      Quantities.read(QuantityKind.LENGTH, PLACE, text);
      return "none";
    } catch (InputException e) {
      return e.problems().get(0).text();
    }
  }

  @Test
  void everyKindHasItsReader() throws InputException {
    assertThat(Quantities.read(QuantityKind.PRESSURE, PLACE, "2kPa")).isEqualTo(2000);
    assertThat(Quantities.read(QuantityKind.FLOW_PER_LENGTH, PLACE, "40L/s/m")).isEqualTo(0.04);
    assertThat(Quantities.read(QuantityKind.VOLUME_FLOW, PLACE, "40L/s")).isEqualTo(0.04);
    assertThat(Quantities.read(QuantityKind.FORCE, PLACE, "2kN")).isEqualTo(2000);
    assertThat(Quantities.read(QuantityKind.ANGLE, PLACE, "2rad")).isEqualTo(2);
    assertThat(Quantities.read(QuantityKind.TEMPERATURE, PLACE, "2K")).isEqualTo(2);
  }

  @Test
  void badRangesAreExplained() {
    for (String text : new String[] {"6mm..1mm", "1mm"}) {
      InputException e =
          catchThrowableOfType(
              InputException.class, () -> Quantities.readRange(QuantityKind.LENGTH, PLACE, text));
      assertThat(e.problems().get(0).text())
          .startsWith("\"" + text + "\" ")
          .endsWith(text.contains("..") ? "in 1mm..6mm" : "write it as 1mm..6mm");
    }
    assertThatThrownBy(() -> new QuantityRange(2, 2)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void readsRanges() throws InputException {
    QuantityRange range = new QuantityRange(0.001, 0.006);
    for (String text : new String[] {"1mm..6mm", "1..6mm", "1 mm .. 6 mm", "0.1cm..6mm"}) {
      assertThat(Quantities.readRange(QuantityKind.LENGTH, PLACE, text)).isEqualTo(range);
    }
    assertThat(Quantities.readRange(QuantityKind.PRESSURE, PLACE, "0..6kPa"))
        .isEqualTo(new QuantityRange(0, 6000));
    assertThat(Quantities.readRange(QuantityKind.SPEED, PLACE, "-1..1mm/s"))
        .isEqualTo(new QuantityRange(-0.001, 0.001));
    assertThat(Quantities.isRange("1..6mm")).isTrue();
    assertThat(Quantities.isRange("1.5mm")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"6mm..1mm", "1mm..1mm", "1mm", "..6mm", "1mm..", "1..6", "1mm..6Pa", "1mm..2mm..3mm"})
  void refusesBadRanges(String text) {
    InputException e =
        catchThrowableOfType(
            InputException.class, () -> Quantities.readRange(QuantityKind.LENGTH, PLACE, text));
    assertThat(e).as(text).isNotNull();
    assertThat(e.problems()).hasSize(1);
  }

  @Test
  void doesNotDependOnTheLocale() throws InputException {
    Locale before = Locale.getDefault();
    try {
      for (Locale locale :
          new Locale[] {Locale.GERMANY, Locale.forLanguageTag("ar-EG-u-nu-arab")}) {
        Locale.setDefault(locale);
        assertThat(Quantities.read(QuantityKind.LENGTH, PLACE, "1.5mm")).isEqualTo(0.0015);
        assertThat(NumberText.millimetres(0.0015)).isEqualTo("1.5 mm");
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void millimetresAreTheNearestDouble() throws InputException {
    for (int seed = 0; seed < 500; seed++) {
      BigDecimal mm = BigDecimal.valueOf(new SplittableRandom(seed).nextInt(1_000_000), 3);
      assertThat(Quantities.read(QuantityKind.LENGTH, PLACE, mm + "mm"))
          .as("seed %d", seed)
          .isEqualTo(mm.movePointLeft(3).doubleValue());
    }
  }

  @Test
  @Tag("many")
  void damagedTextsGiveAValueOrAProblem() {
    String letters = "0123456789.+-eE,mPaks/²³°h²in H2O.\u0000\ud800";
    for (int seed = 0; seed < 20000; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      StringBuilder text = new StringBuilder();
      for (int i = random.nextInt(12); i >= 0; i--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      QuantityKind kind = QuantityKind.values()[random.nextInt(QuantityKind.values().length)];
      try {
        assertThat(Quantities.read(kind, PLACE, text.toString())).as("seed %d", seed).isFinite();
      } catch (InputException e) {
        assertThat(e.problems()).as("seed %d", seed).hasSize(1);
      } catch (RuntimeException e) {
        throw new AssertionError("seed " + seed + ": " + text, e);
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "LENGTH; mm; 3; 0.003",
        "LENGTH; mm; 2,5; 0.0025",
        "LENGTH; mm; 2,5 mm; 0.0025",
        "LENGTH; in; .1; 0.00254",
        "LENGTH; mm; 0.1in; 0.00254",
        "PRESSURE; Pa; 0,6 kPa; 600",
        "SPEED; m/s; \u22121.5; -1.5",
        "TEMPERATURE; degC; 0; 273.15",
        "NUMBER; ''; 1,5; 1.5"
      })
  void aFieldGivesABareNumberItsUnit(QuantityKind kind, String unit, String text, double si)
      throws InputException {
    assertThat(Quantities.typed(kind, unit, "field", text)).isCloseTo(si, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "wide", "1,234.5", "2 Pa", "1..2"})
  void whatIsNoLengthIsNotTaken(String text) {
    assertThatThrownBy(() -> Quantities.typed(QuantityKind.LENGTH, "mm", "field", text))
        .isInstanceOf(InputException.class);
  }
}
