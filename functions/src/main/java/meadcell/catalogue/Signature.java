package meadcell.catalogue;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;

/**
 * The arguments of a declared method in the order of the call, and the way to call it with them.
 *
 * <p>A parameter that is a record is unfolded: its components stand in its place, but those that
 * may be left out go to the end.
 */
record Signature(List<ArgSpec> args, MethodHandle handle) {

  static Signature of(String function, Method method) {
    MethodHandle handle;
    try {
      handle = MethodHandles.publicLookup().unreflect(method).asFixedArity();
    } catch (IllegalAccessException e) {
      throw new IllegalStateException(method + " must be public", e);
    }
    List<ArgSpec> unfolded = new ArrayList<>();
    List<Integer> order = new ArrayList<>();
    List<Integer> atTheEnd = new ArrayList<>();
    for (Parameter parameter : method.getParameters()) {
      Class<?> type = parameter.getType();
      if (type.isRecord() && type != Rows.class) {
        handle =
            MethodHandles.collectArguments(handle, unfolded.size(), RowSpec.constructorOf(type));
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
    return new Signature(order.stream().map(unfolded::get).toList(), inOrder(handle, order));
  }

  /** The handle with its arguments in the order of the call, spread from an array. */
  private static MethodHandle inOrder(MethodHandle handle, List<Integer> order) {
    Class<?>[] types = new Class<?>[order.size()];
    int[] positions = new int[order.size()];
    for (int i = 0; i < types.length; i++) {
      types[i] = handle.type().parameterType(order.get(i));
      positions[order.get(i)] = i;
    }
    MethodType type = MethodType.methodType(handle.type().returnType(), types);
    return MethodHandles.permuteArguments(handle, type, positions)
        .asSpreader(Object[].class, types.length)
        .asType(MethodType.methodType(Object.class, Object[].class));
  }
}
