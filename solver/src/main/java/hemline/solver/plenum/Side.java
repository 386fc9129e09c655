package hemline.solver.plenum;

/**
 * Where in its band a leak is taken. All leaks of a machine lean the same way: they come from the
 * same solver and often the same lip, so their errors do not cancel.
 */
enum Side {
  VALUE,
  LOW,
  HIGH
}
