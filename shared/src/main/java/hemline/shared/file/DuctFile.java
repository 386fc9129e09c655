package hemline.shared.file;

import hemline.shared.geometry.Outline;
import hemline.shared.problem.InputException;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Cavity;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Stations;
import hemline.shared.section.DuctSection.Wall;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Duct files, schema {@code hemline.duct/1}.
 *
 * <p>{@code schema}, {@code channel} ({@code from}, {@code to}, {@code height}) and either {@code
 * drive} ({@code leakFlow} in m²/s or {@code pressureDrop} in Pa) or, for a closed cavity, {@code
 * walls} ({@code left} and {@code right}, each with a {@code speed} upwards in m/s) must be there.
 * The rest has defaults:
 *
 * <ul>
 *   <li>{@code name}: the file; {@code notes}: none; {@code lengthUnit}: mm (or m), for the
 *       channel, outlines, stations and the reference gap
 *   <li>{@code obstacles}: none; each has an {@code outline}
 *   <li>{@code fluid} ({@code density} in kg/m³, {@code kinematicViscosity} in m²/s): air at 15 °C
 *   <li>{@code inlet}: {@code developed} (or {@code uniform}); only with a leak flow
 *   <li>{@code ground}, {@code ceiling} ({@code speed}, {@code spanwiseSpeed} in m/s, {@code
 *       frictionless}): still
 *   <li>{@code stations} ({@code upstream}, {@code downstream}): the two ends
 *   <li>{@code referenceGap}: the least clearance between an obstacle and a wall, or the height
 *   <li>{@code closure}: {@code auto} (or {@code laminar}, {@code sst}, {@code sa})
 * </ul>
 */
public final class DuctFile {
  static final String KIND = "duct";
  static final int VERSION = 1;

  private DuctFile() {}

  /**
   * Reads a duct section.
   *
   * @throws InputException with every problem found in the file or the section
   */
  public static DuctSection read(Path file) throws InputException {
    return parse(TextFiles.read(file), file.toString());
  }

  /** Reads the text of a duct file; the file name serves the messages and as name of the duct. */
  public static DuctSection parse(String text, String file) throws InputException {
    return new DuctReader(JsonTree.read(text, file), file).read();
  }

  /**
   * Writes a duct section in one step, lengths in m.
   *
   * @param notes free text; may be empty
   * @throws InputException if the file cannot be written
   */
  public static void write(Path file, DuctSection duct, String notes) throws InputException {
    TextFiles.write(file, text(duct, notes));
  }

  /** Text of a duct file. */
  public static String text(DuctSection duct, String notes) {
    FileUnit unit = FileUnit.M;
    Map<String, Object> top = new LinkedHashMap<>();
    top.put("schema", "hemline." + KIND + "/" + VERSION);
    top.put("name", duct.name());
    if (!notes.isEmpty()) {
      top.put("notes", notes);
    }
    top.put("lengthUnit", unit.key());
    top.put(
        "channel",
        map(
            "from", unit.fromMetres(duct.channel().from()),
            "to", unit.fromMetres(duct.channel().to()),
            "height", unit.fromMetres(duct.channel().height())));
    if (!duct.obstacles().isEmpty()) {
      List<Object> obstacles = new ArrayList<>();
      for (Outline o : duct.obstacles()) {
        obstacles.add(map("outline", OutlineKeys.list(o.vertices(), unit)));
      }
      top.put("obstacles", obstacles);
    }
    top.put(
        "fluid",
        map(
            "density", FileUnit.decimal(duct.fluid().density()),
            "kinematicViscosity", FileUnit.decimal(duct.fluid().kinematicViscosity())));
    Drive drive = duct.drive();
    if (drive instanceof Drive.LeakFlow flow) {
      top.put("drive", map("leakFlow", FileUnit.decimal(flow.value())));
    } else if (drive instanceof Drive.PressureDrop drop) {
      top.put("drive", map("pressureDrop", FileUnit.decimal(drop.value())));
    }
    Cavity cavity = duct.walls().cavity();
    if (cavity != null) {
      top.put(
          "walls",
          map(
              "left", map("speed", FileUnit.decimal(cavity.leftSpeed())),
              "right", map("speed", FileUnit.decimal(cavity.rightSpeed()))));
    }
    Inlet inlet = duct.inflow().inlet();
    if (inlet != null) {
      top.put("inlet", inlet.name().toLowerCase(Locale.ROOT));
    }
    top.put("ground", wall(duct.walls().lower()));
    top.put("ceiling", wall(duct.walls().upper()));
    Stations stations = duct.measures().stations();
    if (stations != null) {
      top.put(
          "stations",
          map(
              "upstream", unit.fromMetres(stations.upstream()),
              "downstream", unit.fromMetres(stations.downstream())));
    }
    top.put("referenceGap", unit.fromMetres(duct.gap()));
    top.put("closure", duct.closure());
    return JsonLayout.text(top);
  }

  private static Map<String, Object> wall(Wall wall) {
    return map(
        "speed", FileUnit.decimal(wall.speed()),
        "spanwiseSpeed", FileUnit.decimal(wall.spanwiseSpeed()),
        "frictionless", wall.frictionless());
  }

  private static Map<String, Object> map(Object... keysAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      map.put((String) keysAndValues[i], keysAndValues[i + 1]);
    }
    return map;
  }
}
