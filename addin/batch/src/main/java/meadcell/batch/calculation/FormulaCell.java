package meadcell.batch.calculation;

import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.catalogue.Catalogue;

/** A cell with a formula, and what that reads. */
public record FormulaCell(int sheet, Place place, CellContent content, Reads reads) {
  /** Whether it calls one of the catalogue's functions. */
  public boolean isOurs(Catalogue catalogue) {
    return reads.functions().stream().anyMatch(name -> catalogue.find(name).isPresent());
  }

  /** Whether it calls a function of that name. */
  public boolean calls(String function) {
    return reads.functions().stream().anyMatch(function::equalsIgnoreCase);
  }
}
