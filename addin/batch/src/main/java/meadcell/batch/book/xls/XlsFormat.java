package meadcell.batch.book.xls;

import java.io.IOException;
import java.util.List;
import meadcell.batch.book.Book;
import meadcell.batch.book.Format;
import meadcell.batch.book.Limits;
import org.apache.poi.poifs.filesystem.FileMagic;

public final class XlsFormat implements Format {
  @Override
  public List<String> endings() {
    return List.of("xls");
  }

  @Override
  public boolean fits(byte[] bytes) {
    return FileMagic.valueOf(bytes) == FileMagic.OLE2;
  }

  @Override
  public Book read(byte[] bytes, Limits limits) throws IOException {
    return new XlsBook(Biff.root(bytes)); // nothing is packed
  }
}
