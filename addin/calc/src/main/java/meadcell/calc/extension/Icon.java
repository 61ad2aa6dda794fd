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
import java.util.function.Consumer;
import javax.imageio.ImageIO;

/** Our drawing: a cask on the lines of a sheet, or by itself on a button. */
final class Icon {
  /** What the extension manager expects. */
  private static final int SIZE = 42;

  private static final Color DARK_LINES = new Color(0x3B, 0x2A, 0x1A);
  private static final Color LIGHT_LINES = new Color(0xF2, 0xE3, 0xCC);

  private Icon() {}

  /** For the extension manager, on light or on dark. */
  static byte[] sheet(boolean isDark) throws IOException {
    return png(
        SIZE,
        pen -> {
          sheet(pen, isDark);
          cask(pen, isDark ? LIGHT_LINES : DARK_LINES);
        });
  }

  /** For the button: the cask alone, that any background shows through, with a question mark. */
  static byte[] button(int size) throws IOException {
    return png(
        size,
        pen -> {
          cask(pen, DARK_LINES);
          questionMark(pen);
        });
  }

  private static byte[] png(int size, Consumer<Graphics2D> drawing) throws IOException {
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.scale((double) size / SIZE, (double) size / SIZE);
    drawing.accept(pen);
    pen.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }

  /** Drawn, since fonts differ from machine to machine and the package must not. */
  private static void questionMark(Graphics2D pen) {
    Path2D hook = new Path2D.Double();
    hook.moveTo(15, 15);
    hook.curveTo(15, 7, 28, 7, 28, 15);
    hook.curveTo(28, 20, 21, 19, 21, 26);
    pen.setColor(Color.WHITE);
    pen.setStroke(new BasicStroke(5, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    pen.draw(hook);
    pen.fill(new Ellipse2D.Double(18, 30, 6, 6));
  }

  private static void sheet(Graphics2D pen, boolean isDark) {
    pen.setColor(isDark ? new Color(0x2B, 0x31, 0x37) : new Color(0xDD, 0xE3, 0xE8));
    pen.fillRect(0, 0, SIZE, SIZE);
    pen.setColor(isDark ? new Color(0x55, 0x60, 0x6A) : new Color(0xA9, 0xB4, 0xBE));
    for (int line = 10; line < SIZE; line += 11) {
      pen.draw(new Line2D.Double(0, line, SIZE, line));
      pen.draw(new Line2D.Double(line, 0, line, SIZE));
    }
  }

  private static void cask(Graphics2D pen, Color lines) {
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
    pen.setColor(lines);
    pen.setStroke(new BasicStroke(2));
    pen.draw(outline);
    pen.draw(new Line2D.Double(15, 8, 15, 34));
    pen.draw(new Line2D.Double(27, 8, 27, 34));
    pen.fill(new Ellipse2D.Double(19, 3.5, 4, 4));
  }
}
