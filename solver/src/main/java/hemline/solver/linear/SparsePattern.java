package hemline.solver.linear;

import java.util.Arrays;

/**
 * Sparsity of a square system whose unknowns are joined by links, stored by rows.
 *
 * <p>Row r holds the entries {@code rowStart[r] … rowStart[r + 1] - 1}; {@code column} names the
 * other unknown. The diagonal is not part of the pattern. Links that join the same two unknowns
 * share their entries. The arrays are shared and must not be changed.
 */
public final class SparsePattern {
  public final int size;
  public final int[] rowStart;
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
    int[] columns = new int[start[size]];
    firstEntry = new int[links];
    secondEntry = new int[links];
    int entries = 0;
    for (int r = 0; r < size; r++) {
      rowStart[r] = entries;
      for (int k = start[r]; k < start[r + 1]; k++) {
        int l = linkAt[k];
        int other = first[l] == r ? second[l] : first[l];
        int entry = rowStart[r];
        while (entry < entries && columns[entry] != other) {
          entry++;
        }
        if (entry == entries) {
          columns[entries++] = other;
        }
        if (first[l] == r) {
          firstEntry[l] = entry;
        } else {
          secondEntry[l] = entry;
        }
      }
    }
    rowStart[size] = entries;
    column = Arrays.copyOf(columns, entries);
  }
}
