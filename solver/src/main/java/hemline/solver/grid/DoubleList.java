package hemline.solver.grid;

import java.util.Arrays;

/** A list of doubles that grows. */
final class DoubleList {
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
