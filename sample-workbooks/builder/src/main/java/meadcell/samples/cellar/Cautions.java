package meadcell.samples.cellar;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;

/** The usual cautions of a cellar, deferring to local codes and licensed practice. */
final class Cautions {
  static final String TITLE = "Cautions";

  private Cautions() {}

  static void add(Book book) {
    Block block =
        book.page(TITLE, 30, 30, 30, 30)
            .head(
                TITLE,
                "This book is arithmetic with named sources, not advice. Local codes, the makers'"
                    + " instructions and licensed practice come first.");
    caution(
        block,
        "Carbon dioxide",
        "Fermenting mead gives off about half the weight of its sugar as carbon dioxide. It lies near the floor, in pits and in tanks, and kills without warning. Measure the air before you enter, ventilate, never enter a tank alone. No number in this book clears a room for entry.");
    caution(
        block,
        "Bottles under pressure",
        "Fermentable sugar and living yeast in a closed bottle can burst it. Pressures here are gauge pressures at equilibrium; glass has flaws, warm stores are warmer than planned. Wear eye protection. Use bottles made and rated for the pressure.");
    caution(
        block,
        "Sulfites",
        "Sulfur dioxide and its salts irritate lungs and eyes and can bring on an asthma attack; some people react to traces in the glass. Weigh them under good ventilation. Declare them on the label where the law asks (in many countries from 10 mg/L of total SO₂). Maximum amounts are set by law and differ from place to place.");
    caution(
        block,
        "Alcohol and fire",
        "Strong spirit, sanitising alcohol and a cask that has just held spirit give off vapour that burns. No flame, no burning wick, no grinding, no static near them; ventilate first.");
    caution(
        block,
        "Sulfur wicks",
        "Never burn sulfur in a cask that smells of spirit. Its gas is poisonous: outdoors or under extraction only.");
    caution(
        block,
        "Pressing a cask",
        "A wooden cask is not a pressure vessel. The push through the nail hole that this book computes is refused above 15 kPa; use a regulator and a relief valve, and stand aside from the heads.");
    caution(
        block,
        "Cleaning",
        "Caustic, acids and hot water burn; caustic and acid must not meet. Chlorine has no place near wood. Follow the maker's sheet and wear what it says.");
    caution(
        block,
        "Lifting",
        "A full cask weighs a quarter of a tonne. Chock it, move it with two people or a machine, and keep feet and hands clear.");
    caution(
        block,
        "Label and tax",
        "Strength limits, tax classes and words on labels are quoted from published law with its date, and law changes. Check the current text and ask your authority before you print or declare.");
    caution(
        block,
        "Drinking",
        "Tasting is work: spit. Nobody who has been tasting drives or runs a machine.");
  }

  private static void caution(Block block, String what, String words) {
    block.heading(what).story(words);
  }
}
