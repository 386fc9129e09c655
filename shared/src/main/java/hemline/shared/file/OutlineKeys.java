package hemline.shared.file;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.OutlineChecks;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Outlines and roundings as they stand in files. */
final class OutlineKeys {
  private static final String VERTEX = "[x, y] or [x, y, bulge]";

  private OutlineKeys() {}

  /** Vertices of the list under a key; the list must be there. */
  static List<Vertex> vertices(JsonKeys keys, String key, FileUnit unit) {
    if (keys.missing(key, "a list of corners " + VERTEX)) {
      return List.of();
    }
    return vertices(keys, keys.list(key), keys.pathOf(key), unit);
  }

  static List<Vertex> vertices(JsonKeys keys, List<JsonItem> items, String path, FileUnit unit) {
    List<Vertex> out = new ArrayList<>();
    if (items.size() > OutlineChecks.MOST_VERTICES) {
      keys.fault(
          "outline.vertices",
          items.get(0).line(),
          path,
          "has "
              + items.size()
              + " corners; at most "
              + OutlineChecks.MOST_VERTICES
              + " are possible: draw curves as arcs");
      return out;
    }
    for (int i = 0; i < items.size(); i++) {
      String at = path + "[" + i + "]";
      JsonItem item = items.get(i);
      if (!(item instanceof JsonItem.Array point)
          || point.items().size() < 2
          || point.items().size() > 3) {
        keys.fault("file.type", item.line(), at, "corner " + i + " must be " + VERTEX);
        continue;
      }
      BigDecimal x = keys.decimal(point.items().get(0), at, "a number as x of the corner");
      BigDecimal y = keys.decimal(point.items().get(1), at, "a number as y of the corner");
      BigDecimal bulge =
          point.items().size() == 2
              ? BigDecimal.ZERO
              : keys.decimal(point.items().get(2), at, "a number as bulge of the edge");
      if (x != null && y != null && bulge != null) {
        out.add(new Vertex(unit.toMetres(x), unit.toMetres(y), bulge.doubleValue()));
      }
    }
    return out;
  }

  /** Outline and its roundings, from the keys outline and roundings of a group. */
  static DrawnOutline drawn(JsonKeys keys, FileUnit unit) {
    return new DrawnOutline(vertices(keys, "outline", unit), roundings(keys, unit));
  }

  private static List<Rounding> roundings(JsonKeys keys, FileUnit unit) {
    List<Rounding> out = new ArrayList<>();
    List<JsonItem> items = keys.list("roundings");
    for (int i = 0; i < items.size(); i++) {
      String at = keys.pathOf("roundings[" + i + "]");
      JsonKeys one = keys.group(items.get(i), at);
      if (one == null) {
        continue;
      }
      one.allow("vertex", "radius", "chamfer");
      int vertex = one.index("vertex", "the number of a corner, from 0");
      if (one.has("radius") && one.has("chamfer")) {
        one.fault("file.key", "chamfer", "a corner takes either a radius or a chamfer; remove one");
      } else if (one.has("chamfer")) {
        out.add(Rounding.chamfer(vertex, one.length("chamfer", unit)));
      } else {
        out.add(Rounding.round(vertex, one.length("radius", unit)));
      }
    }
    return out;
  }

  static List<Object> list(List<Vertex> vertices, FileUnit unit) {
    List<Object> out = new ArrayList<>();
    for (Vertex v : vertices) {
      List<Object> point = new ArrayList<>();
      point.add(unit.fromMetres(v.x()));
      point.add(unit.fromMetres(v.y()));
      if (v.bulge() != 0) {
        point.add(FileUnit.decimal(v.bulge()));
      }
      out.add(point);
    }
    return out;
  }

  static List<Object> list(DrawnOutline drawn, FileUnit unit) {
    List<Object> out = new ArrayList<>();
    for (Rounding r : drawn.roundings()) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("vertex", r.vertex());
      one.put(r.kind() == Rounding.Kind.ROUND ? "radius" : "chamfer", unit.fromMetres(r.size()));
      out.add(one);
    }
    return out;
  }
}
