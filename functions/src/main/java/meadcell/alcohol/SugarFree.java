package meadcell.alcohol;

import meadcell.density.Balling;
import meadcell.density.EthanolWater;

/**
 * What of a honey mead's extract is no fermentable sugar, in g/L counted as sucrose, and its
 * standard uncertainty, from its parts:
 *
 * <ul>
 *   <li>9 % of the extract that the must held. Of honey's solids 5.6 % are no sugar or higher
 *       sugars and 8.8 % are disaccharides (White et al. 1962, USDA Technical Bulletin 1261: 4.6
 *       and 7.3 of 82.8), of which yeast ferments some: 5.6 % if all of them, 14.4 % if none. Taken
 *       as rectangular, that is an uncertainty of 2.5 %. Where between them: our own estimate, with
 *       which a dry mead that ends at 0.995 from 1.100 keeps 3 g/L.
 *   <li>6 % of the ethanol: 8 g of glycerol with 100 g of it, 4 to 10 in wines and meads (Gomes et
 *       al. 2013: 9.7; Prior et al. 2000: 4.3), which weighs on the hydrometer as 0.61 of its mass
 *       of sucrose (densities of 10 % solutions, CRC Handbook, from memory), and some 1.5 g of
 *       succinic and other acids (from memory). Uncertainty 1.5 %.
 *   <li>1 g/L of salts, nutrients and acid added, give or take 1: common practice, no source.
 * </ul>
 */
record SugarFree(double gramsPerLitre, double uncertainty) {

  private static final double OF_EXTRACT = 0.09;
  private static final double OF_ETHANOL = 0.06;
  private static final double ADDED = 1;
  private static final double U_OF_EXTRACT = 0.025;
  private static final double U_OF_ETHANOL = 0.015;
  private static final double U_ADDED = 1;

  static SugarFree of(Balling.Fermented mead, double extractPerEthanol) {
    double ethanol = mead.abvFraction() * EthanolWater.PURE_ETHANOL_DENSITY_20;
    double extract = mead.extractGramsPerLitre() + extractPerEthanol * ethanol;
    double fromExtract = U_OF_EXTRACT * extract;
    double fromEthanol = U_OF_ETHANOL * ethanol;
    return new SugarFree(
        OF_EXTRACT * extract + OF_ETHANOL * ethanol + ADDED,
        Math.sqrt(fromExtract * fromExtract + fromEthanol * fromEthanol + U_ADDED * U_ADDED));
  }
}
