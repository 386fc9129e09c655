package hemline.viewer.report;

import java.util.List;

/** The files of a batch. */
public final class BatchFiles {
  private BatchFiles() {}

  /** Writes {@code batch.csv}, {@code batch.arrow} and {@code batch.json}. */
  public static void write(ResultFolder folder, List<BatchRow> rows, String document) {
    BatchTable table = new BatchTable(rows);
    folder.write("batch.csv", table::csv);
    folder.write("batch.arrow", table::arrow);
    folder.write("batch.json", document);
  }
}
