package meadcell.release;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.ImageIO;

/** The program's mark, the head of a cask with a drop, drawn for each desktop in its format. */
final class Mark {
  /** The drawing is this wide and high. */
  private static final double GRID = 48;

  private static final Color HOOP = new Color(0x3b2a1a);
  private static final Color WOOD = new Color(0xb98a56);
  private static final Color MEAD = new Color(0xf2b632);

  private static final int[] ICO_SIZES = {16, 24, 32, 48, 64, 256};
  private static final int ICO_HEADER = 6;
  private static final int ICO_ENTRY = 16;
  private static final int ICO_WHOLE_BYTE = 256; // written as 0

  /** What macOS calls pictures of these sizes. */
  private static final Map<String, Integer> ICNS_SIZES = new LinkedHashMap<>();

  static {
    ICNS_SIZES.put("ic11", 32);
    ICNS_SIZES.put("ic12", 64);
    ICNS_SIZES.put("ic07", 128);
    ICNS_SIZES.put("ic08", 256);
    ICNS_SIZES.put("ic09", 512);
  }

  private Mark() {}

  /** In the format that a file's ending names: {@code png}, {@code ico} or {@code icns}. */
  static Path write(Path file) throws IOException {
    String name = file.getFileName().toString();
    byte[] content =
        switch (name.substring(name.lastIndexOf('.') + 1)) {
          case "ico" -> ico();
          case "icns" -> icns();
          default -> png(256);
        };
    return Files.write(file, content);
  }

  private static byte[] png(int size) throws IOException {
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    graphics.scale(size / GRID, size / GRID);
    draw(graphics);
    graphics.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }

  private static void draw(Graphics2D graphics) {
    Shape head = new Ellipse2D.Double(4, 4, 40, 40);
    graphics.setColor(WOOD);
    graphics.fill(head);
    graphics.setColor(HOOP);
    graphics.setStroke(new BasicStroke(1));
    for (double stave : new double[] {-12, 0, 12}) {
      double half = Math.sqrt(20 * 20 - stave * stave);
      graphics.draw(new Line2D.Double(24 + stave, 24 - half, 24 + stave, 24 + half));
    }
    graphics.setStroke(new BasicStroke(4));
    graphics.draw(head);
    Path2D drop = new Path2D.Double();
    drop.moveTo(24, 11);
    drop.curveTo(26, 17, 33, 22, 33, 28);
    drop.curveTo(33, 33, 29, 37, 24, 37);
    drop.curveTo(19, 37, 15, 33, 15, 28);
    drop.curveTo(15, 22, 22, 17, 24, 11);
    drop.closePath();
    graphics.setColor(MEAD);
    graphics.fill(drop);
    graphics.setColor(HOOP);
    graphics.setStroke(new BasicStroke(2, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    graphics.draw(drop);
  }

  /** A table of pictures, then the pictures. */
  private static byte[] ico() throws IOException {
    ByteArrayOutputStream pictures = new ByteArrayOutputStream();
    ByteBuffer table =
        ByteBuffer.allocate(ICO_HEADER + ICO_ENTRY * ICO_SIZES.length)
            .order(ByteOrder.LITTLE_ENDIAN);
    table.putShort((short) 0).putShort((short) 1).putShort((short) ICO_SIZES.length);
    for (int size : ICO_SIZES) {
      byte[] png = png(size);
      byte side = (byte) (size % ICO_WHOLE_BYTE);
      table.put(side).put(side).put((byte) 0).put((byte) 0);
      table.putShort((short) 1).putShort((short) 32); // a plane, bits of a pixel
      table.putInt(png.length).putInt(table.capacity() + pictures.size());
      pictures.write(png);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(table.array());
    pictures.writeTo(out);
    return out.toByteArray();
  }

  /** Each picture with its name and length before it, and the same before all of them. */
  private static byte[] icns() throws IOException {
    ByteArrayOutputStream pictures = new ByteArrayOutputStream();
    DataOutputStream parts = new DataOutputStream(pictures);
    for (Map.Entry<String, Integer> picture : ICNS_SIZES.entrySet()) {
      part(parts, picture.getKey(), png(picture.getValue()));
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    part(new DataOutputStream(out), "icns", pictures.toByteArray());
    return out.toByteArray();
  }

  private static void part(DataOutputStream out, String name, byte[] content) throws IOException {
    out.write(name.getBytes(StandardCharsets.US_ASCII));
    out.writeInt(2 * Integer.BYTES + content.length);
    out.write(content);
  }
}
