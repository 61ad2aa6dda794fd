package meadcell.catalogue;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The arguments of a declared method in the order of the call, and the way to call it with them.
 *
 * <p>A parameter that is a record is unfolded: its components stand in its place, but those that
 * may be left out go to the end.
 */
record Signature(List<ArgSpec> args, Method method, List<Part> parts) {

  /**
   * A parameter of the method.
   *
   * @param constructor of a record that is unfolded, null for others
   * @param at where its values stand in the call
   */
  private record Part(Constructor<?> constructor, int[] at) {
    Object value(Object[] values) throws Throwable {
      if (constructor == null) {
        return values[at[0]];
      }
      Object[] components = new Object[at.length];
      for (int i = 0; i < at.length; i++) {
        components[i] = values[at[i]];
      }
      return RowSpec.made(constructor, components);
    }
  }

  static Signature of(String function, Method method) {
    if (!method.canAccess(null)) {
      throw new IllegalStateException(method + " must be public");
    }
    List<ArgSpec> unfolded = new ArrayList<>();
    List<Integer> order = new ArrayList<>();
    List<Integer> atTheEnd = new ArrayList<>();
    for (Parameter parameter : method.getParameters()) {
      Class<?> type = parameter.getType();
      if (isUnfolded(type)) {
        String owner = Words.section(type) + "." + type.getSimpleName();
        for (RecordComponent component : type.getRecordComponents()) {
          ArgSpec arg =
              ArgSpec.of(component, component.getType(), component.getGenericType(), owner, null);
          (arg.isOptional() ? atTheEnd : order).add(unfolded.size());
          unfolded.add(arg);
        }
      } else {
        order.add(unfolded.size());
        unfolded.add(ArgSpec.of(parameter, type, parameter.getParameterizedType(), function, null));
      }
    }
    order.addAll(atTheEnd);
    List<ArgSpec> args = order.stream().map(unfolded::get).toList();
    return new Signature(args, method, parts(method, order));
  }

  private static boolean isUnfolded(Class<?> type) {
    return type.isRecord() && type != Rows.class;
  }

  /**
   * @param order the arguments of the call, each as its number among all that are unfolded
   */
  private static List<Part> parts(Method method, List<Integer> order) {
    List<Part> parts = new ArrayList<>();
    int first = 0;
    for (Class<?> type : method.getParameterTypes()) {
      int count = isUnfolded(type) ? type.getRecordComponents().length : 1;
      int[] at = IntStream.range(first, first + count).map(order::indexOf).toArray();
      parts.add(new Part(isUnfolded(type) ? RowSpec.constructorOf(type) : null, at));
      first += count;
    }
    return List.copyOf(parts);
  }

  /** Not by method handles: to combine them takes longer than a hundred calls. */
  Object call(Object[] values) throws Throwable {
    Object[] given = new Object[parts.size()];
    for (int i = 0; i < given.length; i++) {
      given[i] = parts.get(i).value(values);
    }
    try {
      return method.invoke(null, given);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }
}
