package meadcell.ferment;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.ferment.Shared.Original;
import meadcell.ferment.Shared.Present;
import meadcell.ferment.Shared.Volume;

/** What a ferment gives off: carbon dioxide and heat. */
@Family(name = "FERMENT")
public final class Release {
  private static final String HEAT =
      " Heat of reaction: 101 kJ per mole of hexose, for sugar and ethanol dissolved and carbon"
          + " dioxide as gas: the middle of 101.4 by enthalpies of formation of Alberty 2003, read second-hand"
          + " (kJ/mol: glucose −1262.19, ethanol −288.3, carbon dioxide −393.5) and 100.6 by those of the"
          + " database OBIGT of CHNOSZ; molar mass of ethanol 46.069.";
  private static final String ROOM_CAUTION =
      "Carbon dioxide is heavier than air, does not smell of danger and kills in closed rooms, pits,"
          + " tanks and cellars. Ventilate low down, measure with a gas meter before and while you are"
          + " in, never go in alone. Local rules and a ventilation engineer decide.";

  /** kJ per g of ethanol made. */
  private static final double HEAT_PER_ETHANOL = 101 / (2 * 46.069);

  /** Gravity step over which heat and fall are in proportion. */
  private static final double SMALL_FALL = 1e-4;

  private static final double SECONDS_PER_DAY = 86400;

  /** Litres of a mole of gas at 20 °C and 101.325 kPa, by the ideal gas law. */
  private static final double MOLAR_VOLUME = 8.314462618 * 293.15 / 101.325;

  private static final double CO2_MOLAR_MASS = 44.0095;

  /** Immediately dangerous to life or health: NIOSH 1994. */
  private static final double DANGEROUS_PPM = 40_000;

  private Release() {}

  /**
   * {@return carbon dioxide made so far, kg}
   *
   * @param volumeL mead in the tank, L
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, SG
   */
  @CellarFunction(
      summary = "Carbon dioxide that a ferment has given off so far.",
      gives = Quantity.MASS,
      formula = "0.9565 g for each g of ethanol; ethanol by Balling's balance.",
      source = Shared.BALANCE,
      example = "FERMENT.GAS(100;1.1;0.995)",
      note =
          "1 kg of carbon dioxide is 547 L of gas at 20 °C. Some 1.5 g/L of it stays dissolved"
              + " at 20 °C (Regulation (EEC) 2676/90).",
      caution = ROOM_CAUTION)
  public static double gas(
      @Volume double volumeL, @Original double original, @Present double present) {
    return volumeL * Balling.CO2_PER_ETHANOL * Course.ethanol(original, present) / 1000;
  }

  /**
   * {@return heat made so far, kJ}
   *
   * @param volumeL mead in the tank, L
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, SG
   */
  @CellarFunction(
      summary = "Heat that a ferment has made so far.",
      gives = Quantity.KILOJOULE,
      formula = "1.096 kJ for each g of ethanol (101 kJ per mole of hexose); Balling's balance.",
      source = Shared.BALANCE + HEAT,
      example = "FERMENT.HEAT(100;1.1;0.995)",
      note =
          "Without cooling, and were nothing lost, it warms a litre by 1 °C for each 4 kJ. 118 kJ per"
              + " mole, often printed, is not supported by heats of formation.")
  public static double heat(
      @Volume double volumeL, @Original double original, @Present double present) {
    return volumeL * HEAT_PER_ETHANOL * Course.ethanol(original, present);
  }

  /**
   * {@return cooling power for a rate of fall, W}
   *
   * @param volumeL mead in the tank, L
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, SG
   * @param fallPerDay fall of gravity in a day, SG per day
   */
  @CellarFunction(
      summary = "Cooling power that holds the temperature while the gravity falls at a given rate.",
      gives = Quantity.WATT,
      formula =
          "Heat per fall of gravity at present, as in FERMENT.HEAT, times fallPerDay / 86400.",
      source = Shared.BALANCE + HEAT,
      example = "FERMENT.COOLING(1000;1.1;1.06;0.01)",
      note = "Heat through the walls comes on top. FERMENT.FORECAST gives the fastest fall.")
  public static double cooling(
      @Volume double volumeL,
      @Original(from = 1.001) double original,
      @Present double present,
      @Arg(
              name = "fallPerDay",
              help = "Fall of gravity in a day",
              is = Quantity.GRAVITY_PER_DAY,
              above = 0,
              to = 0.1)
          double fallPerDay) {
    double later = heat(volumeL, original, present - SMALL_FALL);
    double perFall = (later - heat(volumeL, original, present)) / SMALL_FALL;
    return 1000 * perFall * fallPerDay / SECONDS_PER_DAY;
  }

  /**
   * {@return carbon dioxide in the air of a room, ppm}
   *
   * @param gasKgPerHour carbon dioxide given off in an hour, kg/h
   * @param roomM3 air space of the room, m³
   * @param airChanges how often the room's air is renewed in an hour
   * @param outsidePpm carbon dioxide in the outside air, ppm
   */
  @CellarFunction(
      summary = "Carbon dioxide in a ventilated room where mead ferments, once it is steady.",
      gives = Quantity.PARTS_PER_MILLION,
      formula =
          "(air · outside + gas · 10⁶) / (air + gas), with air = room · airChanges and gas in m³/h at"
              + " 20 °C, 0.547 m³/kg.",
      source =
          "Mass balance of well-mixed air. Outside air 420 ppm: from memory. Limits: 29 CFR"
              + " 1910.1000 Table Z-1, 5000 ppm over 8 hours; NIOSH criteria document of 1976,"
              + " 30 000 ppm for at most 10 minutes; NIOSH 1994, 40 000 ppm immediately dangerous to"
              + " life or health, read second-hand.",
      example = "FERMENT.ROOMCO2(0.2;150;1)",
      note =
          "From 40 000 ppm on it is refused: nobody works there.\n"
              + "The gas of a day's fall: FERMENT.GAS of tomorrow's gravity less today's, by 24.",
      caution =
          "This is the mean of well-mixed air. The air at the floor, in pits and between tanks is"
              + " worse. No result means that a room may be entered. "
              + ROOM_CAUTION)
  public static double roomCo2(
      @Arg(
              name = "gasPerHour",
              help = "Carbon dioxide given off in an hour",
              is = Quantity.MASS_PER_HOUR,
              above = 0,
              to = 1000)
          double gasKgPerHour,
      @Arg(name = "room", help = "Air space of the room", is = Quantity.ROOM, above = 0, to = 1e5)
          double roomM3,
      @Arg(
              name = "airChanges",
              help = "How often the room's air is renewed in an hour",
              above = 0,
              to = 100)
          double airChanges,
      @Arg(
              name = "outside",
              help = "Carbon dioxide in the outside air",
              is = Quantity.PARTS_PER_MILLION,
              from = 300,
              to = 2000,
              byDefault = 420)
          double outsidePpm) {
    double air = roomM3 * airChanges;
    double gas = gasKgPerHour / CO2_MOLAR_MASS * MOLAR_VOLUME;
    double ppm = (air * outsidePpm + gas * 1e6) / (air + gas);
    if (ppm >= DANGEROUS_PPM) {
      throw new Refusal(FermentReason.DEADLY)
          .with("gas", ppm, Quantity.PARTS_PER_MILLION, 2)
          .with("limit", DANGEROUS_PPM, Quantity.PARTS_PER_MILLION);
    }
    return ppm;
  }
}
