package hemline.solver.grid;

import java.util.Arrays;

/** A list of ints that grows. */
final class IntList {
  private int[] data = new int[64];
  private int size;

  int add(int value) {
    if (size == data.length) {
      data = Arrays.copyOf(data, 2 * size);
    }
    data[size] = value;
    return size++;
  }

  int get(int index) {
    return data[index];
  }

  void set(int index, int value) {
    data[index] = value;
  }

  int size() {
    return size;
  }

  void clear() {
    size = 0;
  }
}
