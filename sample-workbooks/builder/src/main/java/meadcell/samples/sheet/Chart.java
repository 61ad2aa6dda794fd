package meadcell.samples.sheet;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xddf.usermodel.PresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFColorRgbBinary;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFNoFillProperties;
import org.apache.poi.xddf.usermodel.XDDFPresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisOrientation;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.DisplayBlanks;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.ScatterStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFScatterChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.openxmlformats.schemas.drawingml.x2006.main.CTNonVisualDrawingProps;

/** A chart over cells of its own sheet: numbers against dates, or a bar for each label. */
public final class Chart {
  private static final double TITLE_POINTS = 12;
  private static final String FRAME = "7D7487";
  private static final String GRID = "D9D5DD";

  /** How the series of a chart are told apart: by colour, dash and marker, each one's own. */
  private enum Stroke {
    HEATHER("46394F", PresetLineDash.SOLID, MarkerStyle.CIRCLE),
    HONEY("9A5B13", PresetLineDash.DASH, MarkerStyle.DIAMOND),
    LAKE("1F6E79", PresetLineDash.SYSTEM_DOT, MarkerStyle.TRIANGLE),
    CHERRY("8E2F5C", PresetLineDash.LARGE_DASH_DOT, MarkerStyle.SQUARE);

    final String ink;
    final PresetLineDash dash;
    final MarkerStyle marker;

    Stroke(String ink, PresetLineDash dash, MarkerStyle marker) {
      this.ink = ink;
      this.dash = dash;
      this.marker = marker;
    }
  }

  /** Numbers against dates, as points or as a line; or numbers for labels. */
  private record Series(CellReference name, CellRangeAddress x, CellRangeAddress y, boolean line) {}

  private final int[] corners;
  private final String title;
  private final String acrossTitle;
  private final String upTitle;
  private final List<Series> series = new ArrayList<>();
  private double lowest = Double.NaN;
  private double highest = Double.NaN;
  private double step = Double.NaN;
  private String format = "General";
  private boolean bars;

  /** A chart from the top left to the bottom right cell (row and column counted from 0). */
  public Chart(
      int row, int column, int toRow, int toColumn, String title, String across, String up) {
    this.corners = new int[] {row, column, toRow, toColumn};
    this.title = title;
    this.acrossTitle = across;
    this.upTitle = up;
  }

  /** Points; the header of the upright values names them. */
  public Chart points(Table table, String x, String y) {
    series.add(new Series(table.header(y), table.area(x, x), table.area(y, y), false));
    return this;
  }

  /** A line without points. */
  public Chart line(Table table, String x, String y) {
    series.add(new Series(table.header(y), table.area(x, x), table.area(y, y), true));
    return this;
  }

  /** One bar for each row, from top to bottom; lying, so that all labels can be read. */
  public Chart bars(Table table, String labels, String values) {
    bars = true;
    return line(table, labels, values);
  }

  /** Fixed ends and steps of the upright axis, and how its numbers are shown. */
  public Chart up(double from, double to, double by, String numberFormat) {
    lowest = from;
    highest = to;
    step = by;
    format = numberFormat;
    return this;
  }

  static int lastRow(XSSFSheet sheet) {
    return sheet.getDrawingPatriarch() == null
        ? 0
        : sheet.getDrawingPatriarch().getCharts().stream()
            .mapToInt(chart -> chart.getGraphicFrame().getAnchor().getRow2())
            .max()
            .orElse(0);
  }

  void draw(XSSFSheet sheet) {
    XSSFDrawing drawing = sheet.createDrawingPatriarch();
    XSSFChart chart =
        drawing.createChart(
            drawing.createAnchor(0, 0, 0, 0, corners[1], corners[0], corners[3], corners[2]));
    chart.setTitleText(title);
    chart.setTitleOverlay(false);
    chart.getFormattedTitle().getParagraph(0).addDefaultRunProperties().setFontSize(TITLE_POINTS);
    chart
        .getFormattedTitle()
        .getParagraph(0)
        .getTextRuns()
        .forEach(run -> run.setFontSize(TITLE_POINTS));
    CTNonVisualDrawingProps named =
        chart.getGraphicFrame().getCTGraphicalObjectFrame().getNvGraphicFramePr().getCNvPr();
    named.setName(title);
    named.setTitle(title);
    named.setDescr(description(sheet));
    chart.displayBlanksAs(DisplayBlanks.GAP);
    chart.getOrAddShapeProperties().setFillProperties(fill("FFFFFF"));
    chart.getOrAddShapeProperties().setLineProperties(line(FRAME, 0.75));
    if (bars) {
      drawBars(sheet, chart);
    } else {
      drawScatter(sheet, chart);
    }
  }

  /** What it shows, for those who do not see it. */
  private String description(XSSFSheet sheet) {
    StringBuilder text = new StringBuilder(title + ". ");
    if (bars) {
      text.append("Bars: " + upTitle + " of each line of the table. ");
    } else {
      for (Series each : series) {
        text.append((each.line() ? "Line: " : "Points: ") + shown(sheet, each.name()) + ". ");
      }
      text.append("Upright " + upTitle + ", across " + acrossTitle + ". ");
    }
    return text + "The numbers stand in a table on this sheet.";
  }

  private XDDFValueAxis upright(XSSFChart chart) {
    XDDFValueAxis up = chart.createValueAxis(AxisPosition.LEFT);
    up.setTitle(upTitle);
    up.setNumberFormat(format);
    up.setCrosses(AxisCrosses.MIN);
    up.getOrAddMajorGridProperties().setLineProperties(line(GRID, 0.5));
    if (!Double.isNaN(lowest)) {
      up.setMinimum(lowest);
      up.setMaximum(highest);
      up.setMajorUnit(step);
    }
    return up;
  }

  private void drawScatter(XSSFSheet sheet, XSSFChart chart) {
    XDDFValueAxis across = chart.createValueAxis(AxisPosition.BOTTOM);
    across.setTitle(acrossTitle);
    across.setNumberFormat("yyyy\\-mm\\-dd");
    XDDFValueAxis up = upright(chart);
    across.setCrosses(AxisCrosses.MIN);
    XDDFScatterChartData data =
        (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, across, up);
    data.setStyle(ScatterStyle.LINE_MARKER);
    data.setVaryColors(false);
    for (int i = 0; i < series.size(); i++) {
      Series each = series.get(i);
      Stroke stroke = Stroke.values()[i];
      var drawn =
          (XDDFScatterChartData.Series)
              data.addSeries(numbers(sheet, each.x()), numbers(sheet, each.y()));
      drawn.setTitle(shown(sheet, each.name()), each.name());
      drawn.setSmooth(false);
      XDDFLineProperties line = line(stroke.ink, 2);
      if (each.line()) {
        line.setPresetDash(new XDDFPresetLineDash(stroke.dash));
      } else {
        line.setFillProperties(new XDDFNoFillProperties());
      }
      drawn.setLineProperties(line);
      mark(drawn, stroke);
    }
    chart.plot(data);
    if (series.size() > 1) {
      chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    }
  }

  private static void mark(XDDFScatterChartData.Series series, Stroke stroke) {
    series.setMarkerStyle(stroke.marker);
    XDDFShapeProperties filled = new XDDFShapeProperties();
    filled.setFillProperties(fill(stroke.ink));
    filled.setLineProperties(line(stroke.ink, 0.75));
    series.getCTScatterSer().getMarker().setSpPr(filled.getXmlObject());
  }

  private void drawBars(XSSFSheet sheet, XSSFChart chart) {
    XDDFCategoryAxis labels = chart.createCategoryAxis(AxisPosition.LEFT);
    labels.setTitle(acrossTitle);
    labels.setOrientation(AxisOrientation.MAX_MIN);
    XDDFValueAxis values = upright(chart);
    values.setPosition(AxisPosition.BOTTOM);
    values.setCrosses(AxisCrosses.MAX);
    values.setCrossBetween(org.apache.poi.xddf.usermodel.chart.AxisCrossBetween.BETWEEN);
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, labels, values);
    data.setBarDirection(BarDirection.BAR);
    data.setVaryColors(false);
    data.setGapWidth(60);
    for (Series each : series) {
      XDDFChartData.Series drawn =
          data.addSeries(
              XDDFDataSourcesFactory.fromArray(new String[cells(each.x())], where(sheet, each.x())),
              numbers(sheet, each.y()));
      drawn.setTitle(shown(sheet, each.name()), each.name());
      XDDFShapeProperties shape = new XDDFShapeProperties();
      shape.setFillProperties(fill(Stroke.HONEY.ink));
      drawn.setShapeProperties(shape);
    }
    chart.plot(data);
  }

  /** Where numbers stand; an office reads them when it opens the file. */
  private static XDDFNumericalDataSource<Double> numbers(XSSFSheet sheet, CellRangeAddress cells) {
    return XDDFDataSourcesFactory.fromArray(new Double[cells(cells)], where(sheet, cells));
  }

  private static int cells(CellRangeAddress cells) {
    return cells.getNumberOfCells();
  }

  private static String where(XSSFSheet sheet, CellRangeAddress cells) {
    return cells.formatAsString(sheet.getSheetName(), true);
  }

  private static String shown(XSSFSheet sheet, CellReference cell) {
    return sheet.getRow(cell.getRow()).getCell(cell.getCol()).getStringCellValue();
  }

  private static XDDFSolidFillProperties fill(String hex) {
    return new XDDFSolidFillProperties(color(hex));
  }

  private static XDDFColor color(String hex) {
    return new XDDFColorRgbBinary(HexFormat.of().parseHex(hex));
  }

  private static XDDFLineProperties line(String hex, double points) {
    XDDFLineProperties line = new XDDFLineProperties(fill(hex));
    line.setWidth(points);
    return line;
  }
}
