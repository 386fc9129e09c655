package hemline.solver.flow;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.section.DuctSection;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import hemline.solver.grid.FineDetail;
import java.util.ArrayList;
import java.util.List;

/**
 * A section as its grids take it, see {@link FineDetail}.
 *
 * @param section with bodies that hold no fine detail; the drawn one where there is none
 * @param joined places where detail was joined, in the frame of the section, m
 * @param reach largest move of a wall along either axis, m
 * @param <S> kind of section
 */
public record GridSection<S extends Section>(S section, List<Vertex> joined, double reach) {
  /** Largest reach in a lip, m: bodies 10 µm apart, the least that is allowed, stay apart. */
  private static final double LIP_REACH = 4e-6;

  public GridSection {
    joined = List.copyOf(joined);
  }

  /** Prepares a section of either kind. */
  public static GridSection<?> of(Section drawn) {
    if (drawn instanceof SealSection lip) {
      return of(lip);
    }
    return of((DuctSection) drawn);
  }

  /** Prepares a lip section. */
  public static GridSection<SealSection> of(SealSection drawn) {
    double h = drawn.gap();
    double reach = Math.min(FineDetail.reach(h), LIP_REACH);
    LipProfile lip = drawn.profile();
    List<Vertex> joined = new ArrayList<>();
    FineDetail body = FineDetail.of(lip.outline(), reach);
    body.joined().forEach(v -> joined.add(new Vertex(v.x(), v.y() + h)));
    List<Outline> detached = plain(lip.detached(), reach, h, joined);
    List<Outline> bumps = plain(drawn.groundBumps(), reach, 0, joined);
    if (joined.isEmpty()) {
      return new GridSection<>(drawn, joined, reach);
    }
    LipProfile plain =
        new LipProfile(
            lip.name(),
            lip.family(),
            lip.notes(),
            body.outline(),
            body.edge(lip.mountEdge()),
            detached);
    return new GridSection<>(
        new SealSection(plain, h, drawn.suction(), drawn.ground(), drawn.fluid(), bumps),
        joined,
        reach);
  }

  /** Prepares a duct section. */
  public static GridSection<DuctSection> of(DuctSection drawn) {
    double reach = FineDetail.reach(drawn.gap());
    List<Vertex> joined = new ArrayList<>();
    List<Outline> obstacles = plain(drawn.obstacles(), reach, 0, joined);
    return new GridSection<>(
        joined.isEmpty() ? drawn : drawn.withObstacles(obstacles), joined, reach);
  }

  private static List<Outline> plain(
      List<Outline> drawn, double reach, double raised, List<Vertex> joined) {
    List<Outline> plain = new ArrayList<>();
    for (Outline outline : drawn) {
      FineDetail fine = FineDetail.of(outline, reach);
      fine.joined().forEach(v -> joined.add(new Vertex(v.x(), v.y() + raised)));
      plain.add(fine.outline());
    }
    return plain;
  }
}
