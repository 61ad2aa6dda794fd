package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import meadcell.batch.book.zip.PackageParts;

/** The list of what a package's parts are (ECMA-376 part 2, 7.2.3). */
final class ContentTypes {
  private static final String LIST = "[Content_Types].xml";

  private ContentTypes() {}

  /** The parts whose content type ends so. */
  static List<String> parts(PackageParts all, String typeEnd) throws IOException {
    List<String> found = new ArrayList<>();
    TagScanner tags = new TagScanner(XlsxSheetXml.inUtf8(all.read(LIST)));
    while (tags.next()) {
      if (tags.is("Override") && tags.attribute("ContentType").endsWith(typeEnd)) {
        found.add(tags.attribute("PartName").substring(1));
      }
    }
    return found;
  }
}
