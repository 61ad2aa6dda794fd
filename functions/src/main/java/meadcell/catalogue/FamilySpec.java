package meadcell.catalogue;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;

/** A family of functions, declared by one class or several. */
public final class FamilySpec {
  private final String name;
  private final String about;
  private final List<Class<?>> classes = new ArrayList<>();

  /** By the functions' names. Read when asked for: a program that calls three starts at once. */
  private Map<String, Method> declared;

  private final Map<Method, FunctionSpec> read = new ConcurrentHashMap<>();

  FamilySpec(String name, Class<?> first) {
    this.name = name;
    this.about = first.getAnnotation(Family.class).about();
    if (about.isBlank()) {
      throw new IllegalStateException(
          first + ": the first class of a family says what it is about");
    }
  }

  void add(Class<?> type) {
    classes.add(type);
  }

  /** {@return the prefix of its functions' names} */
  public String name() {
    return name;
  }

  /**
   * {@return what it is about, in one sentence}
   *
   * @param words the language
   */
  public String about(Words words) {
    return words.text(key(), about);
  }

  private String key() {
    return name + ".about";
  }

  /** {@return the classes that declare its functions} */
  public List<Class<?>> classes() {
    return Collections.unmodifiableList(classes);
  }

  private synchronized Map<String, Method> declared() {
    if (declared == null) {
      Map<String, Method> methods = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
      for (Class<?> type : classes) {
        for (Method method : type.getDeclaredMethods()) {
          if (method.isAnnotationPresent(CellarFunction.class)) {
            String function = FunctionSpec.name(name, method.getName());
            if (methods.put(function, method) != null) {
              throw new IllegalStateException(function + " is declared twice");
            }
          }
        }
      }
      declared = methods;
    }
    return declared;
  }

  Set<String> names() {
    return declared().keySet();
  }

  Optional<FunctionSpec> find(String function) {
    return Optional.ofNullable(declared().get(function)).map(this::spec);
  }

  /** By name. */
  List<FunctionSpec> functions() {
    return declared().values().stream().map(this::spec).toList();
  }

  private FunctionSpec spec(Method method) {
    return read.computeIfAbsent(method, declaration -> FunctionSpec.of(name, declaration));
  }

  void texts(BiConsumer<String, String> each) {
    each.accept(key(), about);
    for (Class<?> type : classes) {
      for (Class<? extends Message> says : type.getAnnotation(Family.class).says()) {
        for (Message message : says.getEnumConstants()) {
          each.accept(message.key(), message.english());
        }
      }
    }
  }
}
