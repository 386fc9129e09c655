package hemline.viewer.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import hemline.shared.result.SectionResult;
import hemline.viewer.hard.SampleResults;
import hemline.viewer.picture.InventedStudies;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.arrow.flatbuf.Block;
import org.apache.arrow.flatbuf.Field;
import org.apache.arrow.flatbuf.Footer;
import org.apache.arrow.flatbuf.Message;
import org.apache.arrow.flatbuf.RecordBatch;
import org.apache.arrow.flatbuf.Type;
import org.junit.jupiter.api.Test;

/** The table of a batch, and that both files of it say the same. */
class BatchTableTest {
  private static final SectionResult PLAIN = InventedStudies.result("plain", 1e-3, 300, 0.7);

  private static BatchTable table() {
    return new BatchTable(
        List.of(
            new BatchRow(SampleResults.whole(), SampleResults.ASKED, "engine"),
            new BatchRow(PLAIN, SampleResults.ASKED, "engine")));
  }

  private static List<String> line(int line) {
    String[] lines = new String(table().csv(), UTF_8).split("\r\n");
    assertThat(lines).hasSize(3);
    return List.of(lines[line].split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1));
  }

  private static String cell(int line, String column) {
    return line(line).get(line(0).indexOf(column));
  }

  @Test
  void everyRowHasAllColumns() {
    assertThat(line(0)).doesNotHaveDuplicates().contains("leakFlowLow_m2_s", "lipForceY_N_m");
    assertThat(line(1)).hasSameSizeAs(line(0));
    assertThat(line(2)).hasSameSizeAs(line(0));
  }

  @Test
  void tellsFiguresBandsNoticesAndProvenance() {
    assertThat(cell(1, "lip")).isEqualTo("\"'=sum, \"\"lip\"\"\"");
    assertThat(Double.parseDouble(cell(1, "dischargeCoefficient"))).isEqualTo(1.0 / 3);
    assertThat(cell(1, "lipForceY_N_m")).isEqualTo("0.0");
    assertThat(Double.parseDouble(cell(1, "lipForceYHigh_N_m")))
        .isEqualTo(Math.hypot(0.1 + 0.2, 0.4));
    assertThat(cell(1, "notices"))
        .isEqualTo(
            "The solve broke off: A notice / with a bar. | The comparison solve with the flow model é"
                + " gave no usable flow: the model spread leaves it out.");
    assertThat(cell(1, "stageShares")).isEqualTo("0.25 0.75");
    assertThat(cell(1, "solver")).isEqualTo("engine");
    assertThat(cell(1, "lipDigest")).isEqualTo("abc");
    assertThat(cell(1, "mesh")).isEqualTo("coarse");
    assertThat(cell(2, "lipForceY_N_m")).isEmpty();
  }

  @Test
  void arrowSaysTheSame() {
    Map<String, List<Object>> arrow = read(table().arrow());
    assertThat(arrow.keySet()).containsExactlyElementsOf(line(0));
    for (BatchColumn column : table().columns()) {
      for (int row = 0; row < 2; row++) {
        Object value = arrow.get(column.name()).get(row);
        String cell = cell(row + 1, column.name());
        if (column.isText() && !cell.startsWith("\"'")) {
          assertThat(value).as(column.name()).isEqualTo(cell);
        } else if (!column.isText() && cell.isEmpty()) {
          assertThat(value).as(column.name()).isNull();
        } else if (!column.isText()) {
          assertThat(value).as(column.name()).isEqualTo(Double.valueOf(cell));
        }
      }
    }
    assertThat(arrow.get("lip").get(0)).isEqualTo("=sum, \"lip\"");
  }

  /** Reads a file by way of its footer, as readers of the format do. */
  private static Map<String, List<Object>> read(byte[] bytes) {
    ByteBuffer file = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(new String(bytes, 0, 6, UTF_8)).isEqualTo("ARROW1");
    assertThat(new String(bytes, bytes.length - 6, 6, UTF_8)).isEqualTo("ARROW1");
    int length = file.getInt(bytes.length - 10);
    int end = bytes.length - 10;
    Footer footer =
        Footer.getRootAsFooter(ByteBuffer.wrap(Arrays.copyOfRange(bytes, end - length, end)));
    assertThat(footer.recordBatchesLength()).isEqualTo(1);
    Block block = footer.recordBatches(0);
    int from = (int) block.offset();
    assertThat(from % 8).isZero();
    assertThat(file.getInt(from)).isEqualTo(-1);
    int size = file.getInt(from + 4);
    assertThat(block.metaDataLength()).isEqualTo(size + 8);
    Message message =
        Message.getRootAsMessage(
            ByteBuffer.wrap(Arrays.copyOfRange(bytes, from + 8, from + 8 + size)));
    RecordBatch batch = (RecordBatch) message.header(new RecordBatch());
    int body = from + block.metaDataLength();
    assertThat(message.bodyLength()).isEqualTo(block.bodyLength());
    Map<String, List<Object>> columns = new LinkedHashMap<>();
    int buffer = 0;
    for (int c = 0; c < footer.schema().fieldsLength(); c++) {
      Field field = footer.schema().fields(c);
      boolean text = field.typeType() == Type.Utf8;
      List<Object> values = new ArrayList<>();
      int valid = body + (int) batch.buffers(buffer).offset();
      boolean all = batch.buffers(buffer).length() == 0;
      int data = body + (int) batch.buffers(buffer + 1).offset();
      int texts = text ? body + (int) batch.buffers(buffer + 2).offset() : 0;
      for (int i = 0; i < batch.length(); i++) {
        if (text) {
          int a = file.getInt(data + 4 * i);
          values.add(new String(bytes, texts + a, file.getInt(data + 4 * i + 4) - a, UTF_8));
        } else {
          boolean there = all || (bytes[valid + i / 8] >> i % 8 & 1) == 1;
          values.add(there ? file.getDouble(data + 8 * i) : null);
        }
      }
      long nulls = values.stream().filter(v -> v == null).count();
      assertThat(batch.nodes(c).nullCount()).isEqualTo(nulls);
      columns.put(field.name(), values);
      buffer += text ? 3 : 2;
    }
    assertThat(batch.buffersLength()).isEqualTo(buffer);
    return columns;
  }
}
