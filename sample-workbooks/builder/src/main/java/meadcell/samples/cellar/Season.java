package meadcell.samples.cellar;

/** Rows for each register and log, as {@code Log.fill} takes them, and the day of the book. */
interface Season {
  String lots();

  String vessels();

  String past();

  String moves();

  String readings();

  String analyses();

  String tastings();

  String additions();

  String checks();
}
