package meadcell.vessel;

import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;

/**
 * A vessel that holds something.
 *
 * @param vessel its name
 * @param liquid the liquid of which it holds most
 * @param volumeL how much it holds, L
 * @param days days since it was filled
 * @param fills how often it was filled so far
 */
public record Held(
    @Gives(value = "vessel", is = Quantity.TEXT) String vessel,
    @Gives(value = "largest liquid", is = Quantity.TEXT) String liquid,
    @Gives(value = "holds", is = Quantity.VOLUME) double volumeL,
    @Gives(value = "since it was filled", is = Quantity.DAYS) double days,
    @Gives(value = "number of fills", is = Quantity.COUNT) int fills) {}
