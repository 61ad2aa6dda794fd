package meadcell.batch.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.Quantity;

/** A plan as read from its workbook. */
public record Plan(List<PlanRow> rows, Names names) {
  private static final List<String> REQUIRED = List.of("sheet", "result", "formula");
  private static final List<String> COLUMNS =
      List.of("workbook", "sheet", "result", "formula", "format", "note");

  /**
   * Reads a plan.
   *
   * @param name the workbook's file name, for messages
   */
  public static Plan read(Book book, String name, Catalogue catalogue) throws PlanMistake {
    Names names = new Names();
    List<PlanRow> rows = null;
    for (BookSheet sheet : book.sheets()) {
      switch (sheet.name().toLowerCase(Locale.ROOT)) {
        case "fill" -> rows = rows(sheet, catalogue);
        case "names" -> names(sheet, names);
        default -> {}
      }
    }
    if (rows == null) {
      throw new PlanMistake(name, "it has no sheet \"Fill\".");
    }
    if (rows.isEmpty()) {
      throw new PlanMistake("Fill", "it has no line with a Result and a Formula.");
    }
    requireNoCircle(rows, names);
    return new Plan(rows, names);
  }

  /** The plan as far as it is for a workbook. */
  public Plan forWorkbook(String fileName) {
    return new Plan(rows.stream().filter(row -> row.isForWorkbook(fileName)).toList(), names);
  }

  /** A result that is its own input would take the place of the readings it comes from. */
  private static void requireNoCircle(List<PlanRow> rows, Names names) throws PlanMistake {
    for (PlanRow row : rows) {
      Set<PlanRow> behind = new LinkedHashSet<>(List.of(row));
      for (Deque<PlanRow> open = new ArrayDeque<>(behind); !open.isEmpty(); ) {
        PlanRow next = open.poll();
        for (PlanFormula.Reference reference : next.formula().references()) {
          String input = names.read(reference.name()).name();
          if (input.equals(names.read(row.result()).name()) && row.mayMeet(next)) {
            throw new PlanMistake(
                row.where(),
                "the result \""
                    + row.result()
                    + "\" is also an input"
                    + (next.equals(row) ? "" : " of " + next.result() + ", from which it comes")
                    + "; give the result a name of its own.");
          }
          for (PlanRow other : rows) {
            boolean gives = names.read(other.result()).name().equals(input);
            if (gives && other.mayMeet(next) && behind.add(other)) {
              open.add(other);
            }
          }
        }
      }
    }
  }

  private static List<PlanRow> rows(BookSheet sheet, Catalogue catalogue) throws PlanMistake {
    Map<String, Integer> columns = new HashMap<>();
    int headerRow = headerRow(sheet, columns);
    List<PlanRow> rows = new ArrayList<>();
    for (int row = headerRow + 1; row <= sheet.lastRow(); row++) {
      String result = text(sheet, row, columns.get("result"));
      String formula = text(sheet, row, columns.get("formula"));
      if (result.isEmpty() && formula.isEmpty()) {
        continue;
      }
      String where = "Fill!" + new Place(row, columns.get("formula"));
      if (result.isEmpty() || formula.isEmpty()) {
        throw new PlanMistake(where, "a line needs both a Result and a Formula.");
      }
      String pattern = text(sheet, row, columns.get("sheet"));
      PlanFormula parsed = PlanFormulaReader.read(where, formula, catalogue);
      String format = format(sheet, row, columns.get("format"));
      rows.add(
          new PlanRow(
              where,
              text(sheet, row, columns.get("workbook")),
              pattern.isEmpty() ? "*" : pattern,
              result,
              parsed,
              format.isEmpty() ? usualFormat(parsed) : format));
    }
    return rows;
  }

  private static String usualFormat(PlanFormula formula) {
    Quantity gives = formula.outermost().map(f -> f.declaration().gives()).orElse(Quantity.NUMBER);
    return switch (gives) {
      case TEXT -> "General";
      case DATE -> "yyyy-mm-dd";
      default -> gives.decimals() == 0 ? "0" : "0." + "0".repeat(gives.decimals());
    };
  }

  private static int headerRow(BookSheet sheet, Map<String, Integer> columns) throws PlanMistake {
    for (int row = 0; row <= sheet.lastRow(); row++) {
      columns.clear();
      for (int column = 0; column <= sheet.lastColumn(row); column++) {
        String name = text(sheet, row, column).toLowerCase(Locale.ROOT);
        if (COLUMNS.contains(name)) {
          columns.putIfAbsent(name, column);
        }
      }
      if (columns.keySet().containsAll(REQUIRED)) {
        return row;
      }
    }
    String hint =
        Nearest.to(text(sheet, 0, 2), COLUMNS).map(near -> " Is it " + near + "?").orElse("");
    throw new PlanMistake(
        "Fill", "no row has the headers Sheet, Result, Formula (and Format, Note)." + hint);
  }

  private static void names(BookSheet sheet, Names names) {
    for (int row = 0; row <= sheet.lastRow(); row++) {
      String header = text(sheet, row, 0);
      for (int column = 1; column <= sheet.lastColumn(row) && !header.isEmpty(); column++) {
        String other = text(sheet, row, column);
        if (!other.isEmpty()) {
          names.add(header, other);
        }
      }
    }
  }

  private static String text(BookSheet sheet, int row, Integer column) {
    CellContent content =
        column == null ? CellContent.BLANK : sheet.content(new Place(row, column));
    return content.value() instanceof Value.Number number
        ? Figures.of(number.number())
        : content.value().toString().strip();
  }

  /** A number typed as 0.0000 is kept as 0, which no longer says how many decimals. */
  private static String format(BookSheet sheet, int row, Integer column) throws PlanMistake {
    String format = text(sheet, row, column);
    if (format.isEmpty()) {
      return format;
    }
    String where = "Fill!" + new Place(row, column);
    if (sheet.content(new Place(row, column)).value() instanceof Value.Number) {
      throw new PlanMistake(
          where,
          "the format was typed as a number, "
              + format
              + ", which keeps no decimals behind it; type it as a text, with an apostrophe in front:"
              + " '0.0000");
    }
    if (format.matches("0,0+")) {
      throw new PlanMistake(
          where,
          "in a format a comma sets off thousands; for decimals write "
              + format.replace(',', '.')
              + ".");
    }
    String signs = format.replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.|_.|\\*.", "");
    boolean isKnown =
        signs.equalsIgnoreCase("General")
            || signs.matches("(?i)(?:[dmyhsge0#?@.,;:%/ $€°()+-]|am|pm|a/p)+")
                && signs.matches("(?i).*[0#?@dmyhs].*");
    if (!isKnown) {
      throw new PlanMistake(
          where,
          "\""
              + format
              + "\" is not a number format; write 0.000 for three decimals, 0 for none, yyyy-mm-dd"
              + " for a date.");
    }
    return format;
  }
}
