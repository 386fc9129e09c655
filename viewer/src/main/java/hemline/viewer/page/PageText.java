package hemline.viewer.page;

import hemline.viewer.page.Page.Tone;
import hemline.viewer.picture.Picture;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** A page as lines of text for a terminal; without pictures and details. */
public final class PageText implements Page.Face {
  /** Most characters of a line, but for tables with long words. */
  private static final int WIDTH = 100;

  private static final String INDENT = "  ";

  private final List<String> lines = new ArrayList<>();
  private String indent = "";
  private boolean apart;

  private PageText() {}

  /** Lines of a page. */
  public static List<String> lines(Page page) {
    PageText text = new PageText();
    text.lines.add(page.title());
    page.show(text);
    return text.lines;
  }

  /** A table alone, a line a row. */
  public static List<String> lines(PageTable table) {
    PageText text = new PageText();
    text.part(table, 0, table.columns(false));
    return text.lines.stream().map(line -> line.substring(INDENT.length())).toList();
  }

  @Override
  public boolean roomy() {
    return false;
  }

  @Override
  public void heading(String text) {
    lines.add("");
    lines.add(text);
    indent = INDENT;
    apart = false;
  }

  @Override
  public void text(String text, Tone tone) {
    separate(apart && indent.isEmpty());
    String sign = tone == Tone.CAUTION ? "! " : tone == Tone.NOTICE ? "- " : "";
    lines.addAll(wrapped(text, indent + sign, indent + INDENT, WIDTH));
  }

  @Override
  public void table(PageTable table) {
    separate(indent.isEmpty() || apart);
    int columns = table.columns(false);
    int from = 0;
    while (from < columns) {
      separate(from > 0);
      from = part(table, from, columns);
    }
    apart = true;
  }

  @Override
  public void plot(Supplier<? extends Picture> picture, String description) {
    throw new IllegalStateException("a text has no pictures");
  }

  private void separate(boolean yes) {
    if (yes) {
      lines.add("");
    }
    apart = false;
  }

  /** As many columns as belong together, the first one always; answers with the next column. */
  private int part(PageTable table, int from, int end) {
    List<String> head = table.head(false);
    boolean[] numbers = table.numbers();
    List<Integer> shown = new ArrayList<>(List.of(0));
    List<Integer> widths = new ArrayList<>(List.of(width(table, head, 0)));
    int room = WIDTH - INDENT.length() - widths.get(0);
    int next = Math.max(1, from);
    while (next < end) {
      int width = width(table, head, next);
      room -= width + INDENT.length();
      if (room < 0 && shown.size() > 1 && table.folding()) {
        break;
      }
      shown.add(next++);
      widths.add(width);
    }
    if (!head.isEmpty()) {
      line(head, shown, widths, numbers);
    }
    for (PageTable.Row row : table.rows()) {
      if (row.kind() == PageTable.Kind.GROUP) {
        lines.add(row.cells().get(0));
      } else {
        line(row.cells(), shown, widths, numbers);
      }
    }
    return next;
  }

  private static int width(PageTable table, List<String> head, int column) {
    int width = head.isEmpty() ? 0 : length(head.get(column));
    for (PageTable.Row row : table.rows()) {
      if (row.kind() != PageTable.Kind.GROUP) {
        width = Math.max(width, length(row.cells().get(column)));
      }
    }
    return width;
  }

  private void line(
      List<String> cells, List<Integer> shown, List<Integer> widths, boolean[] numbers) {
    StringBuilder line = new StringBuilder();
    for (int k = 0; k < shown.size(); k++) {
      String cell = cells.get(shown.get(k));
      String pad = " ".repeat(widths.get(k) - length(cell));
      line.append(INDENT).append(numbers[shown.get(k)] ? pad + cell : cell + pad);
    }
    lines.add(line.toString().stripTrailing());
  }

  /**
   * A text broken into lines between words.
   *
   * @param first begins the first line
   * @param others begins the other lines
   * @param width most characters of a line; a longer word stays whole
   */
  static List<String> wrapped(String text, String first, String others, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.strip().split("\\s+", -1)) {
      if (!empty && length(line.toString()) + 1 + length(word) > width) {
        lines.add(line.toString());
        line = new StringBuilder(others);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
    return lines;
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}
