package meadcell.samples.cellar;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;

/** One cask, decided: what the other sheets say, gathered. */
final class Decide {
  static final String TITLE = "Decide";

  private Decide() {}

  static void add(Book book) {
    Block block =
        book.page(TITLE, 30, 30, 30, 30)
            .head(
                "Cask C1: is it ready, and for what?",
                "Five questions, each answered by the sheet that has the numbers. The last word is the cellar's.");
    question(
        block,
        "Is it still getting better?",
        "Sheet Panel: slope of the scores and its 95 % limits.",
        "panel_verdict");
    question(
        block,
        "Is it another mead than C2, or may they be pooled?",
        "Sheet Panel: triangle test. Few tasters see little, so a no is often only a cannot tell.",
        "tri_verdict");
    question(
        block,
        "Which blend meets the targets?",
        "Sheet Blend: the cheapest plan within the stock, and whole casks beside it.",
        "IF(plan_on_target=\"yes\",\"The plan is on target: \"&TEXT(plan_abv,\"0.0\")&\" % vol, \"&TEXT(plan_sugar,\"0.0\")&\" g/L sugar, \"&TEXT(plan_acid,\"0.0\")&\" g/L acid.\",\"No blend from this stock meets the targets.\")");
    question(
        block,
        "Which pH will it have?",
        "Acids and salts buffer one another: pH does not blend by volume, and no function here pretends so.",
        "IF(plan_ph=\"\",\"Not known: measure the bench blend.\",\"Measured on the bench blend: \"&TEXT(plan_ph,\"0.00\")&\".\")");
    question(
        block,
        "Does the label hold?",
        "Sheet Stabilise & bottle: the whole interval of the measurement against the legal one.",
        "label_verdict");
    block.note("An undecided answer is an answer: it says what to measure next.");
  }

  private static void question(Block block, String question, String from, String formula) {
    block.heading(question).note(from).verdict(formula, 2);
  }
}
