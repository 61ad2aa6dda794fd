package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.List;
import meadcell.batch.book.Book;
import meadcell.batch.book.Format;
import meadcell.batch.book.Limits;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.apache.poi.poifs.filesystem.FileMagic;

public final class XlsxFormat implements Format {
  static {
    ZipSecureFile.setMaxFileCount(Integer.MAX_VALUE); // POI gets parts that are counted already
  }

  @Override
  public List<String> endings() {
    return List.of("xlsx", "xlsm");
  }

  @Override
  public boolean fits(byte[] bytes) {
    return FileMagic.valueOf(bytes) == FileMagic.OOXML;
  }

  @Override
  public Book read(byte[] bytes, Limits limits) throws IOException {
    return new XlsxBook(bytes, limits);
  }
}
