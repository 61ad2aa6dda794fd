package meadcell.batch.recalc;

/** The outcome of a formula that this tool cannot compute. */
record Beyond(String reason) {}
