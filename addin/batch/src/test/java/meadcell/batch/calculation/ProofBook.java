package meadcell.batch.calculation;

import static meadcell.batch.TestBooks.row;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Place;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCellFormula;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellFormulaType;

/** An invented cellar log on which all formulas of the corpus stand. */
final class ProofBook {
  static final String LOG = "Log";

  static final int FIRST_ROW = 20;
  static final int COLUMN = 17;
  private static final int BESIDE = 20;

  private final XSSFWorkbook book = new XSSFWorkbook();
  private final XSSFSheet log = book.createSheet(LOG);
  private final Map<Corpus.Line, List<Place>> places = new HashMap<>();
  private final ProofData data;
  private int nextRow = FIRST_ROW;
  private int nextColumn = BESIDE;

  ProofBook(List<Corpus.Line> lines) {
    book.setCellFormulaValidation(false);
    data = new ProofData(book, log);
    lines.forEach(this::put);
  }

  byte[] bytes() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.write(bytes);
    return bytes.toByteArray();
  }

  List<ProofData.Input> inputs() {
    return data.inputs();
  }

  List<Place> places(Corpus.Line line) {
    return places.get(line);
  }

  private void put(Corpus.Line line) {
    if (line.row() > 0) {
      beside(line);
      return;
    }
    List<Place> cells = new ArrayList<>();
    for (int r = 0; r < line.height(); r++) {
      for (int c = 0; c < line.width(); c++) {
        cells.add(new Place(nextRow + r, COLUMN + c));
      }
    }
    if (line.array()) {
      log.setArrayFormula(
          line.formula(),
          new CellRangeAddress(
              nextRow, nextRow + line.height() - 1, COLUMN, COLUMN + line.width() - 1));
    } else {
      cell(nextRow, COLUMN).setCellFormula(line.formula());
    }
    places.put(line, cells);
    nextRow += line.height();
  }

  private void beside(Corpus.Line line) {
    int group = nextColumn;
    List<Place> cells = new ArrayList<>();
    for (int i = 0; i < line.copies(); i++) {
      int row = line.row() - 1 + i;
      XSSFCell cell = (XSSFCell) cell(row, nextColumn);
      cell.setCellFormula(line.formula());
      if (line.copies() > 1) {
        CTCellFormula shared = cell.getCTCell().getF();
        shared.setT(STCellFormulaType.SHARED);
        shared.setSi(group);
        if (i == 0) {
          shared.setRef(
              new CellRangeAddress(row, row + line.copies() - 1, nextColumn, nextColumn)
                  .formatAsString());
        } else {
          shared.setStringValue("");
        }
      }
      cells.add(new Place(row, nextColumn));
    }
    places.put(line, cells);
    nextColumn++;
  }

  private Cell cell(int row, int column) {
    Row line = log.getRow(row) == null ? log.createRow(row) : log.getRow(row);
    return line.createCell(column);
  }
}
