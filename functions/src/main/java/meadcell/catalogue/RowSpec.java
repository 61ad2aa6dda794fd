package meadcell.catalogue;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** The columns of a table, declared as the components of a record. */
final class RowSpec {
  /** A column for each component; null for the one that is told its row. */
  private final List<ArgSpec> columns = new ArrayList<>();

  private final Constructor<?> constructor;
  private final boolean hasRest;

  private final String table;

  private RowSpec(Class<?> type, String table) {
    this.table = table;
    RecordComponent[] components = type.getRecordComponents();
    for (RecordComponent component : components) {
      columns.add(
          component.isAnnotationPresent(RowNumber.class)
              ? null
              : ArgSpec.of(
                  component,
                  component.getType(),
                  component.getGenericType(),
                  Words.section(type) + "." + type.getSimpleName(),
                  table));
    }
    ArgSpec last = columns.get(columns.size() - 1);
    hasRest = last != null && last.type() == Cell[].class;
    constructor = constructorOf(type);
  }

  /**
   * @param table name of the argument, for refusals
   */
  static RowSpec of(Class<?> type, String table) {
    return new RowSpec(type, table);
  }

  /** {@return the canonical constructor of a record} */
  static Constructor<?> constructorOf(Class<?> type) {
    Class<?>[] types =
        Arrays.stream(type.getRecordComponents())
            .map(RecordComponent::getType)
            .toArray(Class<?>[]::new);
    try {
      Constructor<?> constructor = type.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor;
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(type + " cannot be made", e);
    }
  }

  /** {@return a record; what its constructor throws is thrown} */
  static Object made(Constructor<?> constructor, Object[] components) throws Throwable {
    try {
      return constructor.newInstance(components);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  boolean isDimensional() {
    return columns.stream().anyMatch(column -> column != null && column.isDimensional());
  }

  void texts(BiConsumer<String, String> each) {
    columns.stream().filter(column -> column != null).forEach(column -> column.texts(each));
  }

  /** What each column holds. */
  String description(Words words) {
    return columns.stream()
        .filter(column -> column != null)
        .map(
            column -> {
              String text = column.shortly(words);
              return mayBeBlank(column) ? words.say(Phrase.MAY_BE_BLANK, "column", text) : text;
            })
        .collect(Collectors.joining("; "));
  }

  /** The records of a table. */
  Rows<Record> read(Object[][] cells, UnitSystem system) {
    int width = cells[0].length;
    refuseWidth(width);
    List<Record> rows = new ArrayList<>();
    for (int i = 0; i < cells.length; i++) {
      if (!CellReader.isBlank(cells[i])) {
        rows.add(row(cells[i], i + 1, system));
      }
    }
    if (rows.isEmpty()) {
      throw new Refusal(General.ONLY_BLANKS).about(table);
    }
    return new Rows<>(List.copyOf(rows), cells.length, width);
  }

  private void refuseWidth(int width) {
    int least = 0;
    int most = 0;
    for (ArgSpec column : columns) {
      if (column != null) {
        most++;
        least = mayBeBlank(column) ? least : most;
      }
    }
    if (width < least || width > most && !hasRest) {
      throw new Refusal(General.WRONG_WIDTH)
          .about(table)
          .with("columns", width)
          .with("names", columns.stream().filter(c -> c != null).map(ArgSpec::name).toList());
    }
  }

  private static boolean mayBeBlank(ArgSpec column) {
    return column.isOptional() || column.type() == Cell.class || column.type() == Cell[].class;
  }

  private Record row(Object[] cells, int row, UnitSystem system) {
    Object[] values = new Object[columns.size()];
    int at = 0;
    for (int i = 0; i < values.length; i++) {
      ArgSpec column = columns.get(i);
      if (column == null) {
        values[i] = row;
      } else if (column.type() == Cell[].class) {
        Cell[] rest = new Cell[Math.max(0, cells.length - at)];
        for (int k = 0; k < rest.length; k++) {
          rest[k] = cell(column, cells, at + k, row, column.name() + " " + (k + 1), system);
        }
        values[i] = rest;
      } else {
        values[i] = value(column, cells, at++, row, system);
      }
    }
    try {
      return (Record) made(constructor, values);
    } catch (Refusal | Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException(table + ": row " + row + " cannot be made", e);
    }
  }

  private static Object value(ArgSpec column, Object[] cells, int at, int row, UnitSystem system) {
    if (column.type() == Cell.class) {
      return cell(column, cells, at, row, column.name(), system);
    }
    Object raw = at < cells.length ? CellReader.blankToNull(cells[at]) : null;
    if (column.isOptional() && column.zeroIsBlank() && Double.valueOf(0).equals(raw)) {
      raw = null; // an array constant cannot be empty in places
    }
    Place place = new Place(row, at + 1, column.name());
    if (raw != null) {
      return column.reader.value(raw, place, system);
    }
    if (column.isOptional()) {
      return column.type() == OptionalDouble.class
          ? OptionalDouble.empty()
          : column.whenLeftOut(system);
    }
    throw column.reader.blank(place);
  }

  private static Cell cell(
      ArgSpec column, Object[] cells, int at, int row, String name, UnitSystem system) {
    Object raw = at < cells.length ? cells[at] : null;
    return new Cell(column.reader, raw, new Place(row, at + 1, name), system);
  }
}
