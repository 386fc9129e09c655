package hemline.viewer.model;

import hemline.shared.problem.InputException;

/** Hears on the screen's thread how a lip was saved. */
public interface Saving {
  /** It is in its file. */
  void saved();

  /** Nothing was written; the lip still counts as unsaved. */
  void refused(InputException why);

  /** Another program changed the file since it was last read or written; nothing was written. */
  void changedOutside();
}
