package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.cell;
import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.cellar.Formulas.quoted;
import static meadcell.samples.sheet.Block.Entry.typed;
import static meadcell.samples.sheet.Block.Entry.worked;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;

import java.time.LocalDate;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Block.Entry;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Workings;

/**
 * What a cask holds by its dip, by the drop of its surface and by its weight, and how they agree.
 */
final class ThreeWays {
  private static final Field SHARE = of(Quantity.PERCENT, 0);
  private static final Field LITRES = of(Quantity.VOLUME, 2);
  private static final Field LENGTH = of(Quantity.LENGTH, 1);
  private static final Field MASS = of(Quantity.MASS, 1);
  private static final Field DENSITY = of(Quantity.DENSITY, 4);
  private static final Field LENGTH_SPREAD =
      between(Quantity.LENGTH, 1, "Standard uncertainty of that measurement.", 0, 10);
  private static final Field MASS_SPREAD =
      between(Quantity.MASS, 1, "Standard uncertainty of that weighing.", 0, 50);

  private static final String BY_DIP =
      "BARREL.CONTENTS(way_head,way_bilge,way_length,way_dip,units)";
  private static final String BY_DROP =
      "BARREL.CONTENTS(way_head,way_bilge,way_length,way_bilge-way_drop,units)";
  private static final String BY_WEIGHT = "BARREL.BYWEIGHT(way_gross,way_wet,way_density,units)";

  private ThreeWays() {}

  static void add(Book book, Block block) {
    book.formulaName("way_row", "IF(AND(cask<>\"\",way_cask=cask),MATCH(cask,vessel_name,0),NA())");
    block
        .heading("Gauged three ways")
        .choose(
            "Measured was", "vessel_list", "C1", "way_cask", "What is typed below belongs to it.")
        .input(
            "Measured on",
            DATE,
            LocalDate.of(2026, 1, 5),
            "way_day",
            "A day with its dip in Movements, before any topping.")
        .input(
            "Temperature of the mead",
            arg("GRAVITY.DENSITY", "temperature", 0),
            13,
            "way_temperature",
            "With its gravity (Readings) and strength (Analyses) it gives the density.")
        .note(
            "Each ± is a standard uncertainty. The columns say how much of a way's uncertainty comes from it: better the largest first.")
        .headers("Measured", "value", "±", "by dip", "by drop", "by weight");
    size(block, "Head, inside", "vessel_head", "head", 1, dropShare("INDEX(SHARES,1)"));
    size(
        block,
        "Bilge, inside",
        "vessel_bilge",
        "bilge",
        2,
        dropShare("(INDEX(SHARES,2)+INDEX(SHARES,4))"));
    size(block, "Length, inside", "vessel_length", "length", 3, dropShare("INDEX(SHARES,3)"));
    block.line(
        "Wet depth",
        worked(
            LENGTH,
            orBlank(
                "AVERAGEIFS(move_dip,move_to,INDEX(vessel_name,way_row),move_from,\"gauge\",move_day,way_day)*centimetre"),
            "way_dip"),
        typed(LENGTH_SPREAD, 0.2, "way_u_dip"),
        share("dip", 4));
    block.line(
        "Drop of the surface",
        typed(arg("BARREL.HEADSPACE", "drop", 1), 2.3, "way_drop"),
        typed(LENGTH_SPREAD, 0.2, "way_u_drop"),
        null,
        shown("way_drop_read", "100*(way_drop_read/way_u_by_drop)^2"));
    block.line(
        "Weight with the mead",
        typed(arg("BARREL.BYWEIGHT", "gross", 1), 248.6, "way_gross"),
        typed(MASS_SPREAD, 0.5, "way_u_gross"),
        null,
        null,
        share("weight", 1));
    block.line(
        "Weight empty and wet",
        worked(MASS, found("vessel_tare", "kilogram"), "way_wet"),
        typed(MASS_SPREAD, 0.6, "way_u_wet"),
        null,
        null,
        share("weight", 2));
    block.line(
        "Density",
        worked(DENSITY, density(), "way_density"),
        typed(between(Quantity.DENSITY, 4, "Standard uncertainty.", 0, 1), 0.0005, "way_u_density"),
        null,
        null,
        share("weight", 3));
    block.line(
        "Contents",
        null,
        null,
        worked(VOLUME, contents(BY_DIP, "dip"), "way_by_dip"),
        worked(VOLUME, contents(BY_DROP, "drop"), "way_by_drop"),
        worked(VOLUME, contents(BY_WEIGHT, "gross"), "way_by_weight"));
    block.line(
        "± (standard)",
        null,
        null,
        worked(LITRES, orBlank("way_dip_u"), "way_u_by_dip"),
        worked(
            LITRES,
            given("way_drop_read", "SQRT(SUMSQ(way_drop_u,way_drop_read))"),
            "way_u_by_drop"),
        worked(LITRES, orBlank("way_weight_u"), "way_u_by_weight"));
    disagreement(block);
  }

  /** What the register says of the cask that was measured. */
  private static String found(String column, String factor) {
    return orBlank(
        "IF(ISNUMBER(INDEX(#,way_row)),INDEX(#,way_row)*".replace("#", column) + factor + ",\"\")");
  }

  private static String density() {
    String gravity =
        "AVERAGEIFS(g_gravity,g_lot,cask,g_day,MAXIFS(g_day,g_lot,cask,g_day,\">=\"&cask_since,g_day,\"<=\"&way_day))";
    String strength = cell(Formulas.carried("cask", quoted("strength"), "way_day"), 1);
    return orBlank(
        "IF(OR(ISERROR(way_row),way_day=\"\",way_temperature=\"\"),\"\",GRAVITY.DENSITY("
            + gravity
            + ",way_temperature,"
            + strength
            + ",units))");
  }

  private static void size(
      Block block, String label, String column, String size, int place, Entry byDrop) {
    block.line(
        label,
        worked(LENGTH, found(column, "centimetre"), "way_" + size),
        typed(LENGTH_SPREAD, 0.2, "way_u_" + size),
        share("dip", place),
        byDrop);
  }

  /** The measurements of each way and their uncertainties, one below the other. */
  static void workings(Workings state) {
    way(
        state,
        "dip",
        "BARREL.CONTENTS",
        "way_head,way_bilge,way_length,way_dip",
        "head,bilge,length,dip",
        "");
    // the bilge's error is in the wet depth that the drop leaves, too; the drop's own comes on top
    state.column("way_twice", 2, "2*(ROW()-1)").block("way_both", "way_twice", "way_twice", 2);
    way(
        state,
        "drop",
        "BARREL.CONTENTS",
        "way_head,way_bilge,way_length,way_bilge-way_drop",
        "head,bilge,length,bilge",
        ",way_both");
    state
        .column("way_drop_alone", 6, "IF(ROW()=5,way_u_drop,\"\")")
        .block("way_drop_only", "way_drop_alone", "way_drop_alone", 6)
        .column(
            "drop_read",
            1,
            "IF(OR(way_drop_u=\"\",N(way_u_drop)=0),\"\",IFERROR(CELLAR.UNCERTAINTY(\"BARREL.CONTENTS\",way_drop_args,way_drop_only),\"\"))")
        .block("way_drop_read", "drop_read", "drop_read", 1);
    way(
        state,
        "weight",
        "BARREL.BYWEIGHT",
        "way_gross,way_wet,way_density",
        "gross,wet,density",
        "");
  }

  /** Blank unless every measurement of this way has its uncertainty. */
  private static void way(
      Workings state, String way, String function, String values, String measured, String shared) {
    String us = "way_u_" + measured.replace(",", ",way_u_");
    int count = values.split(",").length;
    String arguments = count == 4 ? values + ",\"\",units" : values + ",units";
    String blanks = count == 4 ? ",\"\",\"\"" : ",\"\"";
    int rows = arguments.split(",").length;
    String prefix = "way_" + way;
    state
        .column(
            prefix + "_arg",
            rows,
            "IF(ISERROR(way_row),\"\",IFERROR(CHOOSE(ROW()-1," + arguments + "),\"\"))")
        .column(prefix + "_each", rows, "CHOOSE(ROW()-1," + us + blanks + ")")
        .block(prefix + "_args", prefix + "_arg", prefix + "_arg", rows)
        .block(prefix + "_us", prefix + "_each", prefix + "_each", rows)
        .column(
            way + "_u",
            1,
            "IF(OR(COUNT(ARGS)<COUNTED,COUNTIF(US,\">0\")<COUNTED),\"\",IFERROR(CELLAR.UNCERTAINTY(\"FUNCTION\",ARGS,USSHARED),\"\"))"
                .replace("ARGS", prefix + "_args")
                .replace("US", prefix + "_us")
                .replace("SHARED", shared)
                .replace("COUNTED", Integer.toString(count))
                .replace("FUNCTION", function))
        .block(prefix + "_u", way + "_u", way + "_u", 1);
  }

  /** Of a way's variance, in per cent. */
  private static Entry share(String way, int place) {
    return shown(
        "way_" + way + "_u",
        "INDEX(CELLAR.SHARES(\"%s\",way_%s_args,way_%s_us),%d)"
            .formatted(
                way.equals("weight") ? "BARREL.BYWEIGHT" : "BARREL.CONTENTS", way, way, place));
  }

  private static Entry dropShare(String of) {
    return shown(
        "way_drop_read",
        (of + "*(way_drop_u/way_u_by_drop)^2")
            .replace(
                "SHARES", "CELLAR.SHARES(\"BARREL.CONTENTS\",way_drop_args,way_drop_us,way_both)"));
  }

  private static Entry shown(String known, String formula) {
    return worked(SHARE, given(known, orBlank(formula)), "");
  }

  private static String contents(String formula, String measured) {
    return orBlank("IF(OR(ISERROR(way_row),way_" + measured + "=0),\"\"," + formula + ")");
  }

  private static void disagreement(Block block) {
    block
        .headers("Difference", "value", "±")
        .line(
            "Dip less weight",
            worked(LITRES, difference("dip", "weight"), "way_dip_weight"),
            worked(LITRES, together("dip", "weight"), "way_u_dip_weight"))
        .line(
            "Drop less weight",
            worked(LITRES, difference("drop", "weight"), "way_drop_weight"),
            worked(LITRES, together("drop", "weight"), "way_u_drop_weight"))
        .line(
            "Dip and drop less bilge",
            worked(
                LENGTH,
                orBlank("IF(OR(way_by_dip=\"\",way_by_drop=\"\"),\"\",way_dip+way_drop-way_bilge)"),
                "way_stick"),
            worked(
                LENGTH,
                "IF(OR(way_stick=\"\",way_u_by_dip=\"\",way_u_by_drop=\"\"),\"\",SQRT(way_u_dip^2+way_u_drop^2+way_u_bilge^2))",
                "way_u_stick"))
        .verdict(
            "IF(cask=\"\",\"\",IF(way_cask<>cask,IF(way_cask=\"\",\"Choose what was measured.\",\"Measured was \"&way_cask&\": choose it above, or measure this one.\"),"
                + "IF(COUNT(way_u_dip_weight,way_u_drop_weight,way_u_stick)=0,\"Nothing to compare: it takes two ways, each with all of its measurements and their ±.\","
                + "IF(OR(OFF),\"They do not agree: look for a slip in a size, the stick or the empty weight.\","
                    .replace(
                        "OFF", off("dip_weight") + "," + off("drop_weight") + "," + off("stick"))
                + "\"They agree within twice their uncertainty.\"&IF(COUNT(way_by_weight)=0,\" But dip and drop lean on the same sizes; only a scale does not.\",\" Dip and drop lean on the same sizes; the scale does not.\")))))",
            2,
            "way_verdict");
  }

  private static String difference(String one, String other) {
    return "IF(OR(A=\"\",B=\"\"),\"\",A-B)"
        .replace("A=", "way_by_" + one + "=")
        .replace("B=", "way_by_" + other + "=")
        .replace("A-B", "way_by_" + one + "-way_by_" + other);
  }

  private static String together(String one, String other) {
    return "IF(OR(way_u_by_#=\"\",way_u_by_@=\"\"),\"\",SQRT(way_u_by_#^2+way_u_by_@^2))"
        .replace("#", one)
        .replace("@", other);
  }

  private static String off(String what) {
    return "IF(way_u_#=\"\",FALSE,ABS(way_#)>2*way_u_#)".replace("#", what);
  }
}
