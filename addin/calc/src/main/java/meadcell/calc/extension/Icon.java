package meadcell.calc.extension;

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
import java.io.IOException;
import javax.imageio.ImageIO;

/** Our drawing for the extension manager: a cask on the lines of a sheet. */
final class Icon {
  /** What the extension manager expects. */
  private static final int SIZE = 42;

  private Icon() {}

  static byte[] png() throws IOException {
    BufferedImage image = new BufferedImage(SIZE, SIZE, BufferedImage.TYPE_INT_ARGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    sheet(pen);
    cask(pen);
    pen.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }

  private static void sheet(Graphics2D pen) {
    pen.setColor(new Color(0xDD, 0xE3, 0xE8));
    pen.fillRect(0, 0, SIZE, SIZE);
    pen.setColor(new Color(0xA9, 0xB4, 0xBE));
    for (int line = 10; line < SIZE; line += 11) {
      pen.draw(new Line2D.Double(0, line, SIZE, line));
      pen.draw(new Line2D.Double(line, 0, line, SIZE));
    }
  }

  private static void cask(Graphics2D pen) {
    Path2D outline = new Path2D.Double();
    outline.moveTo(8, 11);
    outline.quadTo(21, 1, 34, 11);
    outline.lineTo(34, 31);
    outline.quadTo(21, 41, 8, 31);
    outline.closePath();
    pen.setColor(new Color(0x9A, 0x66, 0x2E));
    pen.fill(outline);
    Shape whole = pen.getClip();
    pen.clip(outline);
    pen.setColor(new Color(0xE8, 0xB0, 0x3A));
    pen.fillRect(0, 20, SIZE, SIZE);
    pen.setClip(whole);
    pen.setColor(new Color(0x3B, 0x2A, 0x1A));
    pen.setStroke(new BasicStroke(2));
    pen.draw(outline);
    pen.draw(new Line2D.Double(15, 8, 15, 34));
    pen.draw(new Line2D.Double(27, 8, 27, 34));
    pen.fill(new Ellipse2D.Double(19, 3.5, 4, 4));
  }
}
