package meadcell.catalogue;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

/** What a function gives back, and how it is put into cells. */
public final class ResultSpec {
  /** The shape of a result in cells. */
  public enum Shape {
    /** One number. */
    NUMBER,
    /** One text. */
    TEXT,
    /** Named numbers side by side. */
    ROW,
    /** One number per item, downwards. */
    COLUMN,
    /** Rows of texts and numbers. */
    TABLE,
    /** Whatever a called function gives. */
    ANY
  }

  /** How many rows of a table a page shows. */
  private static final int MOST_LINES = 12;

  private final Shape shape;
  private final Quantity quantity;
  private final RecordComponent[] components;

  private final String function;

  private ResultSpec(
      Shape shape, Quantity quantity, RecordComponent[] components, String function) {
    this.function = function;
    this.shape = shape;
    this.quantity = quantity;
    this.components = components;
  }

  static ResultSpec of(Method method, Quantity gives, String function) {
    Class<?> type = method.getReturnType();
    RecordComponent[] components = columns(type.isArray() ? type.getComponentType() : type);
    Shape shape;
    if (type == double.class || type == int.class || type == boolean.class) {
      shape = Shape.NUMBER;
    } else if (type == String.class || type == Optional.class || type == Verdict.class) {
      shape = Shape.TEXT;
    } else if (components != null) {
      shape = type.isArray() ? Shape.TABLE : Shape.ROW;
    } else if (type == double[].class) {
      shape = Shape.COLUMN;
    } else if (type == Object[][].class) {
      shape = Shape.TABLE;
    } else if (type == Object.class) {
      shape = Shape.ANY;
    } else {
      throw new IllegalStateException(method + ": no result has the type " + type);
    }
    return new ResultSpec(shape, gives, components, function);
  }

  /** The components of a record that stand in cells; null where there are none. */
  private static RecordComponent[] columns(Class<?> type) {
    if (!type.isRecord() || type == Verdict.class) {
      return null;
    }
    return Arrays.stream(type.getRecordComponents())
        .filter(component -> component.isAnnotationPresent(Gives.class))
        .peek(component -> component.getAccessor().setAccessible(true))
        .toArray(RecordComponent[]::new);
  }

  /** {@return its shape in cells} */
  public Shape shape() {
    return shape;
  }

  /** {@return whether the result fills one cell} */
  public boolean isScalar() {
    return shape == Shape.NUMBER || shape == Shape.TEXT;
  }

  boolean isDimensional() {
    return quantity.isDimensional()
        || components != null
            && Arrays.stream(components)
                .anyMatch(component -> gives(component).is().isDimensional());
  }

  private static Gives gives(RecordComponent component) {
    return component.getAnnotation(Gives.class);
  }

  private String key(RecordComponent component) {
    return function + ".gives." + component.getName();
  }

  void texts(BiConsumer<String, String> each) {
    if (components != null) {
      for (RecordComponent component : components) {
        each.accept(key(component), gives(component).value());
      }
    }
  }

  /** {@return unit of a plain number or column; for a row, each number's name and unit} */
  public String description() {
    return description(Words.ENGLISH);
  }

  String description(Words words) {
    String unit = words.units(quantity);
    return switch (shape) {
      case NUMBER -> unit.isEmpty() ? words.say(Phrase.A_NUMBER) : unit;
      case TEXT -> words.say(Phrase.A_TEXT);
      case ROW -> words.say(Phrase.A_ROW, "parts", parts(words));
      case COLUMN ->
          unit.isEmpty() ? words.say(Phrase.A_COLUMN) : words.say(Phrase.A_COLUMN_OF, "unit", unit);
      case TABLE ->
          components == null
              ? words.say(Phrase.ROWS)
              : words.say(Phrase.ROWS_OF, "parts", parts(words));
      case ANY -> words.say(Phrase.WHATEVER);
    };
  }

  private String parts(Words words) {
    return Arrays.stream(components)
        .map(
            component -> {
              String name = words.text(key(component), gives(component).value());
              String unit = words.units(gives(component).is());
              return unit.isEmpty() ? name : name + ", " + unit;
            })
        .collect(Collectors.joining("; "));
  }

  /** What a result's cells hold, a line each: names, units, and which of them is asked about. */
  List<String> lines(Object cells, UnitSystem system, CallPage.Chosen chosen, Words words) {
    if (!(cells instanceof Object[][] rows)) {
      return List.of(shown(cells, quantity, system, words));
    }
    List<String> lines = new ArrayList<>();
    boolean several = rows.length > 1 || rows.length == 1 && rows[0].length > 1;
    for (int i = 0; shape == Shape.ROW && i < components.length; i++) {
      String name = words.text(key(components[i]), gives(components[i]).value());
      String value = shown(rows[0][i], gives(components[i]).is(), system, words);
      String line = words.say(Phrase.ARGUMENT, "name", name, "value", value);
      lines.add(i == chosen.column() ? words.say(Phrase.THIS_CELL, "value", line) : line);
    }
    for (int i = 0; shape != Shape.ROW && i < rows.length && i < MOST_LINES; i++) {
      List<String> row = new ArrayList<>();
      for (int j = 0; j < rows[i].length; j++) {
        row.add(shown(rows[i][j], quantity(j), system, words));
      }
      lines.add(String.join(words.betweenCells() + " ", row));
    }
    if (shape != Shape.ROW
        && several
        && chosen.row() < rows.length
        && chosen.column() < rows[chosen.row()].length) {
      lines.add(
          0,
          words.say(
              Phrase.THIS_ROW,
              "value",
              shown(rows[chosen.row()][chosen.column()], quantity(chosen.column()), system, words),
              "row",
              Integer.toString(chosen.row() + 1),
              "rows",
              Integer.toString(rows.length)));
      if (rows.length > MOST_LINES) {
        lines.add("…");
      }
    }
    return lines;
  }

  private Quantity quantity(int column) {
    return components != null && column < components.length
        ? gives(components[column]).is()
        : quantity;
  }

  private static String shown(Object cell, Quantity quantity, UnitSystem system, Words words) {
    return cell instanceof Double number
        ? words.measured(number, quantity, system)
        : cell == null ? "" : words.shown(cell);
  }

  /** The result for cells: Double, String, or rows of them. */
  Object toCells(Object result, UnitSystem system, Words words) {
    return switch (shape) {
      case NUMBER ->
          result instanceof Boolean yes
              ? (Object) (yes ? 1.0 : 0.0)
              : number(((Number) result).doubleValue(), quantity, system);
      case TEXT -> text(result, words);
      case ANY -> result;
      case ROW -> new Object[][] {row(result, system)};
      case COLUMN -> {
        double[] numbers = (double[]) result;
        Object[][] column = new Object[numbers.length][1];
        for (int i = 0; i < numbers.length; i++) {
          column[i][0] = number(numbers[i], quantity, system);
        }
        yield column;
      }
      case TABLE ->
          result instanceof Record[] records
              ? Arrays.stream(records).map(record -> row(record, system)).toArray(Object[][]::new)
              : table((Object[][]) result);
    };
  }

  private static Object text(Object result, Words words) {
    if (result instanceof Optional<?> said) {
      return said.map(sentence -> ((Said) sentence).sentence(words)).orElse("");
    }
    return result instanceof Verdict verdict ? verdict.word() : result;
  }

  private Object[] row(Object record, UnitSystem system) {
    List<Object> row = new ArrayList<>();
    for (RecordComponent component : components) {
      try {
        Object value = component.getAccessor().invoke(record);
        row.add(
            value instanceof Number number
                ? number(number.doubleValue(), gives(component).is(), system)
                : value);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(component + " cannot be read", e);
      }
    }
    return row.toArray();
  }

  private static Object[][] table(Object[][] rows) {
    for (Object[] row : rows) {
      for (Object cell : row) {
        if (cell instanceof Double number) {
          number(number, Quantity.NUMBER, UnitSystem.METRIC);
        }
      }
    }
    return rows;
  }

  private static double number(double value, Quantity quantity, UnitSystem system) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      throw new Refusal(General.NOT_FINITE);
    }
    return quantity.fromMetric(value, system);
  }
}
