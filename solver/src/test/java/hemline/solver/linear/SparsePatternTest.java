package hemline.solver.linear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SparsePatternTest {

  @Test
  void doubleLinksShareTheirEntries() {
    SparsePattern p = new SparsePattern(3, new int[] {0, 1, 1}, new int[] {1, 0, 2});
    assertThat(p.rowStart).containsExactly(0, 1, 3, 4);
    assertThat(p.column).containsExactly(1, 0, 2, 1);
    assertThat(p.firstEntry[0]).isEqualTo(p.secondEntry[1]).isEqualTo(0);
    assertThat(p.secondEntry[0]).isEqualTo(p.firstEntry[1]).isEqualTo(1);
  }

  @Test
  void unknownsWithoutLinksHaveEmptyRows() {
    SparsePattern p = new SparsePattern(4, new int[] {3}, new int[] {1});
    assertThat(p.rowStart).containsExactly(0, 0, 1, 1, 2);
    assertThat(p.column).containsExactly(3, 1);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void rowsHoldEveryNeighbourOnce(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int size = 2 + random.nextInt(40);
    RandomNetwork net = RandomNetwork.of(size, random.nextInt(80), random);
    int[] firstBefore = net.first.clone();
    int[] secondBefore = net.second.clone();
    SparsePattern p = new SparsePattern(size, net.first, net.second);
    assertThat(net.first).isEqualTo(firstBefore);
    assertThat(net.second).isEqualTo(secondBefore);
    for (int r = 0; r < size; r++) {
      TreeSet<Integer> neighbours = new TreeSet<>();
      for (int l = 0; l < net.first.length; l++) {
        if (net.first[l] == r) {
          neighbours.add(net.second[l]);
        } else if (net.second[l] == r) {
          neighbours.add(net.first[l]);
        }
      }
      assertThat(Arrays.copyOfRange(p.column, p.rowStart[r], p.rowStart[r + 1]))
          .as("seed %d, row %d", seed, r)
          .isEqualTo(neighbours.stream().mapToInt(Integer::intValue).toArray());
      assertThat(p.upperStart[r] - p.rowStart[r])
          .as("seed %d, row %d, smaller neighbours", seed, r)
          .isEqualTo(neighbours.headSet(r).size());
    }
    for (int l = 0; l < net.first.length; l++) {
      assertThat(p.firstEntry[l])
          .as("seed %d, link %d", seed, l)
          .isBetween(p.rowStart[net.first[l]], p.rowStart[net.first[l] + 1] - 1);
      assertThat(p.secondEntry[l])
          .as("seed %d, link %d", seed, l)
          .isBetween(p.rowStart[net.second[l]], p.rowStart[net.second[l] + 1] - 1);
      assertThat(p.column[p.firstEntry[l]]).isEqualTo(net.second[l]);
      assertThat(p.column[p.secondEntry[l]]).isEqualTo(net.first[l]);
    }
  }
}
