package hemline.viewer.report;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The one table of a batch: a line a section, in SI units, as CSV and as Arrow. */
final class BatchTable {
  private final List<BatchColumn> columns = BatchColumn.all();
  private final List<BatchRow> rows;

  BatchTable(List<BatchRow> rows) {
    this.rows = List.copyOf(rows);
  }

  List<BatchColumn> columns() {
    return columns;
  }

  /** As comma-separated text (RFC 4180); a missing number is an empty cell. */
  byte[] csv() {
    CsvText out =
        new CsvText(columns.stream().map(BatchColumn::name).collect(Collectors.joining(",")));
    for (BatchRow row : rows) {
      out.row(columns.stream().map(column -> cell(column, row)).toList());
    }
    return out.toString().getBytes(UTF_8);
  }

  /** As a file of the Arrow IPC format. */
  byte[] arrow() {
    ArrowFile file = new ArrowFile(rows.size());
    for (BatchColumn column : columns) {
      if (column.isText()) {
        file.texts(column.name(), rows.stream().map(column::text).toList());
      } else {
        file.numbers(column.name(), rows.stream().mapToDouble(column::number).toArray());
      }
    }
    return file.bytes();
  }

  private static Object cell(BatchColumn column, BatchRow row) {
    double value = column.number(row);
    return column.isText()
        ? column.text(row)
        : Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
