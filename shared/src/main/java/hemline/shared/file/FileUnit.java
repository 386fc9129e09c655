package hemline.shared.file;

import java.math.BigDecimal;

/** Unit of the lengths in a file. Changes by powers of ten are exact in the decimals written. */
enum FileUnit {
  MM("mm", 3),
  M("m", 0);

  private final String key;
  private final int power;

  FileUnit(String key, int power) {
    this.key = key;
    this.power = power;
  }

  String key() {
    return key;
  }

  /** Metres from a number as written in the file. */
  double toMetres(BigDecimal written) {
    return written.scaleByPowerOfTen(-power).doubleValue();
  }

  /** Shortest decimal that reads back as the same metres; the value must be finite. */
  BigDecimal fromMetres(double metres) {
    return decimal(metres).scaleByPowerOfTen(power);
  }

  /** Shortest decimal that reads back as the same number; the value must be finite. */
  static BigDecimal decimal(double value) {
    return value == 0 ? BigDecimal.ZERO : new BigDecimal(Double.toString(value));
  }
}
