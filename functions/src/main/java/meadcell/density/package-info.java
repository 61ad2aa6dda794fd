/**
 * Densities of water, sugar solutions, ethanol solutions and mead, and what follows from them.
 *
 * <p>Everything here takes densities in kg/m³ (in vacuo), temperatures in °C, and fractions of 1;
 * g/L and kg/m³ are the same number. Symbols: <i>w</i> mass fraction of sucrose, <i>p</i> mass
 * fraction of ethanol, <i>q</i> volume fraction of ethanol at 20 °C, ρ density; a gravity is the
 * true specific gravity 20/20, ρ(20 °C) over the density of water at 20 °C.
 *
 * <p>The published formulas carry different water terms (at 20 °C: Tanaka 998.2067, Bettin and
 * Spieweck 998.2031, OIML R 22 998.2012). Each formula keeps its own, so a gravity of pure water is
 * exactly 1 in each; a mead's density is its gravity times the water of the sucrose formula.
 *
 * <p>Nothing here refuses: callers give values that make sense. An inverse whose answer would lie
 * outside the range stated for it throws {@link
 * org.apache.commons.math3.exception.NoBracketingException}; no inverse returns NaN.
 *
 * <p>Sources:
 *
 * <ul>
 *   <li>Tanaka, Girard, Davis, Peuto, Bignell, Metrologia 38 (2001) 301–309: water.
 *   <li>Bettin and Spieweck, PTB-Mitteilungen 100 (1990): the water of the sucrose formula.
 *   <li>ICUMSA Methods Book, SPS-4; also Bubník et al., Sugar Technologists Manual, 8th ed. 1995:
 *       sucrose solutions.
 *   <li>OIML R 22 (1975), after Wagenbreth and Blanke 1971; Council Directive 76/766/EEC, Annex:
 *       ethanol–water.
 *   <li>OIV-MA-AS2-03B (R2012): Tabarié's rule, total dry extract.
 *   <li>Nielsen, Kristiansen, Lassen, Erikstrøm, Balling's Formula – scrutiny of a brewing dogma:
 *       the mass balance of fermentation.
 * </ul>
 */
package meadcell.density;
