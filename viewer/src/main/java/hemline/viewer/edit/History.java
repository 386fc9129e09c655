package hemline.viewer.edit;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * States of a drawing with undo and redo without limit.
 *
 * <p>Between {@link #begin} and {@link #end} all changes count as one step, such as a drag.
 *
 * @param <T> an immutable state
 */
public final class History<T> {
  private final Deque<T> past = new ArrayDeque<>();
  private final Deque<T> future = new ArrayDeque<>();
  private T now;
  private boolean open;
  private boolean changed;

  public History(T first) {
    now = first;
  }

  public T now() {
    return now;
  }

  /** Takes a new state; one that equals the present one is no step. */
  public void put(T next) {
    if (next.equals(now)) {
      return;
    }
    if (!open || !changed) {
      past.push(now);
      future.clear();
      changed = true;
    }
    now = next;
  }

  /** Starts a step of several changes. */
  public void begin() {
    open = true;
    changed = false;
  }

  /** Ends the step; one that led back to where it began is forgotten. */
  public void end() {
    if (open && changed && now.equals(past.peek())) {
      now = past.pop();
    }
    open = false;
    changed = false;
  }

  public boolean canUndo() {
    return !past.isEmpty();
  }

  public boolean canRedo() {
    return !future.isEmpty();
  }

  /** Goes one step back, if there is one. */
  public T undo() {
    end();
    if (canUndo()) {
      future.push(now);
      now = past.pop();
    }
    return now;
  }

  /** Goes one step forward again, if there is one. */
  public T redo() {
    end();
    if (canRedo()) {
      past.push(now);
      now = future.pop();
    }
    return now;
  }

  /** Forgets all steps and begins with another state. */
  public void restart(T first) {
    past.clear();
    future.clear();
    open = false;
    changed = false;
    now = first;
  }
}
