package hemline.shared.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.geometry.DrawnOutline;
import hemline.shared.geometry.Outline;
import hemline.shared.geometry.Polygons;
import hemline.shared.geometry.Ring;
import hemline.shared.geometry.Rounding;
import hemline.shared.geometry.Vertex;
import hemline.shared.problem.InputException;
import hemline.shared.problem.Notice;
import hemline.shared.problem.NoticeKind;
import hemline.shared.problem.Problem;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class LipResolverTest {
  private static final double MM = 1e-3;

  private static List<Vertex> mm(double... xy) {
    List<Vertex> out = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      out.add(new Vertex(MM * xy[i], MM * xy[i + 1]));
    }
    return out;
  }

  private static LipDrawing lip(int mountEdge, List<Rounding> roundings, List<Vertex> vertices) {
    return new LipDrawing(
        "lip", "", "", false, "", new DrawnOutline(vertices, roundings), mountEdge, List.of());
  }

  private static LipDrawing lip(int mountEdge, double... xy) {
    return lip(mountEdge, List.of(), mm(xy));
  }

  private static LipDrawing with(DrawnOutline... detached) {
    LipDrawing flat = lip(2, 0, 0, 8, 0, 8, 10, 0, 10);
    return new LipDrawing("lip", "", "", false, "", flat.body(), 2, List.of(detached));
  }

  private static Problem only(LipDrawing drawing) {
    LipFindings findings = LipResolver.check(drawing);
    assertThat(findings.problems()).hasSize(1);
    assertThat(findings.profile()).isNull();
    return findings.problems().get(0);
  }

  private static List<String> noticeCodes(LipDrawing drawing) {
    LipFindings findings = LipResolver.check(drawing);
    assertThat(findings.problems()).isEmpty();
    return findings.notices().stream().map(Notice::code).toList();
  }

  @Test
  void movesTheLowestPointToZeroAndTheAmbientEdgeToZero() throws InputException {
    LipProfile p = LipResolver.resolve(lip(2, 30, -7, 38, -7, 38, 3, 30, 3));
    assertThat(p.outline().vertices().get(0)).isEqualTo(new Vertex(0, 0));
    MountEdge mount = MountEdge.of(p);
    assertThat(mount.x0()).isZero();
    assertThat(mount.x1()).isCloseTo(8 * MM, within(1e-15));
    assertThat(mount.y()).isCloseTo(10 * MM, within(1e-15));
    assertThat(mount.middle()).isCloseTo(4 * MM, within(1e-15));
    assertThat(mount.width()).isCloseTo(8 * MM, within(1e-15));
  }

  @Test
  void turnsClockwiseDrawingsAndKeepsTheMountEdge() throws InputException {
    LipProfile p = LipResolver.resolve(lip(1, 0, 0, 0, 10, 8, 10, 8, 0));
    assertThat(Polygons.signedArea(p.outline().vertices())).isPositive();
    assertThat(MountEdge.of(p)).isEqualTo(new MountEdge(0, 8 * MM, 10 * MM));
  }

  @Test
  void aRoundNoseHasItsLowestPointAsVertex() throws InputException {
    List<Vertex> nose =
        List.of(
            new Vertex(1 * MM, 5 * MM, 1),
            new Vertex(9 * MM, 5 * MM),
            new Vertex(9 * MM, 11 * MM),
            new Vertex(1 * MM, 11 * MM));
    LipProfile p = LipResolver.resolve(lip(2, List.of(), nose));
    assertThat(p.outline().vertices()).hasSize(5);
    assertThat(p.outline().vertices().get(1).y()).isZero();
    assertThat(p.outline().vertices().get(1).x()).isCloseTo(4 * MM, within(1e-15));
    assertThat(p.mountEdge()).isEqualTo(3);
    Ring ring = p.outline().flatten();
    assertThat(DoubleStream.of(ring.y()).min().orElseThrow()).isZero();
    assertThat(Polygons.signedArea(p.outline().vertices()))
        .isCloseTo(Polygons.signedArea(nose), within(1e-18));
  }

  /** Start vertex, direction, place and roundings must not change the resolved lip. */
  @Test
  @Tag("many")
  void theWayOfDrawingDoesNotMatter() throws InputException {
    List<Vertex> base = mm(0, 0, 2, 0, 2, 3, 6, 3, 6, 0, 8, 0, 8, 10, 0, 10);
    List<Rounding> roundings = List.of(Rounding.round(2, MM), Rounding.chamfer(5, 0.5 * MM));
    Outline reference = LipResolver.resolve(lip(6, roundings, base)).outline();
    int n = base.size();
    for (int seed = 0; seed < 200; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      int shift = random.nextInt(n);
      boolean back = random.nextBoolean();
      double dx = random.nextDouble(-0.1, 0.1);
      double dy = random.nextDouble(-0.1, 0.1);
      List<Vertex> vertices = new ArrayList<>();
      for (Vertex v : base) {
        vertices.add(new Vertex(v.x() + dx, v.y() + dy));
      }
      Collections.rotate(vertices, shift);
      int mount = (6 + shift) % n;
      List<Rounding> moved = new ArrayList<>();
      for (Rounding r : roundings) {
        moved.add(new Rounding((r.vertex() + shift) % n, r.kind(), r.size()));
      }
      if (back) {
        Collections.reverse(vertices);
        mount = Math.floorMod(n - 2 - mount, n);
        moved.replaceAll(r -> new Rounding(n - 1 - r.vertex(), r.kind(), r.size()));
      }
      LipProfile p = LipResolver.resolve(lip(mount, moved, vertices));
      MountEdge edge = MountEdge.of(p);
      assertThat(edge.x0()).as("seed %d", seed).isCloseTo(0, within(1e-12));
      assertThat(edge.x1()).as("seed %d", seed).isCloseTo(8 * MM, within(1e-12));
      assertThat(edge.y()).as("seed %d", seed).isCloseTo(10 * MM, within(1e-12));
      assertThat(Polygons.signedArea(p.outline().vertices()))
          .as("seed %d", seed)
          .isCloseTo(Polygons.signedArea(reference.vertices()), within(1e-12 * MM));
      for (Vertex v : reference.vertices()) {
        assertThat(p.outline().vertices())
            .as("seed %d", seed)
            .anyMatch(
                w ->
                    Math.hypot(v.x() - w.x(), v.y() - w.y()) < 1e-12
                        && Math.abs(v.bulge() - w.bulge()) < 1e-9);
      }
    }
  }

  @Test
  void theMountEdgeMustBeStraightLevelAndOnTop() {
    assertThat(only(lip(9, 0, 0, 8, 0, 8, 10, 0, 10)).text()).contains("no edge 9", "0 to 3");
    assertThat(only(lip(-1, 0, 0, 8, 0, 8, 10, 0, 10)).text()).contains("no edge -1");
    assertThat(only(lip(0, 0, 0, 8, 0, 8, 10, 0, 10)).text())
        .contains("at the bottom", "choose the top edge, 2");
    assertThat(only(lip(1, 0, 0, 8, 0, 8, 10, 0, 10)).text()).contains("not level", "10 mm");
    assertThat(only(lip(2, 0, 0, 8, 0, 8, 10, 0, 10.1)).text()).contains("not level", "0.1 mm");
    assertThat(only(lip(3, 0, 0, 8, 0, 8, 14, 5, 14, 5, 10, 0, 10)).code())
        .isEqualTo("lip.mountEdge");
    assertThat(only(lip(4, 0, 0, 8, 0, 8, 14, 5, 14, 5, 10, 0, 10)).text())
        .contains("above it, up to 4 mm");
    List<Vertex> domed = new ArrayList<>(mm(0, 0, 8, 0, 8, 10, 0, 10));
    domed.set(2, new Vertex(8 * MM, 10 * MM, 0.2));
    assertThat(only(lip(2, List.of(), domed)).text()).contains("is an arc");
    assertThat(
            only(lip(
                    2,
                    List.of(Rounding.round(2, 4 * MM), Rounding.round(3, 4 * MM)),
                    mm(0, 0, 8, 0, 8, 10, 0, 10)))
                .text())
        .contains("used up by the roundings");
  }

  @Test
  void absurdSizesAreRefused() {
    assertThat(only(lip(2, 0, 0, 0.01, 0, 0.01, 0.02, 0, 0.02)).text()).contains("0.02 mm across");
    assertThat(only(lip(2, 0, 0, 8000, 0, 8000, 10000, 0, 10000)).text()).contains("10 m across");
  }

  @Test
  void bodiesMustStandApart() {
    DrawnOutline apart = new DrawnOutline(mm(-4, 0, -2, 0, -2, 2, -4, 2));
    assertThat(LipResolver.check(with(apart)).problems()).isEmpty();
    assertThat(only(with(new DrawnOutline(mm(-4, 0, 1, 0, 1, 2, -4, 2)))).text())
        .contains("overlaps or touches outline");
    assertThat(only(with(new DrawnOutline(mm(-4, 0, 0, 0, 0, 2, -4, 2)))).text())
        .contains("overlaps or touches outline");
    assertThat(only(with(new DrawnOutline(mm(2, 2, 4, 2, 4, 4, 2, 4)))).place())
        .isEqualTo("detached[0]");
    assertThat(only(with(apart, new DrawnOutline(mm(-4, 0, -2, 0, -2, 2.5, -4, 2.5)))).text())
        .contains("overlaps or touches detached[0]");
    assertThat(only(with(new DrawnOutline(mm(-4, 0, -0.001, 0, -0.001, 2, -4, 2)))).text())
        .contains("nearly touches");
    // above the mount edge
    assertThat(only(with(new DrawnOutline(mm(-4, 8, -2, 8, -2, 12, -4, 12)))).code())
        .isEqualTo("lip.mountEdge");
  }

  @Test
  void aDetachedBodyMayHangLowest() throws InputException {
    LipProfile p = LipResolver.resolve(with(new DrawnOutline(mm(-4, -1, -2, -1, -2, 2, -4, 2))));
    assertThat(p.detached().get(0).vertices().get(0)).isEqualTo(new Vertex(0, 0));
    assertThat(p.outline().vertices().get(0).y()).isCloseTo(MM, within(1e-15));
    assertThat(p.outline().vertices().get(0).x()).isCloseTo(4 * MM, within(1e-15));
  }

  @Test
  void thinWallsAndSlotsAreNoticed() {
    assertThat(noticeCodes(lip(2, 0, 0, 0.7, 0, 0.7, 10, 0, 10))).containsExactly("lip.thin");
    assertThat(noticeCodes(lip(6, 0, 0, 4, 0, 4, 5, 4.3, 5, 4.3, 0, 8, 0, 8, 10, 0, 10)))
        .containsExactly("lip.narrow");
    assertThat(noticeCodes(lip(2, 0, 0, 8, 0, 8, 10, 0, 10))).isEmpty();
    LipDrawing drawn = lip(2, 0, 0, 0.7, 0, 0.7, 10, 0, 10);
    LipFindings thin = LipResolver.check(drawn);
    Notice told = thin.notices().get(0);
    assertThat(told.kind()).isEqualTo(NoticeKind.LIP_THIN);
    assertThat(told.names()).containsExactly("");
    Vertex corner = drawn.body().vertices().get(told.numbers().get(0).intValue());
    assertThat(told.numbers().subList(1, 4)).containsExactly(corner.x(), corner.y(), 0.8e-3);
  }

  @Test
  void aShapeIsCheckedWithoutItsThinParts() {
    LipDrawing thin = lip(2, 0, 0, 0.7, 0, 0.7, 10, 0, 10);
    LipFindings full = LipResolver.check(thin);
    LipFindings shape = LipResolver.checkShape(thin);
    assertThat(full.thinWalls()).hasSize(1);
    assertThat(shape.notices()).isEmpty();
    assertThat(shape.withThinParts(full)).isEqualTo(full);
    assertThat(LipResolver.checkShape(lip(0, 0, 0, 8, 0, 8, 10, 0, 10)).profile()).isNull();
  }

  @Test
  void sliversAreRefused() {
    Problem p = only(lip(6, 0, 0, 4, 0, 4, 5, 4.002, 5, 4.002, 0, 8, 0, 8, 10, 0, 10));
    assertThat(p.code()).isEqualTo("lip.sliver");
    assertThat(p.text()).contains("the slot near corner", "less than 0.01 mm wide");
  }

  @Test
  void theProblemsTravelInTheException() {
    assertThatThrownBy(() -> LipResolver.resolve(lip(0, 0, 0, 8, 0, 8, 10, 0, 10)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("mountEdge: edge 0");
  }
}
