package hemline.viewer.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import hemline.shared.result.SolveStatus;
import hemline.solver.study.BatchAnswer;
import hemline.solver.study.RunOptions;
import hemline.viewer.format.Version;
import java.util.List;

/** JSON document of a batch: schema {@code hemline.batch/1}. The figures are in its table. */
public final class BatchDocument {
  private BatchDocument() {}

  /**
   * The document as text.
   *
   * @param rows of the whole batch
   * @param solver fingerprint of the solver
   * @param seconds wall time
   */
  public static String text(
      BatchAnswer answer, List<BatchRow> rows, RunOptions options, String solver, double seconds) {
    ObjectNode document = JsonText.NODES.objectNode();
    document.put("schema", "hemline.batch/1");
    document.put("complete", answer.complete());
    document.put("sections", rows.size());
    document.put("lips", rows.stream().map(row -> row.origin().lip()).distinct().count());
    ObjectNode statuses = document.putObject("statuses");
    for (SolveStatus status : SolveStatus.values()) {
      statuses.put(status.key(), rows.stream().filter(r -> r.result().status() == status).count());
    }
    document.put("found", answer.found());
    document.put("solved", answer.solved());
    document.put("mesh", options.level().key());
    document.put("flowModel", options.closure().key());
    document.put("modelSpread", options.modelSpread());
    ObjectNode made = document.putObject("madeBy");
    made.put("version", Version.TEXT);
    made.put("solver", solver);
    var columns = document.putArray("columns");
    for (BatchColumn column : BatchColumn.all()) {
      ObjectNode node = columns.addObject();
      node.put("name", column.name());
      node.put("type", column.isText() ? "text" : "number");
      node.put("unit", column.unit());
      node.put("meaning", column.meaning());
    }
    JsonText.number(document, "seconds", seconds);
    return JsonText.of(document);
  }
}
