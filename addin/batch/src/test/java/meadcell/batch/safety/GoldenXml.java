package meadcell.batch.safety;

import static meadcell.batch.safety.Parts.LOG;
import static meadcell.batch.safety.Parts.OTHER;
import static meadcell.batch.safety.Parts.TEXTS;
import static meadcell.batch.safety.Parts.WORKBOOK;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;

/** The golden workbooks whose XML is written by hand (ECMA-376 part 1, 18). */
final class GoldenXml {
  private static final String MAIN =
      " xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
  private static final String R =
      " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"";
  private static final String OURS = "GRAVITY.CORRECT(B5,C5)";

  private GoldenXml() {}

  static List<Golden> all() {
    return List.of(
        Golden.byHand("external link", GoldenXml::externalLink),
        Golden.byHand("shared formulas", GoldenXml::sharedFormulas),
        Golden.byHand("shared formula on the results", GoldenXml::sharedOnResults)
            .changing("H12", "H13", "H14"),
        Golden.byHand("our own shared formula", parts -> ownFormula(parts, true))
            .changing("D12")
            .with("--overwrite"),
        Golden.byHand("calculation chain", GoldenXml::calculationChain).with("--overwrite"),
        Golden.byHand("calculation chain of values", GoldenXml::calculationChain)
            .with("--overwrite", "--write", "values")
            .changingParts("xl/calcChain.xml", "xl/_rels/workbook.xml.rels"),
        Golden.byHand("data table", GoldenXml::dataTable),
        Golden.byHand("dynamic array", GoldenXml::dynamicArray),
        Golden.byHand("threaded comments", GoldenXml::threadedComments),
        Golden.byHand("namespace with a prefix", GoldenXml::prefix),
        Golden.byHand("without references", GoldenXml::withoutReferences),
        Golden.byHand("inline texts", GoldenXml::inlineTexts),
        Golden.byHand(
            "escaped texts", p -> p.replace(TEXTS, ">Lot<", ">Lot_x000D_&#10;no_x005F_<")),
        Golden.byHand("phonetic texts", GoldenXml::phonetic),
        Golden.byHand("UTF-16", GoldenXml::utf16),
        Golden.byHand("XML comments", GoldenXml::xmlComments),
        Golden.byHand("wide columns", p -> columns(p, column(1, 6))),
        Golden.byHand("columns on both sides", p -> columns(p, column(1, 2) + column(6, 8))),
        new Golden("note among controls", GoldenXml::pictureAndText)
            .edited(GoldenXml::controls)
            .changingParts("xl/worksheets/_rels/sheet1.xml.rels"),
        Golden.byHand("sparklines", GoldenXml::sparklines),
        Golden.byHand("parts of other programs", GoldenXml::foreignParts),
        Golden.byHand("chart sheet", GoldenXml::chartSheet));
  }

  private static void externalLink(Parts parts) {
    parts.addSpreadsheetPart(
        "xl/externalLinks/externalLink1.xml",
        "externalLink",
        "<externalLink"
            + MAIN
            + "><externalBook"
            + R
            + " r:id=\"rId1\"><sheetNames><sheetName val=\"Sheet1\"/></sheetNames><sheetDataSet>"
            + "<sheetData sheetId=\"0\"><row r=\"1\"><cell r=\"A1\"><v>3.5</v></cell></row>"
            + "</sheetData></sheetDataSet></externalBook></externalLink>");
    parts.relate(
        "xl/externalLinks/externalLink1.xml", "rId1", "externalLinkPath", "file:///prices.xlsx");
    parts.relate(WORKBOOK, "link1", "externalLink", "externalLinks/externalLink1.xml");
    parts.replace(
        WORKBOOK,
        "</sheets>",
        "</sheets><externalReferences><externalReference"
            + R
            + " r:id=\"link1\"/></externalReferences>");
    parts.addRows(OTHER, "<row r=\"4\"><c r=\"A4\"><f>[1]Sheet1!A1*2</f><v>7</v></c></row>");
  }

  private static String shared(String column, int first, String formula) {
    StringBuilder rows = new StringBuilder();
    for (int row = first; row < first + 3; row++) {
      String head = " ref=\"" + column + first + ":" + column + (first + 2) + '"';
      rows.append("<row r=\"" + row + "\"><c r=\"" + column + row + "\"><f t=\"shared\"")
          .append(row == first ? head + " si=\"0\">" + formula + "</f>" : " si=\"0\"/>")
          .append("<v>" + row + "</v></c></row>");
    }
    return rows.toString();
  }

  private static void sharedFormulas(Parts parts) {
    parts.addRows(LOG, shared("H", 12, "B5*1000"));
    parts.addRows(OTHER, shared("A", 5, "B2*2"));
  }

  private static void sharedOnResults(Parts parts) {
    // as a program stores them while column D is empty
    parts.addRows(LOG, shared("H", 12, "D5*2").replaceAll("<v>.*?</v>", "<v>0</v>"));
  }

  private static void ownFormula(Parts parts, boolean shared) {
    addCell(parts, 4, "<c r=\"D4\" t=\"inlineStr\"><is><t>True SG</t></is></c>");
    for (int row = 5; row <= 7; row++) {
      String formula = "<f>" + OURS.replace("5", "" + row) + "</f>";
      String master = "<f t=\"shared\" ref=\"D5:D12\" si=\"0\">" + OURS + "</f>";
      String child = "<f t=\"shared\" si=\"0\"/>";
      String stored = shared ? row == 5 ? master : child : formula;
      addCell(parts, row, "<c r=\"D" + row + "\">" + stored + "<v>9</v></c>");
    }
    if (shared) {
      parts.addRows(LOG, "<row r=\"12\"><c r=\"D12\"><f t=\"shared\" si=\"0\"/><v>8</v></c></row>");
    }
  }

  private static void addCell(Parts parts, int row, String cell) {
    parts.replaceAll(LOG, "(<row r=\"" + row + "\".*?)</row>", "$1" + cell + "</row>");
  }

  private static void calculationChain(Parts parts) {
    ownFormula(parts, false);
    parts.addSpreadsheetPart(
        "xl/calcChain.xml",
        "calcChain",
        "<calcChain"
            + MAIN
            + "><c r=\"D5\" i=\"1\"/><c r=\"D6\"/><c r=\"D7\"/><c r=\"A5\" i=\"2\"/></calcChain>");
    parts.relate(WORKBOOK, "chain", "calcChain", "calcChain.xml");
    parts.addRows(OTHER, "<row r=\"5\"><c r=\"A5\"><f>B2*2</f><v>24</v></c></row>");
  }

  private static void dataTable(Parts parts) {
    parts.addRows(
        OTHER,
        "<row r=\"5\"><c r=\"B5\"><f>B2*2</f><v>24</v></c></row><row r=\"6\"><c r=\"A6\"><v>1</v></c>"
            + "<c r=\"B6\"><f t=\"dataTable\" ref=\"B6:B7\" dt2D=\"0\" dtr=\"0\" r1=\"B2\"/>"
            + "<v>2</v></c></row><row r=\"7\"><c r=\"A7\"><v>2</v></c><c r=\"B7\"><v>4</v></c></row>");
  }

  private static void dynamicArray(Parts parts) {
    String array =
        "\" cm=\"1\"><f t=\"array\" ref=\"%s\">_xlfn._xlws.SORT(%s)</f><v>12</v></c></row>";
    parts.addRows(OTHER, "<row r=\"5\"><c r=\"A5" + array.formatted("A5:A6", "B2:B3"));
    parts.addRows(OTHER, "<row r=\"6\"><c r=\"A6\"><v>30</v></c></row>");
    parts.addRows(LOG, "<row r=\"12\"><c r=\"H12" + array.formatted("H12:H13", "B5:B6"));
    parts.addRows(LOG, "<row r=\"13\"><c r=\"H13\"><v>1.08</v></c></row>");
    parts.addSpreadsheetPart(
        "xl/metadata.xml",
        "sheetMetadata",
        "<metadata"
            + MAIN
            + " xmlns:xda=\"http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray\">"
            + "<metadataTypes count=\"1\"><metadataType name=\"XLDAPR\" minSupportedVersion=\"120000\""
            + " copy=\"1\" pasteAll=\"1\" cellMeta=\"1\"/></metadataTypes>"
            + "<futureMetadata name=\"XLDAPR\" count=\"1\"><bk><extLst>"
            + "<ext uri=\"{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}\">"
            + "<xda:dynamicArrayProperties fDynamic=\"1\" fCollapsed=\"0\"/></ext></extLst></bk>"
            + "</futureMetadata><cellMetadata count=\"1\"><bk><rc t=\"1\" v=\"0\"/></bk></cellMetadata>"
            + "</metadata>");
    parts.relate(WORKBOOK, "meta", "sheetMetadata", "metadata.xml");
  }

  private static void threadedComments(Parts parts) {
    String namespace =
        " xmlns=\"http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments\"";
    String type = "http://schemas.microsoft.com/office/2017/10/relationships/";
    String person = "{11111111-1111-1111-1111-111111111111}";
    parts.add(
        "xl/threadedComments/threadedComment1.xml",
        "application/vnd.ms-excel.threadedcomments+xml",
        "<ThreadedComments"
            + namespace
            + "><threadedComment ref=\"B5\" dT=\"2026-01-02T03:04:05.00\" personId=\""
            + person
            + "\" id=\"{22222222-2222-2222-2222-222222222222}\"><text>mine</text></threadedComment>"
            + "</ThreadedComments>");
    parts.add(
        "xl/persons/person.xml",
        "application/vnd.ms-excel.person+xml",
        "<personList"
            + namespace
            + "><person displayName=\"a person\" id=\""
            + person
            + "\" userId=\"a\" providerId=\"None\"/></personList>");
    parts.relate(
        LOG, "thread", type + "threadedComment", "../threadedComments/threadedComment1.xml");
    parts.relate(WORKBOOK, "person", type + "person", "persons/person.xml");
  }

  private static void prefix(Parts parts) {
    parts.replaceAll(LOG, "<(/?)([a-zA-Z])", "<$1x:$2");
    parts.replaceAll(LOG, "xmlns=\"", "xmlns:x=\"");
  }

  private static void withoutReferences(Parts parts) {
    parts.replaceAll(LOG, "<c r=\"[A-Z]+[0-9]+\"", "<c");
    parts.replaceAll(LOG, "<row r=\"[123567]\"", "<row");
  }

  private static void inlineTexts(Parts parts) {
    parts.replaceAll(
        LOG,
        "<c r=\"B4\" t=\"s\">.*?</c>",
        "<c r=\"B4\" t=\"inlineStr\"><is><r><t>S</t></r><r><rPr><b/></rPr><t>G</t></r></is></c>");
    parts.replaceAll(
        LOG,
        "<c r=\"A4\" t=\"s\">.*?</c>",
        "<c r=\"A4\" t=\"inlineStr\"><is><t xml:space=\"preserve\">Date </t></is></c>");
  }

  private static void phonetic(Parts parts) {
    parts.replace(
        TEXTS,
        "<si><t>SG</t></si>",
        "<si><r><t>S</t></r><r><rPr><b/></rPr><t>G</t></r><rPh sb=\"0\" eb=\"1\"><t>ess</t></rPh>"
            + "<phoneticPr fontId=\"0\"/></si>");
  }

  private static void utf16(Parts parts) {
    String text = "<?xml version=\"1.0\" encoding=\"UTF-16\"?>" + parts.text(LOG);
    parts.put(LOG, text.getBytes(StandardCharsets.UTF_16));
  }

  private static void xmlComments(Parts parts) {
    parts.replaceAll(LOG, "(<c r=\"[AC]5\")", "<!-- <c r=\"E5\"> --><?keep <row?>$1");
    parts.replaceAll(LOG, "(<row r=\"[56]\")", "<!-- <row r=\"9\"> & > -->$1");
    parts.replaceAll(
        LOG,
        "<sheetData>(.*)</sheetData>",
        "<!-- </sheetData> --><sheetData><?keep </sheetData>?>$1<!-- <row> --></sheetData>"
            + "<!-- <cols> -->");
  }

  private static String column(int min, int max) {
    return "<col min='" + min + "' max='" + max + "' width='12.5' customWidth='1'/>";
  }

  private static void columns(Parts parts, String columns) {
    parts.replace(LOG, "<sheetData>", "<cols>" + columns + "</cols><sheetData>");
  }

  private static void pictureAndText(Workbook book, Sheet log, Sheet other) {
    GoldenBooks.picture(book, log, other);
    log.getRow(5).getCell(2).setCellValue("17 C");
  }

  private static void controls(Parts parts) {
    parts.replaceAll(
        LOG,
        "(<drawing [^>]*/>)",
        "$1<mc:AlternateContent"
            + " xmlns:mc=\"http://schemas.openxmlformats.org/markup-compatibility/2006\">"
            + "<mc:Fallback/></mc:AlternateContent>"
            + "<extLst><ext uri=\"{00000000-0000-0000-0000-000000000000}\"/></extLst>");
  }

  private static void sparklines(Parts parts) {
    String x14 = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";
    String xm = "http://schemas.microsoft.com/office/excel/2006/main";
    parts.replace(
        LOG,
        "</worksheet>",
        "<extLst><ext uri=\"{05C60535-1F16-4fd2-B633-F4F36F0B64E0}\" xmlns:x14=\""
            + x14
            + "\"><x14:sparklineGroups xmlns:xm=\""
            + xm
            + "\"><x14:sparklineGroup><x14:sparklines><x14:sparkline><xm:f>'HH-22'!B5:B7</xm:f>"
            + "<xm:sqref>H5</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup>"
            + "</x14:sparklineGroups></ext></extLst></worksheet>");
  }

  private static void foreignParts(Parts parts) {
    String binary = "application/vnd.openxmlformats-officedocument.spreadsheetml.printerSettings";
    parts.add("xl/printerSettings/printerSettings1.bin", binary, "set up\u0000");
    parts.relate(LOG, "printer", "printerSettings", "../printerSettings/printerSettings1.bin");
    parts.add("customXml/item1.xml", "application/xml", "<mine/>\n");
    parts.relate(WORKBOOK, "custom", "customXml", "../customXml/item1.xml");
    parts.add("notes/unrelated.txt", "text/plain", "of no relation");
  }

  private static void chartSheet(Parts parts) {
    parts.addSpreadsheetPart(
        "xl/chartsheets/sheet1.xml",
        "chartsheet",
        "<chartsheet"
            + MAIN
            + "><sheetViews><sheetView workbookViewId=\"0\"/></sheetViews></chartsheet>");
    parts.relate(WORKBOOK, "chartSheet", "chartsheet", "chartsheets/sheet1.xml");
    parts.replace(
        WORKBOOK,
        "</sheets>",
        "<sheet name=\"Chart\" sheetId=\"9\"" + R + " r:id=\"chartSheet\"/></sheets>");
  }
}
