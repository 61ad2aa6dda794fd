package meadcell.batch.calculation;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaParsingWorkbook;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.formula.ptg.AreaPtgBase;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.RefPtgBase;

/**
 * Parsed formulas. A formula that was copied down is parsed once; the other rows get its tokens
 * with the relative rows moved.
 */
final class ParsedFormulas {
  private record Key(int sheet, int column, String relativeForm) {
    @Override
    public boolean equals(Object object) {
      return object instanceof Key other
          && sheet == other.sheet
          && column == other.column
          && relativeForm.equals(other.relativeForm);
    }

    @Override
    public int hashCode() {
      return 31 * (31 * sheet + column) + relativeForm.hashCode();
    }
  }

  private record Parsed(int row, Ptg[] tokens) {}

  private static final Pattern LIKE_A_CELL = Pattern.compile("[A-Za-z]{1,3}\\.[A-Za-z]{1,3}[0-9]+");

  private final FormulaParsingWorkbook names;
  private final RelativeForms forms = new RelativeForms();
  private final Map<Key, Parsed> known = new HashMap<>();

  ParsedFormulas(FormulaParsingWorkbook names) {
    this.names = names;
  }

  Ptg[] of(String formula, int sheet, int row, int column) {
    if (formula.indexOf('[') >= 0) { // POI makes a table's name a relative range, that stays
      return parse(formula, sheet, row);
    }
    Key key = new Key(sheet, column, forms.of(formula, row, column));
    Parsed parsed = known.get(key);
    if (parsed == null) {
      Ptg[] tokens = parse(formula, sheet, row);
      known.put(key, new Parsed(row, tokens));
      return tokens;
    }
    return parsed.row == row ? parsed.tokens : moved(parsed.tokens, row - parsed.row);
  }

  private Ptg[] parse(String formula, int sheet, int row) {
    return parse(readable(formula), names, FormulaType.CELL, sheet, row);
  }

  /** POI's tokens; what it does not read for whatever reason is refused in one way. */
  static Ptg[] parse(
      String formula, FormulaParsingWorkbook names, FormulaType type, int sheet, int row) {
    try {
      return FormulaParser.parse(formula, names, type, sheet, row);
    } catch (StackOverflowError e) {
      throw new FormulaParseException("it is nested too deeply");
    } catch (IllegalArgumentException e) { // of a text of more than 255 signs
      throw new FormulaParseException("it holds more than POI reads");
    }
  }

  /** POI takes {@code LAB.SO2} for a column and a cell; with its stored prefix it is a name. */
  private static String readable(String formula) {
    StringBuilder out = new StringBuilder(formula.length() + 16);
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
    while (tokens.next()) {
      boolean isMistakable =
          tokens.kind() == FormulaScanner.Kind.FUNCTION
              && LIKE_A_CELL.matcher(tokens.text()).matches();
      out.append(isMistakable ? "_xll." : "").append(formula, tokens.start(), tokens.end());
    }
    return out.toString();
  }

  private static Ptg[] moved(Ptg[] tokens, int rows) {
    Ptg[] moved = new Ptg[tokens.length];
    for (int i = 0; i < moved.length; i++) {
      moved[i] = moved(tokens[i], rows);
    }
    return moved;
  }

  private static Ptg moved(Ptg token, int rows) {
    if (token instanceof RefPtgBase ref && ref.isRowRelative()) {
      RefPtgBase copy = (RefPtgBase) ref.copy();
      copy.setRow(copy.getRow() + rows);
      return copy;
    }
    if (token instanceof AreaPtgBase area && !isWholeColumn(area)) {
      AreaPtgBase copy = (AreaPtgBase) area.copy();
      if (copy.isFirstRowRelative()) {
        copy.setFirstRow(copy.getFirstRow() + rows);
      }
      if (copy.isLastRowRelative()) {
        copy.setLastRow(copy.getLastRow() + rows);
      }
      return copy;
    }
    return token;
  }

  /** {@code A:A} is written without rows; its form says nothing about them. */
  private static boolean isWholeColumn(AreaPtgBase area) {
    return area.getFirstRow() == 0 && area.getLastRow() >= 65535;
  }
}
