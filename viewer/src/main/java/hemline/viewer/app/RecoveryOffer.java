package hemline.viewer.app;

import hemline.viewer.model.LipDocument;
import hemline.viewer.project.RescueStore;
import hemline.viewer.screen.BenchScreen;
import hemline.viewer.screen.NoticeStrip;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;

/** Offers drawings that were left unsaved by a program that broke off. */
final class RecoveryOffer {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);

  private final Project project;
  private final LipDocument document;
  private final BenchScreen screen;
  private final NoticeStrip strip;
  private final Consumer<Runnable> guard;

  /**
   * Nothing is offered yet.
   *
   * @param guard asks for an unsaved lip before another takes its place
   */
  RecoveryOffer(Project project, BenchScreen screen, NoticeStrip strip, Consumer<Runnable> guard) {
    this.project = project;
    this.document = project.document();
    this.screen = screen;
    this.strip = strip;
    this.guard = guard;
  }

  /** Offers the newest drawing that was left unsaved by a program that broke off. */
  void offer() {
    Path folder = project.folder().path();
    Reading.beside(
        document::left,
        left -> {
          if (folder.equals(project.folder().path())) {
            offer(left);
          }
        });
  }

  private void offer(RescueStore.Left left) {
    if (left.drawings().isEmpty()) {
      if (!left.refused().isEmpty()) {
        strip.tell(left.refused().get(0).toString());
      }
      return;
    }
    RescueStore.Rescued newest = left.drawings().get(0);
    Map<String, Runnable> answers = new LinkedHashMap<>();
    answers.put(
        "Recover",
        () ->
            guard.accept(
                () -> {
                  document.recover(newest);
                  screen.board().fit();
                }));
    answers.put(
        "Throw away",
        () -> {
          document.forget(newest);
          offer();
        });
    answers.put("Later", () -> {});
    strip.ask(
        "\u201c"
            + newest.drawing().name()
            + (newest.elsewhere().isEmpty()
                ? "\u201d was left with changes when the program broke off ("
                : "\u201d is not saved on " + newest.elsewhere() + ", where it may be open still (")
            + TIME.format(newest.when().atZone(ZoneId.systemDefault()))
            + ")."
            + (left.refused().isEmpty() ? "" : " " + left.refused().get(0)),
        answers);
  }
}
