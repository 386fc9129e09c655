package hemline.viewer.report;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.google.flatbuffers.FlatBufferBuilder;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import org.apache.arrow.flatbuf.Block;
import org.apache.arrow.flatbuf.Buffer;
import org.apache.arrow.flatbuf.Field;
import org.apache.arrow.flatbuf.FieldNode;
import org.apache.arrow.flatbuf.FloatingPoint;
import org.apache.arrow.flatbuf.Footer;
import org.apache.arrow.flatbuf.Message;
import org.apache.arrow.flatbuf.MessageHeader;
import org.apache.arrow.flatbuf.MetadataVersion;
import org.apache.arrow.flatbuf.Precision;
import org.apache.arrow.flatbuf.RecordBatch;
import org.apache.arrow.flatbuf.Schema;
import org.apache.arrow.flatbuf.Type;
import org.apache.arrow.flatbuf.Utf8;

/**
 * A table as one file of the Arrow IPC format: one record batch of float64 and utf8 columns.
 *
 * <p>Source: Apache Arrow Columnar Format 1.5, "IPC File Format". The format's own flatbuffer
 * classes write the metadata; the numbers are laid out here.
 */
final class ArrowFile {
  private static final byte[] MAGIC = "ARROW1".getBytes(UTF_8);
  private static final int ALIGN = 8;
  private static final int CONTINUATION = 0xFFFFFFFF;

  /** A column: its nulls and its buffers as the format lays them out. */
  private record Column(String name, boolean text, int nulls, List<byte[]> buffers) {}

  private final int rows;
  private final List<Column> columns = new ArrayList<>();

  ArrowFile(int rows) {
    this.rows = rows;
  }

  /** Adds a column of numbers; NaN becomes null. */
  void numbers(String name, double[] values) {
    byte[] valid = new byte[(rows + 7) / 8];
    ByteBuffer data = little(rows * Double.BYTES);
    int nulls = 0;
    for (int i = 0; i < rows; i++) {
      if (Double.isNaN(values[i])) {
        nulls++;
        data.putDouble(0);
      } else {
        valid[i / 8] |= (byte) (1 << i % 8);
        data.putDouble(values[i] == 0 ? 0.0 : values[i]);
      }
    }
    columns.add(
        new Column(name, false, nulls, List.of(nulls == 0 ? new byte[0] : valid, data.array())));
  }

  /** Adds a column of texts, none of them null. */
  void texts(String name, List<String> values) {
    ByteBuffer offsets = little((rows + 1) * Integer.BYTES);
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    offsets.putInt(0);
    for (String value : values) {
      data.writeBytes(value.getBytes(UTF_8));
      offsets.putInt(data.size());
    }
    columns.add(
        new Column(name, true, 0, List.of(new byte[0], offsets.array(), data.toByteArray())));
  }

  /** The whole file. */
  byte[] bytes() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(MAGIC);
    out.writeBytes(new byte[ALIGN - MAGIC.length]);
    encapsulate(out, schemaMessage());
    byte[] body = body();
    int from = out.size();
    int metadata = encapsulate(out, batchMessage(body.length));
    out.writeBytes(body);
    out.writeBytes(little(2 * Integer.BYTES).putInt(CONTINUATION).putInt(0).array());
    byte[] footer = footer(from, metadata, body.length);
    out.writeBytes(footer);
    out.writeBytes(little(Integer.BYTES).putInt(footer.length).array());
    out.writeBytes(MAGIC);
    return out.toByteArray();
  }

  /** Writes a message with its length before it and answers with the length of both. */
  private static int encapsulate(ByteArrayOutputStream out, byte[] message) {
    int padded = padded(message.length);
    out.writeBytes(little(2 * Integer.BYTES).putInt(CONTINUATION).putInt(padded).array());
    out.writeBytes(message);
    out.writeBytes(new byte[padded - message.length]);
    return 2 * Integer.BYTES + padded;
  }

  private byte[] schemaMessage() {
    FlatBufferBuilder to = new FlatBufferBuilder();
    int schema = schema(to);
    return finish(to, MessageHeader.Schema, schema, 0);
  }

  private int schema(FlatBufferBuilder to) {
    int[] fields = columns.stream().mapToInt(column -> field(to, column)).toArray();
    int vector = Schema.createFieldsVector(to, fields);
    Schema.startSchema(to);
    Schema.addFields(to, vector);
    return Schema.endSchema(to);
  }

  private static int field(FlatBufferBuilder to, Column column) {
    int name = to.createString(column.name());
    int children = Field.createChildrenVector(to, new int[0]);
    int type;
    if (column.text()) {
      Utf8.startUtf8(to);
      type = Utf8.endUtf8(to);
    } else {
      type = FloatingPoint.createFloatingPoint(to, Precision.DOUBLE);
    }
    Field.startField(to);
    Field.addName(to, name);
    Field.addNullable(to, !column.text());
    Field.addTypeType(to, column.text() ? Type.Utf8 : Type.FloatingPoint);
    Field.addType(to, type);
    Field.addChildren(to, children);
    return Field.endField(to);
  }

  private byte[] batchMessage(long bodyLength) {
    FlatBufferBuilder to = new FlatBufferBuilder();
    RecordBatch.startNodesVector(to, columns.size());
    // vectors are built from their ends
    for (int c = columns.size() - 1; c >= 0; c--) {
      FieldNode.createFieldNode(to, rows, columns.get(c).nulls());
    }
    int nodes = to.endVector();
    List<byte[]> buffers = buffers();
    long[] from = new long[buffers.size()];
    for (int b = 1; b < from.length; b++) {
      from[b] = from[b - 1] + padded(buffers.get(b - 1).length);
    }
    RecordBatch.startBuffersVector(to, buffers.size());
    for (int b = from.length - 1; b >= 0; b--) {
      Buffer.createBuffer(to, from[b], buffers.get(b).length);
    }
    int places = to.endVector();
    RecordBatch.startRecordBatch(to);
    RecordBatch.addLength(to, rows);
    RecordBatch.addNodes(to, nodes);
    RecordBatch.addBuffers(to, places);
    return finish(to, MessageHeader.RecordBatch, RecordBatch.endRecordBatch(to), bodyLength);
  }

  private static byte[] finish(FlatBufferBuilder to, byte type, int header, long bodyLength) {
    Message.startMessage(to);
    Message.addVersion(to, MetadataVersion.V5);
    Message.addHeaderType(to, type);
    Message.addHeader(to, header);
    Message.addBodyLength(to, bodyLength);
    to.finish(Message.endMessage(to));
    return to.sizedByteArray();
  }

  private byte[] footer(int from, int metadata, long bodyLength) {
    FlatBufferBuilder to = new FlatBufferBuilder();
    int schema = schema(to);
    Footer.startDictionariesVector(to, 0);
    int none = to.endVector();
    Footer.startRecordBatchesVector(to, 1);
    Block.createBlock(to, from, metadata, bodyLength);
    int batches = to.endVector();
    Footer.startFooter(to);
    Footer.addVersion(to, MetadataVersion.V5);
    Footer.addSchema(to, schema);
    Footer.addDictionaries(to, none);
    Footer.addRecordBatches(to, batches);
    to.finish(Footer.endFooter(to));
    return to.sizedByteArray();
  }

  private List<byte[]> buffers() {
    return columns.stream().flatMap(column -> column.buffers().stream()).toList();
  }

  private byte[] body() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] buffer : buffers()) {
      out.writeBytes(buffer);
      out.writeBytes(new byte[padded(buffer.length) - buffer.length]);
    }
    return out.toByteArray();
  }

  private static int padded(int length) {
    return (length + ALIGN - 1) / ALIGN * ALIGN;
  }

  private static ByteBuffer little(int length) {
    return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
  }
}
