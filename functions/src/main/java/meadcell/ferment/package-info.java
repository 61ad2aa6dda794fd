/** The running ferment: progress, forecast, state, gas and heat. */
package meadcell.ferment;
