package meadcell.samples.week;

import static meadcell.samples.sheet.Field.AS_TYPED;
import static meadcell.samples.sheet.Field.of;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.catalogue.Quantity;
import meadcell.samples.cellar.About;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/** Exercises for a new hire's first week, one to a sheet. */
public final class FirstWeek {
  private static final Field INDEX = of(Quantity.REFRACTIVE_INDEX, 4);
  private static final Field PERCENT = of(Quantity.PERCENT, AS_TYPED);
  private static final Field BRIX = of(Quantity.BRIX, AS_TYPED);
  private static final Field GRAVITY = of(Quantity.SPECIFIC_GRAVITY, 3);
  private static final Field STRENGTH = of(Quantity.PERCENT_VOL, AS_TYPED);
  private static final Field LENGTH = of(Quantity.LENGTH, 1);
  private static final Field NUMBER = of(Quantity.NUMBER, AS_TYPED);
  private static final Field COUNT = of(Quantity.COUNT, AS_TYPED);

  private FirstWeek() {}

  public static Book build() {
    Book book = new Book("First week");
    List<Exercise> exercises =
        List.of(
            moisture(),
            brix(),
            thermometer(),
            strength(),
            gauging(),
            headspace(),
            stick(),
            sulfite(),
            triangle(),
            blend(),
            fruit());
    Map<String, String> sheets = new LinkedHashMap<>();
    exercises.forEach(exercise -> sheets.put(exercise.title(), exercise.question()));
    Block rules =
        About.add(
            book,
            "First week",
            "Eleven short exercises for someone new to the cellar and its spreadsheet.",
            sheets);
    rules
        .heading("How to work")
        .note(
            "Read the story, look at what is given, type your answer into the framed cell. A number"
                + " that you worked out is fine; a formula with one of the functions is better: begin"
                + " with =, type the family, such as HONEY., and choose. The line below says whether it"
                + " is right, or why not. Nothing you type can break anything.");
    exercises.forEach(exercise -> exercise.add(book));
    return book.finish();
  }

  private static Exercise moisture() {
    return new Exercise(
            "Moisture",
            "Honey keeps because it is dry. A drop on the refractometer bends light the more, the less"
                + " water is in it. More than about 20 % of water and wild yeasts can grow.\n"
                + "In this cellar per cent are written as plain numbers: seventeen per cent is 17, not"
                + " 0.17, and no cell is formatted with a per cent sign.")
        .given("Refractive index at 20 °C", INDEX, 1.4915, "moisture_index")
        .ask("How much water is in the honey?", PERCENT, "moisture_answer")
        .refusedBy("HONEY.DENSITY", "moisture_answer")
        .right(
            "ABS(moisture_answer-HONEY.MOISTURE(moisture_index))<0.1",
            "\"Such honey weighs \"&TEXT(HONEY.DENSITY(moisture_answer),\"0.000\")&\" kg a litre.\"")
        .hint("\"HONEY.MOISTURE takes the index and gives the per cent of water.\"")
        .published("HONEY.MOISTURE(1.4915)");
  }

  private static Exercise brix() {
    return new Exercise(
            "Two scales",
            "A must of 20 °Brix holds 20 g of sugar in 100 g. The hydrometer says how much heavier it is"
                + " than water. Both speak of the same sugar.\n"
                + "Old logs often write gravity without its point: 1083 means 1.083. The functions take"
                + " 1.083 only, and say so.")
        .given("Refractometer, at 20 °C", BRIX, 20, "brix_given")
        .ask(
            "Which specific gravity is that?",
            of(Quantity.SPECIFIC_GRAVITY, AS_TYPED),
            "brix_answer")
        .refusedBy("GRAVITY.TOBRIX", "brix_answer")
        .right(
            "ABS(brix_answer-GRAVITY.FROMBRIX(brix_given))<0.0003",
            "\"GRAVITY.TOBRIX leads back.\"")
        .hint(
            "\"GRAVITY.FROMBRIX gives it. For a first guess: four points of gravity for each °Brix.\"")
        .published("GRAVITY.FROMBRIX(20)");
  }

  private static Exercise thermometer() {
    return new Exercise(
            "Thermometer",
            "Cold liquid is denser, so a hydrometer floats higher in it and reads too high. It is right"
                + " only at the temperature printed on its scale. Write down what you read and how warm"
                + " the sample was; let the function do the rest.")
        .given("Reading", GRAVITY, 1.1, "cold_reading")
        .given("Temperature of the sample", of(Quantity.TEMPERATURE, 0), 10, "cold_temperature")
        .given("Hydrometer made for", of(Quantity.TEMPERATURE, 0), 20, "cold_calibration")
        .ask("What is the true gravity?", of(Quantity.SPECIFIC_GRAVITY, AS_TYPED), "cold_answer")
        .refusedBy("GRAVITY.TOBRIX", "cold_answer")
        .right(
            "ABS(cold_answer-GRAVITY.CORRECT(cold_reading,cold_temperature,cold_calibration,units))<0.0003",
            "\"Two and a half points: enough to be half a per cent of alcohol in the plan.\"")
        .hint(
            "IF(cold_answer>cold_reading,\"In the cold it reads too high, so the true gravity is lower.\",\"GRAVITY.CORRECT takes the reading, the temperature and the hydrometer's own temperature, and units as the last argument.\")")
        .published("GRAVITY.CORRECT(1.1;10)");
  }

  private static Exercise strength() {
    return new Exercise(
            "Dry mead",
            "Alcohol is lighter than water. A mead without sugar therefore floats the hydrometer below"
                + " 1.000, and that is no misreading.\n"
                + "The rule of thumb, 131.25 times the difference, is in many old logs. For a dry mead it"
                + " gives about 0.3 % vol less than the balance of what sugar turns into.")
        .given("Original gravity", GRAVITY, 1.1, "dry_original")
        .given("Gravity now, corrected", GRAVITY, 0.995, "dry_now")
        .ask("How strong is it?", STRENGTH, "dry_answer")
        .refusedBy("BOTTLE.TAXCLASS", "dry_answer")
        .right(
            "ABS(dry_answer-ALCOHOL.ABV(dry_original,dry_now))<0.06",
            "\"By mass balance, ± \"&TEXT(ALCOHOL.UNCERTAINTY(dry_original,dry_now),\"0.0\")&\", for yeasts differ in yield. What goes on a label, a laboratory measures.\"")
        .hint(
            "IF(ABS(dry_answer-ALCOHOL.ABV(dry_original,dry_now,\"linear\"))<0.06,\"That is the rule of thumb: \"&TEXT(ALCOHOL.ABV(dry_original,dry_now,\"linear\"),\"0.00\")&\".\",\"ALCOHOL.ABV takes the original and the present gravity.\")")
        .published("ALCOHOL.ABV(1.1;0.995)");
  }

  private static Exercise gauging() {
    return new Exercise(
            "Gauging",
            "Three inside sizes say what a cask holds: the head, the bilge (widest, under the bung) and"
                + " the length. An old school book gauges one in inches and wine gallons, which are"
                + " today's US gallons.\n"
                + "End a call with \"US\" and it takes inches and gives gallons, whatever the rest of the"
                + " book is set to.")
        .given("Head, inches", NUMBER, 30.3, "gauge_head")
        .given("Bilge, inches", NUMBER, 40.5, "gauge_bilge")
        .given("Length, inches", NUMBER, 50, "gauge_length")
        .ask("How many US gallons does it hold?", NUMBER, "gauge_answer")
        .refusedBy("BARREL.DIP", "gauge_head,gauge_bilge,gauge_length,gauge_answer,\"US\"")
        .right(
            "ABS(gauge_answer-BARREL.VOLUME(gauge_head,gauge_bilge,gauge_length,\"US\"))<0.5",
            "\"The book of the day says 237.915.\"")
        .hint(
            "\"BARREL.VOLUME takes head, bilge and length, and \"\"US\"\" as the last argument.\"")
        .published("BARREL.VOLUME(30.3;40.5;50;\"ellipse\";\"US\")");
  }

  private static Exercise headspace() {
    return new Exercise(
            "Headspace",
            "A cask lies on its side, so the surface is small when it is brimful and wide when it is"
                + " half. The first finger's breadth below the bung is a glass or two; five times as"
                + " far is twenty times as much. That is why casks are topped up before it shows.")
        .given("Head", LENGTH, 50.5, "space_head")
        .given("Bilge", LENGTH, 64, "space_bilge")
        .given("Length", LENGTH, 81.5, "space_length")
        .given("Surface below the bung, inside", LENGTH, 5, "space_drop")
        .ask("How much is missing?", of(Quantity.VOLUME, AS_TYPED), "space_answer")
        .refusedBy("BARREL.PURGE", "space_answer,1,units")
        .right(
            "ABS(space_answer-BARREL.HEADSPACE(space_head,space_bilge,space_length,space_drop,units))<0.03*space_answer",
            "\"A fifth of that drop is only \"&TEXT(BARREL.HEADSPACE(space_head,space_bilge,space_length,space_drop/5,units),\"0.00\")&\".\"")
        .hint(
            "\"BARREL.HEADSPACE takes head, bilge, length and the drop, and units as the last argument.\"")
        .published("BARREL.HEADSPACE(50.5;64;81.5;5;0;\"ellipse\")");
  }

  private static Exercise stick() {
    return new Exercise(
            "Ask why",
            "Someone noted a wet depth of 480 for this cask: millimetres. Such a slip must not become a"
                + " number in the book, so the function refuses it with an error.\n"
                + "CELLAR.WHY with the same arguments says which one it does not like. Type 480 first,"
                + " then what the stick really said.")
        .given("Head", LENGTH, 50.5, "stick_head")
        .given("Bilge", LENGTH, 64, "stick_bilge")
        .given("Length", LENGTH, 81.5, "stick_length")
        .given("Contents, by the scale", of(Quantity.VOLUME, 1), 188.5, "stick_scale")
        .ask("Which wet depth did the stick show?", LENGTH, "stick_answer")
        .refusedBy("BARREL.CONTENTS", "stick_head,stick_bilge,stick_length,stick_answer,units")
        .right(
            "ABS(BARREL.CONTENTS(stick_head,stick_bilge,stick_length,stick_answer,units)-stick_scale)<0.01*stick_scale",
            "\"Stick and scale agree.\"")
        .hint(
            "\"The function takes that, but the cask would hold \"&TEXT(BARREL.CONTENTS(stick_head,stick_bilge,stick_length,stick_answer,units),\"0.0\")&\", not what the scale says.\"")
        .published("BARREL.CONTENTS(50.5;64;81.5;48)");
  }

  private static Exercise sulfite() {
    return new Exercise(
            "Sulfite",
            "Only the small molecular part of the free sulfur dioxide keeps spoilers down, and how small"
                + " it is depends on pH. At a higher pH the same protection takes much more.\n"
                + "Sulfites can bring on asthma. Weigh them under ventilation, and never taste to check.")
        .given("pH", of(Quantity.PH, AS_TYPED), 3.5, "sulfite_ph")
        .given(
            "Molecular SO₂ wanted",
            of(Quantity.MILLIGRAM_PER_LITRE, AS_TYPED),
            0.8,
            "sulfite_wanted")
        .ask(
            "How much free SO₂ does it take?",
            of(Quantity.MILLIGRAM_PER_LITRE, AS_TYPED),
            "sulfite_answer")
        .refusedBy("SULFITE.MOLECULAR", "sulfite_answer,sulfite_ph")
        .right(
            "ABS(sulfite_answer-SULFITE.FREENEEDED(sulfite_wanted,sulfite_ph))<1",
            "\"At pH 3.8 it would be \"&TEXT(SULFITE.FREENEEDED(sulfite_wanted,3.8),\"0\")&\".\"")
        .hint("\"SULFITE.FREENEEDED takes the molecular SO₂ wanted and the pH.\"")
        .published("SULFITE.FREENEEDED(0.8;3.5)");
  }

  private static Exercise triangle() {
    return new Exercise(
            "Triangle",
            "Three glasses, two alike: who finds the odd one? By guessing alone a third do. So a few"
                + " right answers prove nothing; it takes so many that guessing would hardly give them.")
        .given("Tasters", COUNT, 24, "triangle_tasters")
        .ask("How many must be right (5 % level)?", COUNT, "triangle_answer")
        .refusedBy("PANEL.TRIANGLE", "triangle_tasters,triangle_answer")
        .right(
            "triangle_answer=PANEL.TRIANGLENEEDED(triangle_tasters)",
            "\"Guessing gives that many in \"&TEXT(100*PANEL.TRIANGLE(triangle_tasters,triangle_answer),\"0.0\")&\" of 100 tests. Of six tasters \"&PANEL.TRIANGLENEEDED(6)&\" must be right.\"")
        .hint(
            "IF(PANEL.TRIANGLE(triangle_tasters,triangle_answer)>0.05,\"Guessing gives that many in \"&TEXT(100*PANEL.TRIANGLE(triangle_tasters,triangle_answer),\"0\")&\" of 100 tests: too few.\",\"Enough, but fewer would do.\")")
        .published("PANEL.TRIANGLENEEDED(24;0.05)");
  }

  private static Exercise blend() {
    return new Exercise(
            "Blend",
            "How far the target is from the one tells how much of the other. It works for what mixes by"
                + " volume, and nearly for strength. It does not work for pH: acids and salts buffer one"
                + " another, so pH is measured on a bench blend.")
        .given("First", BRIX, 12, "blend_first")
        .given("Second", BRIX, 65, "blend_second")
        .given("Wanted", BRIX, 24, "blend_wanted")
        .ask(
            "How many mL of the second in 100 mL?",
            of(Quantity.MILLILITRE, AS_TYPED),
            "blend_answer")
        .refusedBy("BLEND.TRIAL", "100,blend_answer,1")
        .right(
            "ABS(blend_answer-INDEX(BLEND.PARTS(blend_first,blend_second,blend_wanted),1,2))<0.5",
            "\"And \"&TEXT(100-blend_answer,\"0\")&\" mL of the first.\"")
        .hint(
            "IF(ABS(100-blend_answer-INDEX(BLEND.PARTS(blend_first,blend_second,blend_wanted),1,2))<0.5,\"That is the first one's share.\",\"BLEND.PARTS takes first, second and target and gives both shares side by side.\")")
        .published("BLEND.PARTS(12;65;24)");
  }

  private static Exercise fruit() {
    return new Exercise(
            "Fruit",
            "Fruit brings sugar, but less than one hopes: most of it is water, some is stone and stem."
                + " The function takes the stones off by the published share of refuse.")
        .given("Sour cherries, whole", of(Quantity.MASS, 0), 100, "fruit_mass")
        .ask(
            "How much fermentable sugar do they bring?",
            of(Quantity.MASS, AS_TYPED),
            "fruit_answer")
        .refusedBy("MUST.FRUITSUGAR", "\"sour cherry\",fruit_answer,units")
        .right(
            "ABS(fruit_answer-MUST.FRUITSUGAR(\"sour cherry\",fruit_mass,units))<0.02*fruit_answer",
            "\"Honey brings about ten times as much a kilogram.\"")
        .hint(
            "\"MUST.FRUITSUGAR takes the fruit's name, its mass, and units as the last argument.\"")
        .published("MUST.FRUITSUGAR(\"sour cherry\";100)");
  }
}
