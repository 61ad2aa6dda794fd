package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFGraphicFrame;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.junit.jupiter.api.Test;

/** Charts can be read without telling colours apart, and by those who do not see them. */
class ChartsTest {
  private static final Pattern SERIES = Pattern.compile("(?s)<c:ser>.*?</c:ser>");
  private static final Pattern INK = Pattern.compile("srgbClr val=\"(\\w{6})\"");
  private static final Pattern DASH = Pattern.compile("prstDash val=\"(\\w+)\"");
  private static final Pattern MARKER = Pattern.compile("<c:symbol val=\"(\\w+)\"");
  private static final Pattern NAMED =
      Pattern.compile("<c:tx>.*?<c:v>([^<]+)</c:v>", Pattern.DOTALL);

  /** WCAG 2.2, success criterion 1.4.11. */
  private static final double LEAST_CONTRAST = 3;

  @Test
  void everySeriesHasItsOwnColourAndMark() throws IOException {
    int several = 0;
    for (XSSFChart chart : charts()) {
      List<String> inks = new ArrayList<>();
      List<String> marks = new ArrayList<>();
      Matcher series = SERIES.matcher(chart.getCTChartSpace().xmlText());
      while (series.find()) {
        String ink = first(INK, series.group());
        assertTrue(contrastToWhite(ink) >= LEAST_CONTRAST, ink);
        inks.add(ink);
        marks.add(first(DASH, series.group()) + first(MARKER, series.group()));
      }
      assertEquals(inks.size(), new HashSet<>(inks).size(), inks.toString());
      assertEquals(marks.size(), new HashSet<>(marks).size(), marks.toString());
      several += inks.size() > 1 ? 1 : 0;
    }
    assertEquals(1, several);
  }

  @Test
  void theWordsOfAChartNameWhatItShows() throws IOException {
    int told = 0;
    for (Sheet sheet : Samples.open("cellar-book")) {
      XSSFDrawing drawing = ((XSSFSheet) sheet).getDrawingPatriarch();
      for (int i = 0; drawing != null && i < drawing.getCharts().size(); i++) {
        XSSFChart chart = drawing.getCharts().get(i);
        String title = chart.getTitleText().getString();
        String words =
            drawing.getShapes().stream()
                .map(shape -> ((XSSFGraphicFrame) shape).getCTGraphicalObjectFrame())
                .map(frame -> frame.getNvGraphicFramePr().getCNvPr())
                .filter(named -> named.getName().equals(title))
                .findFirst()
                .orElseThrow()
                .getDescr();
        assertTrue(words.startsWith(title + ". "), words);
        String xml = chart.getCTChartSpace().xmlText();
        Matcher series = SERIES.matcher(xml);
        while (xml.contains("scatterChart") && series.find()) {
          assertTrue(words.contains(": " + first(NAMED, series.group()) + ". "), words);
        }
        told++;
      }
    }
    assertEquals(4, told);
  }

  private static String first(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    return matcher.find() ? matcher.group(1) : "";
  }

  private static List<XSSFChart> charts() throws IOException {
    List<XSSFChart> charts = new ArrayList<>();
    for (Sheet sheet : Samples.open("cellar-book")) {
      var drawing = ((XSSFSheet) sheet).getDrawingPatriarch();
      if (drawing != null) {
        charts.addAll(drawing.getCharts());
      }
    }
    return charts;
  }

  private static double contrastToWhite(String ink) {
    byte[] rgb = HexFormat.of().parseHex(ink);
    double[] weights = {0.2126, 0.7152, 0.0722};
    double luminance = 0;
    for (int i = 0; i < rgb.length; i++) {
      double c = (rgb[i] & 0xFF) / 255.0;
      luminance += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return 1.05 / (luminance + 0.05);
  }
}
