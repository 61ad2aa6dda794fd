package meadcell.batch.book;

import java.util.List;

/**
 * A table that formulas address by its name and its columns' names.
 *
 * @param sheet position of its sheet
 * @param span all of it, with headers and totals
 */
public record NamedTable(
    String name, int sheet, Span span, int headerRows, int totalRows, List<String> columns) {}
