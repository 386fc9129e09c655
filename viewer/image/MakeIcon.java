import static java.nio.charset.StandardCharsets.UTF_8;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.GeneralPath;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.imageio.ImageIO;

/**
 * Draws our own icon, a lip with a pocket over the ground and the leak under it, in the forms of
 * three systems. Argument: the folder to put it in.
 */
final class MakeIcon {
  private MakeIcon() {}

  public static void main(String[] args) throws IOException {
    Path to = Path.of(args[0]);
    byte[] png = icon(256);
    Files.write(to.resolve("icon.png"), png);
    ByteBuffer ico = ByteBuffer.allocate(22).order(ByteOrder.LITTLE_ENDIAN);
    ico.putShort((short) 0).putShort((short) 1).putShort((short) 1).putInt(0);
    ico.putShort((short) 1).putShort((short) 32).putInt(png.length).putInt(22);
    Files.write(to.resolve("icon.ico"), joined(ico.array(), png));
    ByteBuffer icns = ByteBuffer.allocate(16);
    icns.put("icns".getBytes(UTF_8)).putInt(16 + png.length);
    icns.put("ic08".getBytes(UTF_8)).putInt(8 + png.length);
    Files.write(to.resolve("icon.icns"), joined(icns.array(), png));
  }

  private static byte[] icon(int size) throws IOException {
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.scale(size / 64.0, size / 64.0);
    g.setColor(new Color(0xF4F1E8));
    g.fillRoundRect(0, 0, 64, 64, 14, 14);
    g.setColor(new Color(0x2E4057));
    GeneralPath lip = new GeneralPath();
    double[][] corners = {
      {14, 8}, {50, 8}, {50, 40}, {40, 40}, {40, 30}, {24, 30}, {24, 40}, {14, 40}
    };
    lip.moveTo(corners[0][0], corners[0][1]);
    Arrays.stream(corners).skip(1).forEach(p -> lip.lineTo(p[0], p[1]));
    lip.closePath();
    g.fill(lip);
    g.setColor(new Color(0x8A8D91));
    g.fillRect(4, 54, 56, 5);
    g.setColor(new Color(0xC8553D));
    g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    GeneralPath leak = new GeneralPath();
    leak.moveTo(5, 40);
    leak.curveTo(9, 50, 20, 47, 32, 46);
    leak.curveTo(44, 46, 52, 46, 59, 48);
    g.draw(leak);
    g.drawOval(28, 33, 8, 7);
    g.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }

  private static byte[] joined(byte[] head, byte[] tail) {
    byte[] all = Arrays.copyOf(head, head.length + tail.length);
    System.arraycopy(tail, 0, all, head.length, tail.length);
    return all;
  }
}
