package meadcell.batch.calculation;

/** The outcome of a formula that this tool cannot compute. */
public record Beyond(String reason) {}
