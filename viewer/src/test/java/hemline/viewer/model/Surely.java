package hemline.viewer.model;

import hemline.shared.problem.InputException;

/** A lip that must be saved; anything else ends the test. */
public final class Surely implements Saving {
  private final Runnable then;

  /** Goes on when the lip is in its file. */
  public Surely(Runnable then) {
    this.then = then;
  }

  @Override
  public void saved() {
    then.run();
  }

  @Override
  public void refused(InputException why) {
    throw new IllegalStateException(why);
  }

  @Override
  public void changedOutside() {
    throw new IllegalStateException("changed by another program");
  }
}
