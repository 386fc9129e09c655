package hemline.viewer.report;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.List;
import java.util.stream.Collectors;

/** The one table of a batch: a line a section, in SI units, as CSV and as Arrow. */
final class BatchTable {
  private static final String END = "\r\n";

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
    StringBuilder out = new StringBuilder();
    out.append(columns.stream().map(BatchColumn::name).collect(Collectors.joining(",")));
    out.append(END);
    for (BatchRow row : rows) {
      for (int c = 0; c < columns.size(); c++) {
        out.append(c == 0 ? "" : ",").append(cell(columns.get(c), row));
      }
      out.append(END);
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

  private static String cell(BatchColumn column, BatchRow row) {
    if (column.isText()) {
      return CsvText.cell(column.text(row));
    }
    double value = column.number(row);
    return Double.isNaN(value) ? "" : Double.toString(value == 0 ? 0.0 : value);
  }
}
