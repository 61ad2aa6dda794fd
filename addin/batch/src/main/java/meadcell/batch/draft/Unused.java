package meadcell.batch.draft;

/** Something on a sheet that was seen, and that no line of the plan takes. */
record Unused(String log, String where, String written, String why) {}
