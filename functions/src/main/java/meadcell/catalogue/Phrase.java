package meadcell.catalogue;

/** What pages and descriptions say around the declared texts. */
enum Phrase implements Message {
  PURPOSE("Purpose"),
  USE("Use"),
  ARGUMENTS("Arguments"),
  RESULT("Result"),
  FORMULA("Formula"),
  EXAMPLE("Example"),
  NOTE("Note"),
  CAUTION("Caution"),
  SOURCE("Source"),
  VERSION("Version"),

  REFUSED("Refused"),
  NOT_COMPUTED("Not computed"),
  BECAUSE("Because"),
  OTHER_BEFORE("{function} gave other numbers before version {version}."),

  ARGUMENT("{name} = {value}"),
  ARGUMENT_HELP("{name} = {value}: {help}"),
  VALUE_FROM("{value} (from {from})"),
  NOTHING("left out"),
  SO("{value}, since left out"),
  CELLS("{rows} × {columns} cells: {values}"),
  ERROR("{argument} is an error: {error}."),
  ERROR_IN("{argument} is an error: {from} shows {error}."),
  THIS_CELL("{value} (in this cell)"),
  THIS_ROW("{value} (in this cell, row {row} of {rows})"),

  GIVES("Gives {result}."),
  BEWARE("Caution: {text}"),
  EXAMPLE_GIVES("{call} gives {result}"),
  UNITS("\"metric\" or \"US\", always last. If left out or blank: metric."),
  LEFT_OUT("If left out: {value}."),
  LEFT_OUT_OR_BLANK("If left out or blank: {value}."),
  BLANK_IS_ZERO("A blank cell counts as 0."),
  COLUMNS("Columns: {columns}."),
  MAY_BE_BLANK("{column} (may be blank)"),

  BETWEEN("{from} to {to}"),
  AT_LEAST("at least {limit}"),
  ABOVE("above {limit}"),
  AT_MOST("at most {limit}"),
  BELOW("below {limit}"),

  A_NUMBER("a number"),
  A_TEXT("a text"),
  A_ROW("a row of {parts}"),
  A_COLUMN("a column"),
  A_COLUMN_OF("a column of {unit}"),
  ROWS("rows of cells"),
  ROWS_OF("rows of {parts}"),
  WHATEVER("what the called function gives"),

  IN_ROW("{argument} in row {row}"),
  IN_CELL("{argument} in row {row}, column {column}"),
  IN_TABLE("{column} in row {row} of {argument}"),

  DID_YOU_MEAN("Did you mean {suggestion}?"),

  DECIMAL_POINT("."),
  BETWEEN_CELLS(","),
  BETWEEN_ROWS(";"),
  BETWEEN_CLAUSES(";");

  private final String english;

  Phrase(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
