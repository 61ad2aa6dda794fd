package meadcell.batch.book.xls;

import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Format;
import meadcell.batch.book.Limits;
import org.apache.poi.poifs.filesystem.FileMagic;

public final class XlsFormat implements Format {
  private static final Set<FileMagic> OLDEST =
      EnumSet.of(FileMagic.BIFF2, FileMagic.BIFF3, FileMagic.BIFF4);

  @Override
  public List<String> endings() {
    return List.of("xls");
  }

  @Override
  public boolean fits(byte[] bytes) {
    return OLDEST.contains(FileMagic.valueOf(bytes)) || FileMagic.valueOf(bytes) == FileMagic.OLE2;
  }

  @Override
  public Book read(byte[] bytes, Limits limits) throws IOException {
    if (OLDEST.contains(FileMagic.valueOf(bytes))) {
      throw new FileRefused(XlsBook.TOO_OLD);
    }
    return new XlsBook(Biff.root(bytes)); // nothing is packed
  }
}
