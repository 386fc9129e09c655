package hemline.viewer.page;

import hemline.shared.result.SectionResult;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** A table of a page. Columns of bare numbers lean to the right, all others to the left. */
public final class PageTable {
  /** A number, perhaps with a short unit, without a band. */
  private static final Pattern NUMBER =
      Pattern.compile("[+\u2212-]?\\d[\\d.]*(e\u2212?\\d+)?( ?(%|\\p{L}{1,3}))?");

  private final List<String> head;
  private final List<Row> rows = new ArrayList<>();
  private boolean bare;
  private boolean folds;
  private int details;

  /**
   * A row.
   *
   * @param cells as many as there are columns; one for a group
   * @param kind what it is
   * @param help what it means, for a reader who points at it; empty for none
   * @param flow the section it is about, whose flow a reader may ask for; null for none
   */
  public record Row(List<String> cells, Kind kind, String help, @Nullable SectionResult flow) {}

  /** What a row is. */
  public enum Kind {
    PLAIN,
    /** Stands out from the others. */
    MARKED,
    /** Names the rows that follow, across all columns. */
    GROUP
  }

  private PageTable(List<String> head) {
    this.head = head;
  }

  /** A table with these columns; names may be empty. */
  public static PageTable of(String... head) {
    return new PageTable(List.of(head));
  }

  /** A table with these columns; names may be empty. */
  public static PageTable of(List<String> head) {
    return new PageTable(List.copyOf(head));
  }

  /** The names of the columns are details. */
  public PageTable bare() {
    bare = true;
    return this;
  }

  /** Columns that the line of a terminal does not take go on below. */
  public PageTable folds() {
    folds = true;
    return this;
  }

  boolean folding() {
    return folds;
  }

  /** The last columns are details. */
  public PageTable details(int columns) {
    details = columns;
    return this;
  }

  public PageTable row(String... cells) {
    return row(List.of(cells), false);
  }

  /** Adds a row that may stand out. */
  public PageTable row(List<String> cells, boolean marked) {
    if (cells.size() != head.size()) {
      throw new IllegalArgumentException(
          "row of " + cells.size() + " cells in a table of " + head.size() + " columns");
    }
    rows.add(new Row(List.copyOf(cells), marked ? Kind.MARKED : Kind.PLAIN, "", null));
    return this;
  }

  /** Says what the last row means. */
  PageTable help(String text) {
    Row last = rows.remove(rows.size() - 1);
    rows.add(new Row(last.cells(), last.kind(), text, last.flow()));
    return this;
  }

  /** Says which flow the last row is about. */
  PageTable flow(@Nullable SectionResult section) {
    Row last = rows.remove(rows.size() - 1);
    rows.add(new Row(last.cells(), last.kind(), last.help(), section));
    return this;
  }

  /** Names the rows that follow. */
  public PageTable group(String name) {
    rows.add(new Row(List.of(name), Kind.GROUP, "", null));
    return this;
  }

  public List<Row> rows() {
    return List.copyOf(rows);
  }

  /** Names of the columns; empty where there are none to show. */
  List<String> head(boolean roomy) {
    boolean none = bare && !roomy || head.stream().allMatch(String::isEmpty);
    return none ? List.of() : head.subList(0, columns(roomy));
  }

  /** The same for a window. */
  public List<String> head() {
    return head(true);
  }

  /** Number of columns. */
  public int columns() {
    return head.size();
  }

  int columns(boolean roomy) {
    return roomy ? head.size() : head.size() - details;
  }

  /** True for a column of numbers. */
  public boolean number(int column) {
    List<String> cells =
        rows.stream()
            .filter(row -> row.kind() != Kind.GROUP)
            .map(row -> row.cells().get(column))
            .filter(cell -> !cell.isEmpty() && !cell.equals("-"))
            .toList();
    return !cells.isEmpty() && cells.stream().allMatch(cell -> NUMBER.matcher(cell).matches());
  }

  /** Columns of numbers, for all columns. */
  boolean[] numbers() {
    boolean[] numbers = new boolean[head.size()];
    IntStream.range(0, numbers.length).forEach(c -> numbers[c] = number(c));
    return numbers;
  }
}
