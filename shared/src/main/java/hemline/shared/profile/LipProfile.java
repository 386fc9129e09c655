package hemline.shared.profile;

import hemline.shared.geometry.Outline;
import java.util.ArrayList;
import java.util.List;

/**
 * A lip cross-section in its own frame: x from ambient to plenum, y up, lowest point at y = 0,
 * metres.
 *
 * @param name short name, unique in a ranking
 * @param family flat, teeth, pocket, …; free text for people
 * @param notes free text
 * @param outline the lip, roundings resolved
 * @param mountEdge index of the edge (from that vertex to the next) that is fixed to the skirt;
 *     straight and horizontal, with no part of the lip above it
 * @param detached further solid parts carried by the lip (vanes on end ribs); may be empty
 */
public record LipProfile(
    String name,
    String family,
    String notes,
    Outline outline,
    int mountEdge,
    List<Outline> detached) {
  public LipProfile {
    detached = List.copyOf(detached);
  }

  /** All solid parts, the lip itself first. */
  public List<Outline> bodies() {
    List<Outline> bodies = new ArrayList<>(List.of(outline));
    bodies.addAll(detached);
    return List.copyOf(bodies);
  }
}
