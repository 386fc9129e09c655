package hemline.viewer.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hemline.shared.file.LipFile;
import hemline.shared.profile.LipDrawing;
import hemline.viewer.draw.BoardView;
import hemline.viewer.edit.Corner;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What lies under a pixel, on a board of 10 pixels a millimetre with the lip's foot at its corner.
 */
class BoardFindTest {
  private static final BoardView VIEW = new BoardView(0, 0, 1e4, 800, 600);
  private LipDrawing lip;

  @BeforeEach
  void read() throws Exception {
    lip =
        LipFile.load(
                """
                {"schema": "hemline.lip/1", "name": "box and vane",
                 "outline": [[0, 0], [8, 0], [8, 10], [0, 10]], "mountEdge": 2,
                 "detached": [[[20, 1], [22, 1], [22, 5], [20, 5]]]}
                """,
                "box.json")
            .drawing();
  }

  /** Nine pixels around a corner; of two the nearer. */
  @Test
  void corners() {
    assertThat(BoardFind.corner(lip, VIEW, 80, 600)).isEqualTo(new Corner(0, 1));
    assertThat(BoardFind.corner(lip, VIEW, 80 + 8.9, 600)).isEqualTo(new Corner(0, 1));
    assertThat(BoardFind.corner(lip, VIEW, 80 + 9.1, 600)).isNull();
    assertThat(BoardFind.corner(lip, VIEW, 80, 500 - 6)).isEqualTo(new Corner(0, 2));
    assertThat(BoardFind.corner(lip, VIEW, 40, 550)).isNull();
    // part 1, 20 pixels wide
    assertThat(BoardFind.corner(lip, VIEW, 200 + 8, 590)).isEqualTo(new Corner(1, 0));
    assertThat(BoardFind.corner(lip, VIEW, 200 + 12, 590)).isEqualTo(new Corner(1, 1));
  }

  /** Six pixels beside an edge. */
  @Test
  void edges() {
    assertThat(BoardFind.edge(lip, VIEW, 40, 600 + 5.9)).isEqualTo(new Corner(0, 0));
    assertThat(BoardFind.edge(lip, VIEW, 40, 600 + 6.1)).isNull();
    assertThat(BoardFind.edge(lip, VIEW, 80 - 5.9, 550)).isEqualTo(new Corner(0, 1));
    assertThat(BoardFind.edge(lip, VIEW, 40, 550)).isNull();
    assertThat(BoardFind.edge(lip, VIEW, 222, 570)).isEqualTo(new Corner(1, 1));
  }

  @Test
  void middles() {
    Corner under = new Corner(0, 0);
    assertThat(BoardFind.middle(lip, under)[0]).isCloseTo(4e-3, within(1e-12));
    assertThat(BoardFind.middle(lip, under)[1]).isCloseTo(0, within(1e-12));
    assertThat(BoardFind.onMiddle(lip, VIEW, under, 40 + 8.9, 600)).isTrue();
    assertThat(BoardFind.onMiddle(lip, VIEW, under, 40 + 9.1, 600)).isFalse();
    assertThat(BoardFind.onMiddle(lip, VIEW, under, 40, 600 - 9.1)).isFalse();
    // the last edge leads back to the first corner
    assertThat(BoardFind.middle(lip, new Corner(0, 3))[1]).isCloseTo(5e-3, within(1e-12));
  }
}
