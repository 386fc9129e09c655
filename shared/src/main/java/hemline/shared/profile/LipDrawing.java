package hemline.shared.profile;

import hemline.shared.geometry.DrawnOutline;
import java.util.List;

/**
 * A lip as drawn and kept in a file: sharp corners with roundings, in the frame of the drawing.
 *
 * <p>{@link LipResolver} turns it into a {@link LipProfile}.
 *
 * @param name short name, unique in a ranking
 * @param family flat, teeth, pocket, …; free text for people
 * @param notes free text
 * @param invented true for figures made up for a demonstration
 * @param source where the figures come from; empty if nothing is to be said
 * @param body the lip, metres, x from ambient to plenum, y up
 * @param mountEdge index of the edge that is fixed to the skirt: from that vertex to the next
 * @param detached further solid parts carried by the lip; may be empty
 */
public record LipDrawing(
    String name,
    String family,
    String notes,
    boolean invented,
    String source,
    DrawnOutline body,
    int mountEdge,
    List<DrawnOutline> detached) {
  public LipDrawing {
    detached = List.copyOf(detached);
  }

  /** The same lip under another name. */
  public LipDrawing named(String other) {
    return new LipDrawing(other, family, notes, invented, source, body, mountEdge, detached);
  }

  /** The same lip in another shape. */
  public LipDrawing shaped(DrawnOutline newBody, int newMountEdge, List<DrawnOutline> parts) {
    return new LipDrawing(name, family, notes, invented, source, newBody, newMountEdge, parts);
  }
}
