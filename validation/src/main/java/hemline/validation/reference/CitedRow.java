package hemline.validation.reference;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * One row of a cited table.
 *
 * @param cells text by column, as it stands in the table
 */
public record CitedRow(Map<String, String> cells) {
  public CitedRow {
    cells = Map.copyOf(cells);
  }

  /**
   * Text of a cell; may be empty.
   *
   * @throws IllegalArgumentException when the table has no such column
   */
  public String text(String column) {
    String cell = cells.get(column);
    if (cell == null) {
      throw new IllegalArgumentException(
          "no column " + column + "; there are " + cells.keySet().stream().sorted().toList());
    }
    return cell;
  }

  /** Text of a cell, or another text where the table has no such column or the cell is empty. */
  public String text(String column, String otherwise) {
    String cell = cells.getOrDefault(column, "");
    return cell.isEmpty() ? otherwise : cell;
  }

  /**
   * Number in a cell.
   *
   * @throws IllegalArgumentException when the cell is empty or holds no number
   */
  public double number(String column) {
    try {
      return Double.parseDouble(text(column));
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          "column " + column + " holds no number but \"" + text(column) + "\"", e);
    }
  }

  /** Number in a cell, or another where the table has no such column or the cell is empty. */
  public double number(String column, double otherwise) {
    return cells.getOrDefault(column, "").isEmpty() ? otherwise : number(column);
  }

  /** Number in a cell that may be empty. */
  public OptionalDouble optionalNumber(String column) {
    return text(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
  }
}
