package hemline.viewer.picture;

import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Ring;
import hemline.shared.geometry.Vertex;
import hemline.shared.profile.LipProfile;
import hemline.shared.result.SectionResult;
import hemline.shared.section.DuctSection;
import hemline.shared.section.GroundMotion;
import hemline.shared.section.SealSection;
import hemline.shared.section.Section;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All a section picture shows, in section coordinates.
 *
 * @param result figures for the heading
 * @param field pressure and streamfunction
 * @param lip parts of the lip, or obstacles of a duct
 * @param walls other solids: skirt wall, bumps on the ground
 * @param motion of the ground
 * @param window part of the section shown
 * @param through streamfunction of the upper wall, which is the leak flow, m²/s
 * @param duct the duct, whose figures stay in SI units; null for a lip
 */
public record SectionScene(
    SectionResult result,
    GridField field,
    List<Ring> lip,
    List<Ring> walls,
    GroundMotion motion,
    SectionWindow window,
    double through,
    @Nullable DuctSection duct) {
  public SectionScene {
    lip = List.copyOf(lip);
    walls = List.copyOf(walls);
  }

  /** True when the upper wall of a duct bounds the picture. */
  public boolean ceilingShown() {
    return duct != null && window.top() >= duct.channel().height() * (1 - 1e-9);
  }

  /** True for a duct closed on all sides. */
  public boolean closed() {
    return duct != null && duct.walls().cavity() != null;
  }

  /** The scene of a solved lip or duct. */
  public static SectionScene of(Section section, SectionResult result, GridField field) {
    return section instanceof SealSection lip
        ? of(lip, result, field)
        : of((DuctSection) section, result, field);
  }

  private static SectionScene of(SealSection section, SectionResult result, GridField field) {
    LipProfile profile = section.profile();
    List<Ring> lip = new ArrayList<>();
    lip.add(raised(profile.outline().flatten(), section.gap()));
    profile.detached().forEach(part -> lip.add(raised(part.flatten(), section.gap())));
    Ring skirt = skirt(profile, section.gap(), field);
    List<Ring> walls = new ArrayList<>();
    walls.add(skirt);
    for (Outline bump : section.groundBumps()) {
      walls.add(bump.flatten());
    }
    SectionWindow window = SectionWindow.aroundLip(lip, section.gap(), field);
    double through = field.streamfunctionIn(skirt.x()[0], skirt.x()[1], skirt.y()[0]);
    return new SectionScene(result, field, lip, walls, section.ground(), window, through, null);
  }

  private static SectionScene of(DuctSection duct, SectionResult result, GridField field) {
    List<Ring> obstacles = duct.obstacles().stream().map(Outline::flatten).toList();
    return new SectionScene(
        result,
        field,
        obstacles,
        List.of(),
        duct.ground(),
        SectionWindow.aroundObstacles(obstacles, duct, field),
        field.streamfunctionIn(duct.channel().from(), duct.channel().to(), duct.channel().height()),
        duct);
  }

  /** Skirt wall from the mount edge to the top of the domain, as wide as the mount. */
  private static Ring skirt(LipProfile profile, double gap, GridField field) {
    List<Vertex> v = profile.outline().vertices();
    Vertex a = v.get(profile.mountEdge());
    Vertex b = v.get((profile.mountEdge() + 1) % v.size());
    double left = Math.min(a.x(), b.x());
    double right = Math.max(a.x(), b.x());
    double mount = a.y() + gap;
    double top = Math.max(field.sy()[field.sy().length - 1], mount + gap);
    return new Ring(new double[] {left, right, right, left}, new double[] {mount, mount, top, top});
  }

  private static Ring raised(Ring ring, double by) {
    double[] y = new double[ring.size()];
    for (int k = 0; k < y.length; k++) {
      y[k] = ring.y()[k] + by;
    }
    return new Ring(ring.x(), y);
  }
}
