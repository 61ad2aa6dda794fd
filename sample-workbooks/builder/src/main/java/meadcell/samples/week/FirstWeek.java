package meadcell.samples.week;

import static meadcell.samples.sheet.Field.AS_TYPED;
import static meadcell.samples.sheet.Field.of;

import java.util.List;
import java.util.Locale;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/** Exercises for a new hire's first week, one to a sheet. */
public final class FirstWeek {
  private static final Field BRIX = of(Quantity.BRIX, AS_TYPED);
  private static final Field GRAVITY = of(Quantity.SPECIFIC_GRAVITY, 3);
  private static final Field GRAVITY_AS_TYPED = of(Quantity.SPECIFIC_GRAVITY, AS_TYPED);
  private static final Field TEMPERATURE = of(Quantity.TEMPERATURE, 0);
  private static final Field LENGTH = of(Quantity.LENGTH, 1);
  private static final Field VOLUME = of(Quantity.VOLUME, AS_TYPED);
  private static final Field SULFITE = of(Quantity.MILLIGRAM_PER_LITRE, AS_TYPED);
  private static final Field NUMBER = of(Quantity.NUMBER, AS_TYPED);
  private static final Field COUNT = of(Quantity.COUNT, AS_TYPED);

  private final Texts texts;

  private FirstWeek(Locale language) {
    texts = new Texts(language);
  }

  /** The book in this language. */
  public static Book build(Locale language) {
    return new FirstWeek(language).build();
  }

  private Book build() {
    Book book =
        new Book(texts.get("book"))
            .speaking(texts.language(), texts.get("check"), texts.get("oneof"));
    List<Exercise> exercises =
        List.of(
            moisture(),
            brix(),
            fruit(),
            thermometer(),
            air(),
            strength(),
            gauging(),
            headspace(),
            stick(),
            triangle(),
            blend(),
            sulfite(),
            pressure());
    OldPage page = new OldPage(texts);
    Instructions.add(book, texts, exercises, page);
    for (int i = 0; i < exercises.size(); i++) {
      boolean last = i + 1 == exercises.size();
      exercises
          .get(i)
          .add(
              book,
              last ? page.title() : exercises.get(i + 1).title(),
              last ? page.question() : exercises.get(i + 1).question());
    }
    page.add(book);
    return book.finish();
  }

  private Exercise moisture() {
    return new Exercise(texts, "moisture")
        .given("index", of(Quantity.REFRACTIVE_INDEX, 4), 1.4915)
        .ask(of(Quantity.PERCENT, AS_TYPED), "HONEY.MOISTURE(moisture_index)", "0.1")
        .refusedBy("HONEY.DENSITY", "moisture_answer")
        .reward("FIXED(HONEY.DENSITY(moisture_answer,units),3,TRUE)", texts.unit(Quantity.DENSITY))
        .published("HONEY.MOISTURE(1.4915)");
  }

  private Exercise brix() {
    return new Exercise(texts, "brix")
        .given("given", BRIX, 20)
        .ask(GRAVITY_AS_TYPED, "GRAVITY.FROMBRIX(brix_given)", "0.0003")
        .nearly(10)
        .refusedBy("GRAVITY.TOBRIX", "brix_answer")
        .published("GRAVITY.FROMBRIX(20)");
  }

  private Exercise thermometer() {
    return new Exercise(texts, "cold")
        .given("reading", GRAVITY, 1.1)
        .given("temperature", TEMPERATURE, 10)
        .given("calibration", TEMPERATURE, 20)
        .ask(
            GRAVITY_AS_TYPED,
            "GRAVITY.CORRECT(cold_reading,cold_temperature,cold_calibration,units)",
            "0.0005")
        .refusedBy("GRAVITY.TOBRIX", "cold_answer")
        .slip("cold_answer>=cold_reading", "away")
        .published("GRAVITY.CORRECT(1.1;10)");
  }

  private Exercise strength() {
    String thumb = "ALCOHOL.ABV(dry_original,dry_now,\"linear\")";
    return new Exercise(texts, "dry")
        .given("original", GRAVITY, 1.1)
        .given("now", GRAVITY, 0.995)
        .ask(of(Quantity.PERCENT_VOL, AS_TYPED), "ALCOHOL.ABV(dry_original,dry_now)", "0.06")
        .refusedBy("BOTTLE.TAXCLASS", "dry_answer")
        .reward("FIXED(ALCOHOL.UNCERTAINTY(dry_original,dry_now),1,TRUE)")
        .slip("ABS(dry_answer-" + thumb + ")<0.06", "thumb", "FIXED(" + thumb + ",2,TRUE)")
        .published("ALCOHOL.ABV(1.1;0.995)");
  }

  private Exercise gauging() {
    String sizes = "(gauge_head,gauge_bilge,gauge_length";
    return new Exercise(texts, "gauge")
        .given("head", NUMBER, 30.3)
        .given("bilge", NUMBER, 40.5)
        .given("length", NUMBER, 50)
        .ask(NUMBER, "BARREL.VOLUME" + sizes + ",\"US\")", "0.5")
        .slip("IFERROR(ABS(gauge_answer-BARREL.VOLUME" + sizes + "))<0.5,FALSE)", "litres")
        .published("BARREL.VOLUME(30.3;40.5;50;\"ellipse\";\"US\")");
  }

  private Exercise headspace() {
    String cask = "BARREL.HEADSPACE(space_head,space_bilge,space_length,space_drop";
    return new Exercise(texts, "space")
        .given("head", LENGTH, 50.5)
        .given("bilge", LENGTH, 64)
        .given("length", LENGTH, 81.5)
        .given("drop", LENGTH, 5)
        .ask(VOLUME, cask + ",units)", "0.15*litre")
        .refusedBy("BARREL.PURGE", "space_answer,1,units")
        .reward("FIXED(" + cask + "/5,units),2,TRUE)", texts.unit(Quantity.VOLUME))
        .published("BARREL.HEADSPACE(50.5;64;81.5;5;0;\"ellipse\")");
  }

  private Exercise stick() {
    String cask = "(stick_head,stick_bilge,stick_length,";
    return new Exercise(texts, "stick")
        .given("head", LENGTH, 50.5)
        .given("bilge", LENGTH, 64)
        .given("length", LENGTH, 81.5)
        .given("scale", of(Quantity.VOLUME, 1), 188.5)
        .ask(LENGTH, "BARREL.DIP" + cask + "stick_scale,units)", "0.5*centimetre")
        .refusedBy("BARREL.CONTENTS", cask.substring(1) + "stick_answer,units")
        .hint(
            "FIXED(BARREL.CONTENTS" + cask + "stick_answer,units),1,TRUE)",
            texts.unit(Quantity.VOLUME))
        .published("BARREL.CONTENTS(50.5;64;81.5;48)");
  }

  private Exercise sulfite() {
    return new Exercise(texts, "sulfite")
        .given("ph", of(Quantity.PH, AS_TYPED), 3.5)
        .given("wanted", SULFITE, 0.8)
        .ask(SULFITE, "SULFITE.FREENEEDED(sulfite_wanted,sulfite_ph)", "1")
        .refusedBy("SULFITE.MOLECULAR", "sulfite_answer,sulfite_ph")
        .reward(
            "FIXED(SULFITE.FREENEEDED(sulfite_wanted,3.8),0,TRUE)",
            "FIXED(225*litre,0,TRUE)",
            texts.unit(Quantity.VOLUME),
            "FIXED(SULFITE.DOSE(225*litre,sulfite_answer-25,units),0,TRUE)")
        .published("SULFITE.FREENEEDED(0.8;3.5)");
  }

  private Exercise triangle() {
    String chance = "PANEL.TRIANGLE(triangle_tasters,triangle_answer)";
    return new Exercise(texts, "triangle")
        .given("tasters", COUNT, 24)
        .ask(COUNT, "PANEL.TRIANGLENEEDED(triangle_tasters)", "0")
        .refusedBy("PANEL.TRIANGLE", "triangle_tasters,triangle_answer")
        .hint()
        .reward("FIXED(100*" + chance + ",1,TRUE)", "PANEL.TRIANGLENEEDED(6)")
        .slip(chance + ">0.05", "few", "FIXED(100*" + chance + ",0,TRUE)")
        .published("PANEL.TRIANGLENEEDED(24;0.05)");
  }

  private Exercise blend() {
    String share = "INDEX(BLEND.PARTS(blend_first,blend_second,blend_wanted),1,2)";
    return new Exercise(texts, "blend")
        .given("first", BRIX, 12)
        .given("second", BRIX, 65)
        .given("wanted", BRIX, 24)
        .ask(of(Quantity.MILLILITRE, AS_TYPED), share, "0.5")
        .refusedBy("BLEND.TRIAL", "100,blend_answer,1")
        .reward("FIXED(100-blend_answer,0,TRUE)")
        .slip("ABS(100-blend_answer-" + share + ")<0.5", "other")
        .published("BLEND.PARTS(12;65;24)");
  }

  private Exercise fruit() {
    return new Exercise(texts, "fruit")
        .given("mass", of(Quantity.MASS, 0), 100)
        .ask(
            of(Quantity.MASS, AS_TYPED),
            "MUST.FRUITSUGAR(\"sour cherry\",fruit_mass,units)",
            "0.15*kilogram")
        .refusedBy("MUST.FRUITSUGAR", "\"sour cherry\",fruit_answer,units")
        .published("MUST.FRUITSUGAR(\"sour cherry\";100)");
  }

  private Exercise air() {
    String room = "FERMENT.ROOMCO2(air_gas,air_room,air_changes";
    return new Exercise(texts, "air")
        .given("gas", of(Quantity.MASS_PER_HOUR, 3), 0.05)
        .given("room", of(Quantity.ROOM, 0), 60)
        .given("changes", NUMBER, 0.5)
        .ask(of(Quantity.PARTS_PER_MILLION, AS_TYPED), room + ",units)", "30")
        .reward("FIXED(" + room + "/10,units),0,TRUE)")
        .published("FERMENT.ROOMCO2(0.05;60;0.5)");
  }

  private Exercise pressure() {
    String sugar = "BOTTLE.REFERMENT(bottle_sugar,bottle_strength,";
    return new Exercise(texts, "bottle")
        .given("sugar", of(Quantity.GRAM_PER_LITRE, 0), 24)
        .given("strength", of(Quantity.PERCENT_VOL, 0), 11)
        .given("gas", of(Quantity.GRAM_PER_LITRE, 0), 0)
        .given("temperature", TEMPERATURE, 12)
        .ask(
            of(Quantity.PRESSURE, AS_TYPED),
            sugar + "bottle_gas,bottle_temperature,units)",
            "10*kilopascal")
        .refusedBy(
            "BOTTLE.CO2", "bottle_answer,bottle_temperature,bottle_strength,bottle_sugar,units")
        .slip("ABS(bottle_answer-" + sugar + "units))<10*kilopascal", "warm")
        .reward(
            "FIXED(" + sugar + "bottle_gas,units),0,TRUE)",
            texts.unit(Quantity.PRESSURE),
            "FIXED(100*kilopascal,0,TRUE)")
        .published("BOTTLE.REFERMENT(24;11;0;12)");
  }
}
