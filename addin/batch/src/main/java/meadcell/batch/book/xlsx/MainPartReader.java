package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.Sax;
import meadcell.batch.book.Setting;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** Reads the part that says of what a workbook consists (ECMA-376 part 1, 18.2.27). */
final class MainPartReader extends DefaultHandler {
  /**
   * A sheet of the list.
   *
   * @param id of the relation to its part
   */
  record Sheet(String name, String id) {}

  private final List<Sheet> sheets = new ArrayList<>();
  private final Set<Setting> settings = EnumSet.noneOf(Setting.class);
  private boolean isStructureLocked;
  private boolean hasNames;
  private String above = "";
  private int depth;

  private MainPartReader() {}

  static MainPartReader read(byte[] xml) throws IOException {
    MainPartReader reader = new MainPartReader();
    Sax.parse(new ByteArrayInputStream(xml), reader);
    return reader;
  }

  List<Sheet> sheets() {
    return sheets;
  }

  Set<Setting> settings() {
    return settings;
  }

  boolean isStructureLocked() {
    return isStructureLocked;
  }

  boolean hasNames() {
    return hasNames;
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    depth++;
    switch (depth == 2 ? name : depth == 3 ? above + "/" + name : "") {
      case "workbookPr" -> set(Setting.OTHER_DAYS, attributes, "date1904", true);
      case "calcPr" -> set(Setting.AS_SHOWN, attributes, "fullPrecision", false);
      case "workbookProtection" -> isStructureLocked = is(attributes, "lockStructure", true);
      case "sheets/sheet" ->
          sheets.add(new Sheet(attributes.getValue("name"), XlsxCellsReader.relation(attributes)));
      case "definedNames/definedName" -> hasNames = true;
      default -> {}
    }
    above = depth == 2 ? name : above;
  }

  @Override
  public void endElement(String uri, String name, String qualified) {
    depth--;
  }

  private void set(Setting setting, Attributes attributes, String name, boolean wanted) {
    if (is(attributes, name, wanted)) {
      settings.add(setting);
    }
  }

  private static boolean is(Attributes attributes, String name, boolean wanted) {
    String value = attributes.getValue(name);
    return value != null
        && List.of(wanted ? "1" : "0", String.valueOf(wanted)).contains(value.strip());
  }
}
