package hemline.solver.plenum;

/**
 * What the balance takes for known though nobody measured it; to be moved when it is asked how much
 * hangs on it.
 *
 * @param leak factor on all leaks under the lips
 * @param lipForce factor on the force of the air on the lips
 * @param corner gaps by which the seal counts longer for each right angle of a corner
 * @param valveJet share of the valve's jet that strikes the ground
 */
record Guessed(double leak, double lipForce, double corner, double valveJet) {
  /** As the figures take it. */
  static final Guessed USUAL = new Guessed(1, 1, 1, 0.5);

  Guessed withLeak(double factor) {
    return new Guessed(factor, lipForce, corner, valveJet);
  }

  Guessed withLipForce(double factor) {
    return new Guessed(leak, factor, corner, valveJet);
  }

  Guessed withCorner(double gaps) {
    return new Guessed(leak, lipForce, gaps, valveJet);
  }

  Guessed withValveJet(double share) {
    return new Guessed(leak, lipForce, corner, share);
  }
}
