package hemline.viewer.page;

import hemline.shared.problem.Notice;
import hemline.viewer.format.NoticeWords;
import hemline.viewer.picture.Picture;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * What a result says to people: blocks one below the other. Terminal, report and window are faces
 * that show the same page, so they cannot say different things.
 */
public final class Page {
  private final String title;
  private final List<Consumer<Face>> blocks = new ArrayList<>();
  private boolean aside;

  /** What a text is. */
  public enum Tone {
    /** Conditions and remarks. */
    QUIET,
    PLAIN,
    /** What follows from the figures. */
    FINDING,
    /** What a reader of the figures must know. */
    NOTICE,
    /** What can hurt somebody. */
    CAUTION
  }

  /** A place where pages are shown. */
  public interface Face {
    /** True where pictures can be shown and there is room for details. */
    boolean roomy();

    void heading(String text);

    void text(String text, Tone tone);

    void table(PageTable table);

    /**
     * A picture.
     *
     * @param description for those who cannot see it
     */
    void plot(Supplier<? extends Picture> picture, String description);
  }

  public Page(String title) {
    this.title = title;
  }

  public String title() {
    return title;
  }

  /** Shows all blocks below the title. */
  public void show(Face face) {
    blocks.forEach(block -> block.accept(face));
  }

  private Page add(Consumer<Face> block) {
    boolean details = aside;
    blocks.add(
        face -> {
          if (!details || face.roomy()) {
            block.accept(face);
          }
        });
    return this;
  }

  /** What follows is details, shown only where there is room. */
  public Page details() {
    aside = true;
    return this;
  }

  /** What follows is shown everywhere again. */
  public Page everywhere() {
    aside = false;
    return this;
  }

  public Page heading(String text) {
    return add(face -> face.heading(text));
  }

  /** A paragraph; nothing for an empty one. */
  public Page text(String text, Tone tone) {
    return text.isBlank() ? this : add(face -> face.text(text, tone));
  }

  public Page plain(String text) {
    return text(text, Tone.PLAIN);
  }

  public Page quiet(String text) {
    return text(text, Tone.QUIET);
  }

  /** Paragraphs in the same tone. */
  public Page texts(Collection<String> texts, Tone tone) {
    texts.forEach(text -> text(text, tone));
    return this;
  }

  /** A table; nothing for one without rows. */
  public Page table(PageTable table) {
    return table.rows().isEmpty() ? this : add(face -> face.table(table));
  }

  public Page plot(Supplier<? extends Picture> picture, String description) {
    return add(
        face -> {
          if (face.roomy()) {
            face.plot(picture, description);
          }
        });
  }

  /** What a reader must know, below a heading; nothing where there is none. */
  public Page toKnow(Collection<String> notices) {
    return notices.isEmpty() ? this : heading("To know").texts(notices, Tone.NOTICE);
  }

  /** The same for notices of a result. */
  public Page notices(List<Notice> notices) {
    return toKnow(NoticeWords.of(notices));
  }
}
