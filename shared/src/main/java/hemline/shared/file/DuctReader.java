package hemline.shared.file;

import hemline.shared.fluid.Air;
import hemline.shared.fluid.FluidState;
import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.OutlineChecks;
import hemline.shared.geometry.Polygons;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Problem;
import hemline.shared.section.Drive;
import hemline.shared.section.DuctSection;
import hemline.shared.section.DuctSection.Cavity;
import hemline.shared.section.DuctSection.Inlet;
import hemline.shared.section.DuctSection.Stations;
import hemline.shared.section.DuctSection.Wall;
import hemline.shared.units.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Reads the keys of a duct file and judges them together. */
final class DuctReader {
  private static final List<String> CLOSURES = List.of("auto", "laminar", "sst", "sa");

  /** Share of the height by which an obstacle may miss a wall it stands on. */
  private static final double SLACK = 1e-9;

  private final String file;
  private final List<Problem> problems = new ArrayList<>();
  private final JsonKeys keys;
  private FileUnit unit = FileUnit.MM;
  private double from;
  private double to;
  private double height;

  DuctReader(JsonItem.Members top, String file) {
    this.file = file;
    this.keys = new JsonKeys(file, "", top, problems);
  }

  DuctSection read() throws InputException {
    if (!SchemaKey.check(keys, DuctFile.KIND, DuctFile.VERSION)) {
      throw new InputException(problems);
    }
    keys.allow(
        "schema",
        "name",
        "notes",
        "lengthUnit",
        "channel",
        "obstacles",
        "fluid",
        "drive",
        "walls",
        "inlet",
        "ground",
        "ceiling",
        "stations",
        "referenceGap",
        "closure");
    unit = SchemaKey.lengthUnit(keys);
    String name = keys.text("name", file, "flat lip in a channel");
    keys.text("notes", "", "a free text");
    readChannel();
    boolean soundChannel = problems.isEmpty();
    boolean closed = keys.has("walls");
    Drive drive = closed ? null : drive();
    List<Outline> obstacles = obstacles(soundChannel, closed);
    FluidState fluid = fluid();
    Cavity cavity = closed ? cavity() : null;
    Inlet inlet = inlet(drive);
    Wall ground = wall("ground");
    Wall ceiling = wall("ceiling");
    Stations stations = stations(soundChannel, closed);
    String closure = closure();
    OptionalDouble gap = gap();
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
    return new DuctSection(
        name,
        new DuctSection.Channel(from, to, height),
        obstacles,
        fluid,
        new DuctSection.Inflow(drive, inlet),
        new DuctSection.Walls(ground, ceiling, cavity),
        new DuctSection.Measures(
            stations, gap.isPresent() ? gap.getAsDouble() : leastClearance(obstacles)),
        closure);
  }

  private void readChannel() {
    if (keys.missing("channel", "{\"from\": …, \"to\": …, \"height\": …}")) {
      return;
    }
    JsonKeys channel = keys.group("channel");
    if (channel == null) {
      return;
    }
    channel.allow("from", "to", "height");
    from = channel.length("from", unit);
    to = channel.length("to", unit);
    height = channel.length("height", unit);
    if (from >= to) {
      channel.fault("duct.channel", "to", "must be larger than from");
    }
    if (height <= 0) {
      channel.fault("duct.channel", "height", "must be positive");
    }
  }

  private @Nullable Drive drive() {
    String right = "{\"leakFlow\": …} in m2/s or {\"pressureDrop\": …} in Pa";
    if (keys.missing("drive", right + ", or walls for a closed cavity")) {
      return null;
    }
    JsonKeys drive = keys.group("drive");
    if (drive == null) {
      return null;
    }
    drive.allow("leakFlow", "pressureDrop");
    if (drive.has("leakFlow") == drive.has("pressureDrop")) {
      keys.fault("duct.drive", "drive", "must hold one of the two: " + right);
      return null;
    }
    return drive.has("leakFlow")
        ? new Drive.LeakFlow(drive.number("leakFlow", "a number in m2/s"))
        : new Drive.PressureDrop(drive.number("pressureDrop", "a number in Pa"));
  }

  private @Nullable Inlet inlet(@Nullable Drive drive) {
    String written = keys.text("inlet", "developed", "developed");
    if (!written.equals("developed") && !written.equals("uniform")) {
      keys.fault("duct.inlet", "inlet", "must be \"developed\" or \"uniform\"");
    }
    if (!(drive instanceof Drive.LeakFlow)) {
      if (written.equals("uniform")) {
        keys.fault(
            "duct.inlet", "inlet", "\"uniform\" needs a leak flow as drive; remove this key");
      }
      return null;
    }
    return written.equals("uniform") ? Inlet.UNIFORM : Inlet.DEVELOPED;
  }

  private @Nullable Cavity cavity() {
    for (String open : new String[] {"drive", "inlet", "stations"}) {
      if (keys.has(open)) {
        keys.fault(
            "duct.cavity",
            open,
            "a closed cavity (key walls) has no " + open + "; remove one of the two");
      }
    }
    JsonKeys walls = keys.group("walls");
    if (walls == null) {
      return null;
    }
    walls.allow("left", "right");
    return new Cavity(sideSpeed(walls, "left"), sideSpeed(walls, "right"));
  }

  private static double sideSpeed(JsonKeys walls, String side) {
    JsonKeys wall = walls.group(side);
    if (wall == null) {
      return 0;
    }
    wall.allow("speed");
    return wall.number("speed", 0, "a number in m/s");
  }

  private FluidState fluid() {
    JsonKeys fluid = keys.group("fluid");
    if (fluid == null) {
      return Air.STANDARD;
    }
    fluid.allow("density", "kinematicViscosity");
    double density = fluid.number("density", "a number in kg/m3");
    double viscosity = fluid.number("kinematicViscosity", "a number in m2/s");
    if (density <= 0) {
      fluid.fault("duct.fluid", "density", "must be positive");
    }
    if (viscosity <= 0) {
      fluid.fault("duct.fluid", "kinematicViscosity", "must be positive");
    }
    return density > 0 && viscosity > 0 ? new FluidState(density, viscosity) : Air.STANDARD;
  }

  private Wall wall(String key) {
    JsonKeys wall = keys.group(key);
    if (wall == null) {
      return new Wall(0, 0, false);
    }
    wall.allow("speed", "spanwiseSpeed", "frictionless");
    return new Wall(
        wall.number("speed", 0, "a number in m/s"),
        wall.number("spanwiseSpeed", 0, "a number in m/s"),
        wall.truth("frictionless", false));
  }

  private @Nullable Stations stations(boolean soundChannel, boolean closed) {
    JsonKeys stations = keys.group("stations");
    if (stations == null || closed) {
      return null;
    }
    stations.allow("upstream", "downstream");
    double upstream = stations.length("upstream", unit);
    double downstream = stations.length("downstream", unit);
    if (soundChannel) {
      checkStation(stations, "upstream", upstream);
      checkStation(stations, "downstream", downstream);
    }
    if (upstream >= downstream) {
      stations.fault("duct.stations", "downstream", "must be larger than upstream");
    }
    return new Stations(upstream, downstream);
  }

  private void checkStation(JsonKeys stations, String key, double x) {
    if (x < from || x > to) {
      stations.fault(
          "duct.stations",
          key,
          "lies outside the channel, which runs from " + inUnit(from) + " to " + inUnit(to));
    }
  }

  private String closure() {
    String written = keys.text("closure", "auto", "auto");
    if (!CLOSURES.contains(written)) {
      keys.fault("duct.closure", "closure", "must be one of " + String.join(", ", CLOSURES));
    }
    return written;
  }

  private OptionalDouble gap() {
    OptionalDouble gap = keys.optionalLength("referenceGap", unit);
    if (gap.isPresent() && gap.getAsDouble() <= 0) {
      keys.fault("duct.referenceGap", "referenceGap", "must be positive");
    }
    return gap;
  }

  private List<Outline> obstacles(boolean soundChannel, boolean closed) {
    List<Outline> outlines = new ArrayList<>();
    List<Polygon> polygons = new ArrayList<>();
    List<JsonItem> items = keys.list("obstacles");
    for (int i = 0; i < items.size(); i++) {
      String at = "obstacles[" + i + "]";
      JsonKeys one = keys.group(items.get(i), at);
      if (one == null) {
        continue;
      }
      one.allow("outline");
      int before = problems.size();
      DrawnOutline drawn = new DrawnOutline(OutlineKeys.vertices(one, "outline", unit));
      if (problems.size() > before) {
        continue;
      }
      for (Problem p : OutlineChecks.check(drawn, at)) {
        one.fault(p.code(), "outline", p.text());
      }
      if (problems.size() > before || !soundChannel) {
        continue;
      }
      Outline outline = new Outline(drawn.vertices());
      Polygon polygon = Polygons.polygon(outline, 1);
      checkInside(one, polygon.getEnvelopeInternal(), closed);
      checkOthers(one, polygon, polygons);
      outlines.add(outline);
      polygons.add(polygon);
    }
    return outlines;
  }

  private void checkInside(JsonKeys obstacle, Envelope box, boolean closed) {
    double slack = SLACK * Math.max(height, to - from);
    if (box.getMinX() < from - slack || box.getMaxX() > to + slack) {
      obstacle.fault(
          "duct.obstacle",
          "outline",
          "reaches beyond the ends of the channel at "
              + inUnit(from)
              + " and "
              + inUnit(to)
              + "; shorten it or lengthen the channel");
    }
    if (box.getMinY() < -slack || box.getMaxY() > height + slack) {
      obstacle.fault(
          "duct.obstacle",
          "outline",
          "reaches beyond the walls of the channel at 0 and "
              + inUnit(height)
              + "; end it at the wall it stands on");
    }
    if (!closed && box.getMinY() <= slack && box.getMaxY() >= height - slack) {
      obstacle.fault(
          "duct.obstacle",
          "outline",
          "reaches from wall to wall and leaves no passage; leave a gap");
    }
  }

  private void checkOthers(JsonKeys obstacle, Polygon polygon, List<Polygon> others) {
    for (int j = 0; j < others.size(); j++) {
      Geometry other = others.get(j);
      if (polygon.overlaps(other) || polygon.covers(other) || other.covers(polygon)) {
        obstacle.fault(
            "duct.obstacle",
            "outline",
            "overlaps obstacles[" + j + "]; draw both as one outline or move them apart");
      }
    }
  }

  /** Least clearance between an obstacle and a wall it does not stand on; else the height. */
  private double leastClearance(List<Outline> obstacles) {
    double slack = SLACK * height;
    double least = height;
    for (Outline o : obstacles) {
      Envelope box = Polygons.polygon(o, 1).getEnvelopeInternal();
      for (double clearance : new double[] {box.getMinY(), height - box.getMaxY()}) {
        least = clearance > slack ? Math.min(least, clearance) : least;
      }
    }
    return least;
  }

  private String inUnit(double metres) {
    return NumberText.significant(unit.fromMetres(metres).doubleValue(), 6) + " " + unit.key();
  }
}
