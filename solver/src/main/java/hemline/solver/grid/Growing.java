package hemline.solver.grid;

import java.util.Arrays;

/** Growing lists of primitive numbers. */
final class Growing {
  private Growing() {}

  /** Growing list of ints. */
  static final class Ints {
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

    int[] toArray() {
      return Arrays.copyOf(data, size);
    }
  }

  /** Growing list of doubles. */
  static final class Doubles {
    private double[] data = new double[64];
    private int size;

    int add(double value) {
      if (size == data.length) {
        data = Arrays.copyOf(data, 2 * size);
      }
      data[size] = value;
      return size++;
    }

    double get(int index) {
      return data[index];
    }

    void set(int index, double value) {
      data[index] = value;
    }

    void plus(int index, double value) {
      data[index] += value;
    }

    int size() {
      return size;
    }

    double[] toArray() {
      return Arrays.copyOf(data, size);
    }
  }
}
