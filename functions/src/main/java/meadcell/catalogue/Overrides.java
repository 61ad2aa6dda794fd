package meadcell.catalogue;

import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.HashMap;
import java.util.Map;

/** What a shared argument's annotation says differently at one place. */
final class Overrides {
  private Overrides() {}

  /** {@return the members that hold something, by name} */
  static Map<String, Object> of(Annotation shared) {
    Map<String, Object> overrides = new HashMap<>();
    for (Method member : shared.annotationType().getDeclaredMethods()) {
      try {
        member.setAccessible(true);
        Object value = member.invoke(shared);
        if (!value.equals("") && !value.equals(Double.NaN)) {
          overrides.put(member.getName(), value);
        }
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(shared + " cannot be read", e);
      }
    }
    return overrides;
  }
}
