package hemline.shared.file;

import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the group code pairs of a DXF text. */
final class DxfReader {
  /** Metres of one drawing unit by its $INSUNITS code: in, ft, mm, cm, m, µm, dm, mil. */
  private static final Map<Integer, Double> UNITS =
      Map.of(1, 0.0254, 2, 0.3048, 4, 1e-3, 5, 1e-2, 6, 1.0, 9, 25.4e-6, 13, 1e-6, 14, 0.1);

  private static final Set<String> SILENT = Set.of("SEQEND", "VERTEX", "VIEWPORT", "POINT");

  private static final Pattern CODE = Pattern.compile("-?\\d{1,5}");
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

  /** One group: code, value and the line of the value. */
  private record Group(int code, String value, int line) {}

  /** An entity: its type and groups, and for a polyline its vertices. */
  private record Entity(String type, int line, List<Group> groups, List<Entity> vertices) {}

  private final String file;
  private final List<Group> groups = new ArrayList<>();
  private final List<Contour> contours = new ArrayList<>();
  private final List<Notice> notices = new ArrayList<>();
  private final Map<String, Integer> passedOver = new TreeMap<>();
  private double scale = 1e-3;

  DxfReader(String text, String file) throws InputException {
    this.file = file;
    split(text);
  }

  ImportedOutlines read() throws InputException {
    readUnit();
    for (Entity e : entities()) {
      add(e);
    }
    passedOver.forEach((type, count) -> notices.add(NoticeKind.DXF_SKIPPED.of(type, count)));
    return ContourJoiner.join(contours, file, notices);
  }

  private void split(String text) throws InputException {
    Lines lines = new Lines(text);
    for (String code = lines.next(); code != null; code = lines.next()) {
      int at = lines.number;
      String value = lines.next();
      if (value == null) {
        break;
      }
      if (!CODE.matcher(code).matches()) {
        String cure =
            groups.isEmpty()
                ? "this is no plain-text DXF; save the drawing as plain-text DXF"
                : "a group code (a whole number) is expected here";
        throw fault(at, cure);
      }
      groups.add(new Group(Integer.parseInt(code), value, at + 1));
      if (groups.get(groups.size() - 1).code() == 0 && value.equals("EOF")) {
        return;
      }
    }
    if (groups.isEmpty()) {
      throw fault(1, "this is no plain-text DXF; save the drawing as plain-text DXF");
    }
  }

  /** Lines of a text one by one, without blanks around them. */
  private static final class Lines {
    private final String text;
    private int from;
    private int number;

    Lines(String text) {
      this.text = text;
    }

    @Nullable String next() {
      if (from > text.length()) {
        return null;
      }
      int to = from;
      while (to < text.length() && text.charAt(to) != '\n' && text.charAt(to) != '\r') {
        to++;
      }
      String line = text.substring(from, to).strip();
      boolean pair = text.startsWith("\r\n", to);
      from = to + (pair ? 2 : 1);
      number++;
      return line;
    }
  }

  private void readUnit() throws InputException {
    for (int i = 0; i + 1 < groups.size(); i++) {
      if (groups.get(i).code() == 9 && groups.get(i).value().equals("$INSUNITS")) {
        int code = (int) number(groups.get(i + 1));
        if (code == 0) {
          break;
        }
        Double metres = UNITS.get(code);
        if (metres == null) {
          throw fault(
              groups.get(i + 1).line(),
              "the drawing unit has the code " + code + ", which is not known here; save it in mm");
        }
        scale = metres;
        return;
      }
    }
    notices.add(NoticeKind.DXF_UNIT.of());
  }

  /** Entities of the ENTITIES section; in a text without sections, of the whole text. */
  private List<Entity> entities() {
    boolean sections = groups.stream().anyMatch(g -> g.code() == 0 && g.value().equals("SECTION"));
    List<Entity> out = new ArrayList<>();
    String section = sections ? "" : "ENTITIES";
    Entity polyline = null;
    Entity current = null;
    for (int i = 0; i < groups.size(); i++) {
      Group g = groups.get(i);
      if (g.code() != 0) {
        if (current != null) {
          current.groups().add(g);
        }
        continue;
      }
      current = null;
      if (g.value().equals("SECTION")) {
        boolean named = i + 1 < groups.size() && groups.get(i + 1).code() == 2;
        section = named ? groups.get(i + 1).value() : "";
      } else if (g.value().equals("ENDSEC")) {
        section = "";
      } else if (section.equals("ENTITIES")) {
        current = new Entity(g.value(), g.line(), new ArrayList<>(), new ArrayList<>());
        if (g.value().equals("VERTEX") && polyline != null) {
          polyline.vertices().add(current);
        } else {
          out.add(current);
        }
        polyline = g.value().equals("POLYLINE") ? current : polyline;
        polyline = g.value().equals("SEQEND") ? null : polyline;
      }
    }
    return out;
  }

  private void add(Entity e) throws InputException {
    if (number(e, 67, 0) == 1) {
      return;
    }
    // seen from below, the drawing plane has its x axis turned round
    double mirror = number(e, 230, 1) < 0 && !e.type().equals("LINE") ? -1 : 1;
    String origin = e.type() + " in line " + e.line();
    switch (e.type()) {
      case "LINE" ->
          contours.add(
              new Contour(
                  List.of(
                      vertex(need(e, 10), need(e, 20), 0, 1),
                      vertex(need(e, 11), need(e, 21), 0, 1)),
                  false,
                  origin));
      case "ARC" -> addArc(e, mirror, origin);
      case "CIRCLE" -> {
        double x = need(e, 10);
        double y = need(e, 20);
        double r = need(e, 40);
        contours.add(
            new Contour(
                List.of(vertex(x - r, y, 1, mirror), vertex(x + r, y, 1, mirror)), true, origin));
      }
      case "LWPOLYLINE" -> addLightPolyline(e, mirror, origin);
      case "POLYLINE" -> addPolyline(e, mirror, origin);
      default -> {
        if (!SILENT.contains(e.type())) {
          passedOver.merge(e.type(), 1, Integer::sum);
        }
      }
    }
  }

  /** An arc runs counter-clockwise from its start to its end angle, in degrees. */
  private void addArc(Entity e, double mirror, String origin) throws InputException {
    double x = need(e, 10);
    double y = need(e, 20);
    double r = need(e, 40);
    double start = Math.toRadians(need(e, 50));
    double end = Math.toRadians(need(e, 51));
    double turn = 2 * Math.PI;
    double sweep = ((end - start) % turn + turn) % turn;
    if (sweep < 1e-9 || turn - sweep < 1e-9) {
      contours.add(
          new Contour(
              List.of(vertex(x - r, y, 1, mirror), vertex(x + r, y, 1, mirror)), true, origin));
      return;
    }
    contours.add(
        new Contour(
            List.of(
                vertex(
                    x + r * Math.cos(start), y + r * Math.sin(start), Math.tan(sweep / 4), mirror),
                vertex(x + r * Math.cos(end), y + r * Math.sin(end), 0, mirror)),
            false,
            origin));
  }

  private void addLightPolyline(Entity e, double mirror, String origin) throws InputException {
    List<double[]> points = new ArrayList<>();
    for (Group g : e.groups()) {
      if (g.code() == 10) {
        points.add(new double[] {number(g), 0, 0});
      } else if (!points.isEmpty() && g.code() == 20) {
        points.get(points.size() - 1)[1] = number(g);
      } else if (!points.isEmpty() && g.code() == 42) {
        points.get(points.size() - 1)[2] = number(g);
      }
    }
    addPoints(points, isClosed(e), mirror, origin);
  }

  private void addPolyline(Entity e, double mirror, String origin) throws InputException {
    int flags = (int) number(e, 70, 0);
    if ((flags & (8 | 16 | 64)) != 0) {
      passedOver.merge("three-dimensional POLYLINE", 1, Integer::sum);
      return;
    }
    List<double[]> points = new ArrayList<>();
    for (Entity v : e.vertices()) {
      // 16: a control point of a smoothed polyline, not on it
      if (((int) number(v, 70, 0) & 16) == 0) {
        points.add(new double[] {need(v, 10), need(v, 20), number(v, 42, 0)});
      }
    }
    addPoints(points, isClosed(e), mirror, origin);
  }

  private boolean isClosed(Entity e) throws InputException {
    return ((int) number(e, 70, 0) & 1) != 0;
  }

  private void addPoints(List<double[]> points, boolean closed, double mirror, String origin) {
    if (points.size() > 1) {
      List<Vertex> vertices = new ArrayList<>();
      for (double[] p : points) {
        vertices.add(vertex(p[0], p[1], p[2], mirror));
      }
      contours.add(new Contour(vertices, closed, origin));
    }
  }

  private Vertex vertex(double x, double y, double bulge, double mirror) {
    double b = bulge == 0 ? 0 : mirror * bulge;
    return new Vertex(toMetres(mirror * x), toMetres(y), b);
  }

  /** Millimetres keep their decimals; other units are only scaled. */
  private double toMetres(double value) {
    return scale == 1e-3 ? FileUnit.MM.toMetres(FileUnit.decimal(value)) : scale * value;
  }

  private double need(Entity e, int code) throws InputException {
    for (Group g : e.groups()) {
      if (g.code() == code) {
        return number(g);
      }
    }
    throw fault(e.line(), e.type() + " lacks its group " + code + "; save the drawing anew");
  }

  private double number(Entity e, int code, double absent) throws InputException {
    for (Group g : e.groups()) {
      if (g.code() == code) {
        return number(g);
      }
    }
    return absent;
  }

  private double number(Group g) throws InputException {
    if (g.value().length() < 60 && NUMBER.matcher(g.value()).matches()) {
      double value = Double.parseDouble(g.value());
      if (Math.abs(value) < 1e12) {
        return value;
      }
    }
    throw fault(g.line(), "group " + g.code() + " must be a number of moderate size here");
  }

  private InputException fault(int line, String text) {
    return new InputException("drawing.form", file + ", line " + line, text);
  }
}
