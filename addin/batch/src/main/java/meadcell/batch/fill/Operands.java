package meadcell.batch.fill;

import java.util.HashMap;
import java.util.Map;
import meadcell.batch.plan.PlanFormula;
import meadcell.batch.plan.PlanFormula.Reference;

/** What the references of a formula stand for in one cell. */
final class Operands {
  private final Map<Reference, String> formulas = new HashMap<>(4);

  private String problem = "";
  private String note = "";
  private boolean isAnyFilled;

  void add(Reference reference, Input input) {
    formulas.put(reference, input.formula());
    problem = problem.isEmpty() ? input.problem() : problem;
    note =
        note.isEmpty() || input.note().isEmpty() ? note + input.note() : note + " " + input.note();
    isAnyFilled |= !input.isBlank();
  }

  /** Adds others without their notes, which are told elsewhere. */
  void addQuietly(Operands others) {
    formulas.putAll(others.formulas);
    problem = problem.isEmpty() ? others.problem : problem;
  }

  /** Why there can be no formula; empty if there can. */
  String problem() {
    return problem;
  }

  /** How they were read, where that is not plain; empty otherwise. */
  String note() {
    return note;
  }

  boolean isAnyFilled() {
    return isAnyFilled;
  }

  String in(PlanFormula formula) {
    return formula.with(formulas);
  }
}
