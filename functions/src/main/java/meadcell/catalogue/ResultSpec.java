package meadcell.catalogue;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** What a function gives back, and how it is put into cells. */
public final class ResultSpec {
  /** The shape of a result in cells. */
  public enum Shape {
    NUMBER,
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

  private final Shape shape;
  private final Quantity quantity;
  private final RecordComponent[] components;

  private ResultSpec(Shape shape, Quantity quantity, RecordComponent[] components) {
    this.shape = shape;
    this.quantity = quantity;
    this.components = components;
  }

  static ResultSpec of(Method method, Quantity gives) {
    Class<?> type = method.getReturnType();
    RecordComponent[] components = type.isRecord() ? type.getRecordComponents() : null;
    Shape shape;
    if (type == double.class || type == boolean.class) {
      shape = Shape.NUMBER;
    } else if (type == String.class) {
      shape = Shape.TEXT;
    } else if (components != null) {
      shape = Shape.ROW;
      for (RecordComponent component : components) {
        component.getAccessor().setAccessible(true);
      }
    } else if (type == double[].class) {
      shape = Shape.COLUMN;
    } else if (type == Object[][].class) {
      shape = Shape.TABLE;
    } else if (type == Object.class) {
      shape = Shape.ANY;
    } else {
      throw new IllegalStateException(method + ": no result has the type " + type);
    }
    return new ResultSpec(shape, gives, components);
  }

  public Shape shape() {
    return shape;
  }

  /** Whether the result fills one cell. */
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

  /** Unit of a plain number or column; for a row, each number's name and unit. */
  public String description() {
    return description(UnaryOperator.identity());
  }

  String description(UnaryOperator<String> words) {
    if (components != null) {
      String parts =
          Arrays.stream(components)
              .map(c -> words.apply(gives(c).value()) + unit(gives(c).is(), ", ", words))
              .collect(Collectors.joining("; "));
      return words.apply("a row of %s").formatted(parts);
    }
    return switch (shape) {
      case TEXT -> words.apply("a text");
      case TABLE -> words.apply("rows of cells");
      case COLUMN -> words.apply("a column") + unit(quantity, words.apply(" of "), words);
      case NUMBER ->
          quantity.units(words).isEmpty() ? words.apply("a number") : quantity.units(words);
      default -> words.apply("what the called function gives");
    };
  }

  private static String unit(Quantity quantity, String before, UnaryOperator<String> words) {
    return quantity.units(words).isEmpty() ? "" : before + quantity.units(words);
  }

  /** The result for cells: Double, String, or rows of them. */
  Object toCells(Object result, UnitSystem system) {
    return switch (shape) {
      case NUMBER ->
          result instanceof Boolean yes
              ? (Object) (yes ? 1.0 : 0.0)
              : number((Double) result, quantity, system);
      case TEXT, ANY -> result;
      case ROW -> new Object[][] {row(result, system)};
      case COLUMN -> {
        double[] numbers = (double[]) result;
        Object[][] column = new Object[numbers.length][1];
        for (int i = 0; i < numbers.length; i++) {
          column[i][0] = number(numbers[i], quantity, system);
        }
        yield column;
      }
      case TABLE -> table((Object[][]) result);
    };
  }

  private Object[] row(Object record, UnitSystem system) {
    List<Object> row = new ArrayList<>();
    for (RecordComponent component : components) {
      try {
        Object value = component.getAccessor().invoke(record);
        row.add(
            value instanceof Double number ? number(number, gives(component).is(), system) : value);
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
      throw Refusal.inconsistent("These values together have no finite result.");
    }
    return quantity.fromMetric(value, system);
  }
}
