package meadcell.batch.book.ods;

import java.io.IOException;
import java.util.List;
import meadcell.batch.book.Book;
import meadcell.batch.book.Format;
import meadcell.batch.book.Limits;
import org.apache.poi.poifs.filesystem.FileMagic;

public final class OdsFormat implements Format {
  @Override
  public List<String> endings() {
    return List.of("ods");
  }

  @Override
  public boolean fits(byte[] bytes) {
    return FileMagic.valueOf(bytes) == FileMagic.OOXML; // any zip package
  }

  @Override
  public Book read(byte[] bytes, Limits limits) throws IOException {
    return new OdsBook(bytes, limits);
  }
}
