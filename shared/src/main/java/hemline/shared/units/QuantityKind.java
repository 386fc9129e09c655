package hemline.shared.units;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.HECTO;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.measure.Unit;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * The kinds of quantity that have a unit at the edges, with the spellings understood for each.
 *
 * <p>Factors: inch, foot, mile and pound are exact by definition (international yard and pound
 * agreement 1959); inH2O and mmH2O are the conventional columns of water, density 1000 kg/m³ under
 * 9.80665 m/s² (25.4 mm gives 249.08891 Pa).
 */
public enum QuantityKind {
  LENGTH("a length", "2mm", Units.METRE) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("mm", MILLI(Units.METRE));
      units.put("cm", CENTI(Units.METRE));
      units.put("m", Units.METRE);
      units.put("in", INCH);
      units.put("inch", INCH);
      units.put("um", MICRO(Units.METRE));
      units.put("µm", MICRO(Units.METRE));
    }
  },
  PRESSURE("a pressure", "600Pa", Units.PASCAL) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      Unit<?> millimetreOfWater = Units.PASCAL.multiply(980665).divide(100000);
      Unit<?> inchOfWater = millimetreOfWater.multiply(254).divide(10);
      Unit<?> bar = Units.PASCAL.multiply(100000);
      units.put("Pa", Units.PASCAL);
      units.put("hPa", HECTO(Units.PASCAL));
      units.put("kPa", KILO(Units.PASCAL));
      units.put("mbar", bar.divide(1000));
      units.put("bar", bar);
      units.put("inH2O", inchOfWater);
      units.put("inH₂O", inchOfWater);
      units.put("mmH2O", millimetreOfWater);
      units.put("mmH₂O", millimetreOfWater);
      units.put("psi", POUND_FORCE.divide(INCH.pow(2)));
    }
  },
  SPEED("a speed", "15m/s", Units.METRE_PER_SECOND) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("m/s", Units.METRE_PER_SECOND);
      units.put("km/h", KILO(Units.METRE).divide(Units.HOUR));
      units.put("mph", FOOT.multiply(5280).divide(Units.HOUR));
      units.put("mm/s", MILLI(Units.METRE).divide(Units.SECOND));
      units.put("m/min", Units.METRE.divide(Units.MINUTE));
    }
  },
  FLOW_PER_LENGTH("a flow per metre of seal", "40L/s/m", Units.METRE.pow(2).divide(Units.SECOND)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      Unit<?> litres = LITRE.divide(Units.SECOND).divide(Units.METRE);
      units.put("L/s/m", litres);
      units.put("l/s/m", litres);
      units.put("L/s per m", litres);
      units.put("m2/s", Units.METRE.pow(2).divide(Units.SECOND));
      units.put("m²/s", Units.METRE.pow(2).divide(Units.SECOND));
    }
  },
  VOLUME_FLOW("a volume flow", "250m3/h", Units.CUBIC_METRE.divide(Units.SECOND)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("L/s", LITRE.divide(Units.SECOND));
      units.put("l/s", LITRE.divide(Units.SECOND));
      units.put("L/min", LITRE.divide(Units.MINUTE));
      units.put("m3/h", Units.CUBIC_METRE.divide(Units.HOUR));
      units.put("m³/h", Units.CUBIC_METRE.divide(Units.HOUR));
      units.put("m3/s", Units.CUBIC_METRE.divide(Units.SECOND));
      units.put("m³/s", Units.CUBIC_METRE.divide(Units.SECOND));
      units.put("cfm", FOOT.pow(3).divide(Units.MINUTE));
    }
  },
  FORCE("a force", "120N", Units.NEWTON) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("N", Units.NEWTON);
      units.put("kN", KILO(Units.NEWTON));
      units.put("lbf", POUND_FORCE);
    }
  },
  ANGLE("an angle", "30deg", Units.RADIAN) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      Unit<?> degree = Units.RADIAN.multiply(Math.PI / 180);
      units.put("deg", degree);
      units.put("°", degree);
      units.put("rad", Units.RADIAN);
    }
  },
  TEMPERATURE("a temperature", "15degC", Units.KELVIN) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("degC", Units.CELSIUS);
      units.put("°C", Units.CELSIUS);
      units.put("C", Units.CELSIUS);
      units.put("K", Units.KELVIN);
    }
  },
  AREA("an area", "20mm2", Units.SQUARE_METRE) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("mm2", MILLI(Units.METRE).pow(2));
      units.put("mm²", MILLI(Units.METRE).pow(2));
      units.put("cm2", CENTI(Units.METRE).pow(2));
      units.put("cm²", CENTI(Units.METRE).pow(2));
      units.put("m2", Units.SQUARE_METRE);
      units.put("m²", Units.SQUARE_METRE);
      units.put("in2", INCH.pow(2));
      units.put("in²", INCH.pow(2));
    }
  },
  MASS("a mass", "1.5kg", Units.KILOGRAM) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("kg", Units.KILOGRAM);
      units.put("g", Units.GRAM);
      units.put("lb", Units.KILOGRAM.multiply(45359237).divide(100000000));
    }
  },
  DENSITY("a density", "1.2kg/m3", Units.KILOGRAM.divide(Units.CUBIC_METRE)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("kg/m3", Units.KILOGRAM.divide(Units.CUBIC_METRE));
      units.put("kg/m³", Units.KILOGRAM.divide(Units.CUBIC_METRE));
    }
  },
  STIFFNESS("a stiffness", "40N/mm", Units.NEWTON.divide(Units.METRE)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("N/mm", Units.NEWTON.divide(MILLI(Units.METRE)));
      units.put("N/m", Units.NEWTON.divide(Units.METRE));
      units.put("kN/m", KILO(Units.NEWTON).divide(Units.METRE));
      units.put("lbf/in", POUND_FORCE.divide(INCH));
    }
  },
  ANGULAR_STIFFNESS(
      "an angular stiffness",
      "900Nm/rad",
      Units.NEWTON.multiply(Units.METRE).divide(Units.RADIAN)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      Unit<?> newtonMetre = Units.NEWTON.multiply(Units.METRE);
      units.put("Nm/rad", newtonMetre.divide(Units.RADIAN));
      units.put("N m/rad", newtonMetre.divide(Units.RADIAN));
      units.put("Nm/deg", newtonMetre.divide(Units.RADIAN.multiply(Math.PI / 180)));
      units.put("N m/deg", newtonMetre.divide(Units.RADIAN.multiply(Math.PI / 180)));
    }
  },
  POWER("a power", "120W", Units.WATT) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("W", Units.WATT);
      units.put("kW", KILO(Units.WATT));
    }
  },
  ENERGY("an energy", "40Wh", Units.JOULE) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("Wh", Units.JOULE.multiply(3600));
      units.put("kWh", Units.JOULE.multiply(3600000));
      units.put("J", Units.JOULE);
      units.put("kJ", KILO(Units.JOULE));
    }
  },
  TURNING_SPEED("a speed of rotation", "24000rpm", Units.HERTZ) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("rpm", Units.HERTZ.divide(60));
      units.put("1/min", Units.HERTZ.divide(60));
      units.put("rev/s", Units.HERTZ);
      units.put("1/s", Units.HERTZ);
    }
  },
  VOLUME("a volume", "40L", Units.CUBIC_METRE) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("L", LITRE);
      units.put("l", LITRE);
      units.put("cm3", CENTI(Units.METRE).pow(3));
      units.put("cm³", CENTI(Units.METRE).pow(3));
      units.put("m3", Units.CUBIC_METRE);
      units.put("m³", Units.CUBIC_METRE);
    }
  },
  TIME("a time", "0.5s", Units.SECOND) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("s", Units.SECOND);
      units.put("ms", MILLI(Units.SECOND));
      units.put("min", Units.MINUTE);
    }
  },
  VOLTAGE("a voltage", "14.8V", Units.VOLT) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("V", Units.VOLT);
    }
  },
  TORQUE("a torque", "2Nm", Units.NEWTON.multiply(Units.METRE)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      Unit<?> newtonMetre = Units.NEWTON.multiply(Units.METRE);
      units.put("Nm", newtonMetre);
      units.put("N m", newtonMetre);
      units.put("kNm", KILO(Units.NEWTON).multiply(Units.METRE));
      units.put("Ncm", Units.NEWTON.multiply(CENTI(Units.METRE)));
      units.put("lbf in", POUND_FORCE.multiply(INCH));
    }
  },
  NUMBER("a number", "1.5", AbstractUnit.ONE) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("", AbstractUnit.ONE);
    }
  },
  INERTIA("a moment of inertia", "20gcm2", Units.KILOGRAM.multiply(Units.SQUARE_METRE)) {
    @Override
    void fill(Map<String, Unit<?>> units) {
      units.put("gcm2", Units.GRAM.multiply(CENTI(Units.METRE).pow(2)));
      units.put("g cm2", Units.GRAM.multiply(CENTI(Units.METRE).pow(2)));
      units.put("kgm2", Units.KILOGRAM.multiply(Units.SQUARE_METRE));
      units.put("kg m2", Units.KILOGRAM.multiply(Units.SQUARE_METRE));
    }
  };

  private static final Unit<?> INCH = Units.METRE.multiply(254).divide(10000);
  private static final Unit<?> FOOT = Units.METRE.multiply(3048).divide(10000);
  private static final Unit<?> LITRE = Units.CUBIC_METRE.divide(1000);

  /** 0.45359237 kg under 9.80665 m/s². */
  private static final Unit<?> POUND_FORCE =
      Units.NEWTON.multiply(45359237).divide(100000000).multiply(980665).divide(100000);

  private final String noun;
  private final String example;
  private final Unit<?> si;

  QuantityKind(String noun, String example, Unit<?> si) {
    this.noun = noun;
    this.example = example;
    this.si = si;
  }

  abstract void fill(Map<String, Unit<?>> units);

  /** What it is, with its article: "a length". */
  public String noun() {
    return noun;
  }

  /** A well-written value, such as {@code 2mm}. */
  public String example() {
    return example;
  }

  Unit<?> si() {
    return si;
  }

  /** Spelling to unit, the preferred ones first. */
  Map<String, Unit<?>> units() {
    return Tables.OF_KIND.getOrDefault(this, Map.of());
  }

  /** The tables of all kinds, made on first use. */
  private static final class Tables {
    private static final Map<QuantityKind, Map<String, Unit<?>>> OF_KIND =
        new EnumMap<>(QuantityKind.class);

    static {
      for (QuantityKind kind : values()) {
        Map<String, Unit<?>> units = new LinkedHashMap<>();
        kind.fill(units);
        OF_KIND.put(kind, Collections.unmodifiableMap(units));
      }
    }
  }
}
