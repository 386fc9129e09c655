package hemline.viewer.app;

import hemline.shared.problem.InputException;
import hemline.viewer.screen.NoticeStrip;
import java.nio.file.Path;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.animation.PauseTransition;
import javafx.application.Platform;
import javafx.util.Duration;

/**
 * Reads files without keeping the screen waiting. A file asked for later takes the place of one
 * that is still being read.
 */
final class Reading {
  /** A wait that nobody notices. */
  private static final Duration UNNOTICED = Duration.millis(400);

  private final NoticeStrip strip;
  private int asked;

  Reading(NoticeStrip strip) {
    this.strip = strip;
  }

  /** Reads something from a file. */
  interface Source<T> {
    T read() throws InputException;
  }

  /**
   * Reads in the background.
   *
   * @param file for what is told
   * @param taker gets it on the screen's thread, unless another file was asked for meanwhile
   */
  <T> void start(Path file, Source<T> source, Consumer<T> taker) {
    int number = ++asked;
    PauseTransition pause = new PauseTransition(UNNOTICED);
    pause.setOnFinished(e -> strip.tell("Reading " + file.getFileName() + " \u2026"));
    pause.play();
    beside(
        () -> end(source, taker),
        end -> {
          if (number == asked) {
            pause.stop();
            strip.hide();
            end.run();
          }
        });
  }

  /** Reads something beside the screen's thread and hands it over there, without a word. */
  static <T> void beside(Supplier<T> source, Consumer<T> taker) {
    Thread reader =
        new Thread(
            () -> {
              T read = source.get();
              Platform.runLater(() -> taker.accept(read));
            },
            "hemline-reading");
    reader.setDaemon(true);
    reader.start();
  }

  private <T> Runnable end(Source<T> source, Consumer<T> taker) {
    try {
      T read = source.read();
      return () -> taker.accept(read);
    } catch (InputException e) {
      return () -> strip.tell(e.problems().get(0).toString());
    }
  }
}
