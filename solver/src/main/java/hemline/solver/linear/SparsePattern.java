package hemline.solver.linear;

import java.util.Arrays;

/**
 * Sparsity of a square system whose unknowns are joined by links, stored by rows.
 *
 * <p>Row r holds the entries {@code rowStart[r] … rowStart[r + 1] - 1}; {@code column} names the
 * other unknown, in rising order, and from {@code upperStart[r]} on it is larger than r. The
 * diagonal is not part of the pattern. Links that join the same two unknowns share their entries.
 * The arrays are shared and must not be changed.
 */
public final class SparsePattern {
  public final int size;
  public final int[] rowStart;
  public final int[] upperStart;
  public final int[] column;

  /** Entry in the row of the link's first unknown. */
  public final int[] firstEntry;

  /** Entry in the row of the link's second unknown. */
  public final int[] secondEntry;

  /**
   * Builds the pattern.
   *
   * @param size number of unknowns
   * @param first first unknown of each link; not modified
   * @param second second unknown of each link, different from the first; not modified
   */
  public SparsePattern(int size, int[] first, int[] second) {
    this.size = size;
    int links = first.length;
    int[] start = new int[size + 1];
    for (int l = 0; l < links; l++) {
      start[first[l] + 1]++;
      start[second[l] + 1]++;
    }
    for (int r = 0; r < size; r++) {
      start[r + 1] += start[r];
    }
    int[] fill = Arrays.copyOf(start, size);
    int[] linkAt = new int[start[size]];
    for (int l = 0; l < links; l++) {
      linkAt[fill[first[l]]++] = l;
      linkAt[fill[second[l]]++] = l;
    }
    rowStart = new int[size + 1];
    upperStart = new int[size];
    int[] columns = new int[start[size]];
    firstEntry = new int[links];
    secondEntry = new int[links];
    int entries = 0;
    for (int r = 0; r < size; r++) {
      rowStart[r] = entries;
      sort(linkAt, start[r], start[r + 1], r, first, second);
      for (int k = start[r]; k < start[r + 1]; k++) {
        int l = linkAt[k];
        int other = other(l, r, first, second);
        if (entries == rowStart[r] || columns[entries - 1] != other) {
          columns[entries++] = other;
        }
        int entry = entries - 1;
        if (first[l] == r) {
          firstEntry[l] = entry;
        } else {
          secondEntry[l] = entry;
        }
      }
      upperStart[r] = rowStart[r];
      while (upperStart[r] < entries && columns[upperStart[r]] < r) {
        upperStart[r]++;
      }
    }
    rowStart[size] = entries;
    column = Arrays.copyOf(columns, entries);
  }

  private static int other(int link, int row, int[] first, int[] second) {
    return first[link] == row ? second[link] : first[link];
  }

  /** Sorts the few links of a row by their other unknown. */
  private static void sort(int[] links, int from, int to, int row, int[] first, int[] second) {
    for (int k = from + 1; k < to; k++) {
      int link = links[k];
      int key = other(link, row, first, second);
      int at = k - 1;
      while (at >= from && other(links[at], row, first, second) > key) {
        links[at + 1] = links[at];
        at--;
      }
      links[at + 1] = link;
    }
  }
}
