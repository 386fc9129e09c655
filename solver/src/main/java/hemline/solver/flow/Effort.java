package hemline.solver.flow;

/**
 * Work of one or several solves on one grid.
 *
 * @param iterations passes of the segregated iteration and Newton steps
 * @param linearIterations cycles of the pressure multigrid and Krylov steps within them
 */
record Effort(int iterations, int linearIterations) {
  static final Effort NONE = new Effort(0, 0);

  Effort plus(Effort other) {
    return new Effort(iterations + other.iterations, linearIterations + other.linearIterations);
  }
}
