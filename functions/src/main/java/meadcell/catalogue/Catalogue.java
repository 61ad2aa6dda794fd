package meadcell.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;

/** All declared functions of some families, by name in any case. */
public final class Catalogue {
  /** Resource that names the family classes, one a line, in the order users see them. */
  public static final String FAMILIES = "META-INF/meadcell.families";

  private final Map<String, FamilySpec> families = new LinkedHashMap<>();
  private final Map<String, Declared> declared = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);

  /** Declarations are read when they are asked for: a program that calls three starts at once. */
  private final Map<Declared, FunctionSpec> read = new ConcurrentHashMap<>();

  private record Declared(String family, Method method) {
    FunctionSpec spec() {
      return FunctionSpec.of(family, method);
    }
  }

  private Catalogue(Collection<Class<?>> classes) {
    for (Class<?> type : classes) {
      Family family = type.getAnnotation(Family.class);
      if (family == null) {
        throw new IllegalStateException(type + " has no @Family");
      }
      families.computeIfAbsent(family.name(), name -> new FamilySpec(name, type)).add(type);
      for (Method method : type.getDeclaredMethods()) {
        if (method.isAnnotationPresent(CellarFunction.class)) {
          String name = FunctionSpec.name(family.name(), method.getName());
          if (declared.put(name, new Declared(family.name(), method)) != null) {
            throw new IllegalStateException(name + " is declared twice");
          }
        }
      }
    }
  }

  /**
   * {@return the functions of these family classes}
   *
   * @param families the classes that declare them
   */
  public static Catalogue of(Class<?>... families) {
    return new Catalogue(List.of(families));
  }

  /**
   * {@return the functions of all families that a class loader's {@value #FAMILIES} resources name}
   *
   * @param loader where the classes are found
   */
  public static Catalogue load(ClassLoader loader) {
    Set<Class<?>> classes = new LinkedHashSet<>(); // a jar and a jar that contains it count once
    try {
      for (URL list : Collections.list(loader.getResources(FAMILIES))) {
        try (InputStream in = list.openStream()) {
          String names = new String(in.readAllBytes(), StandardCharsets.UTF_8);
          for (String name : names.lines().filter(line -> !line.isBlank()).toList()) {
            classes.add(Class.forName(name.trim(), true, loader));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException("a family class is missing", e);
    }
    return new Catalogue(classes);
  }

  /** {@return the families by name, in declared order} */
  public Map<String, FamilySpec> families() {
    return Collections.unmodifiableMap(families);
  }

  /** {@return all functions, by name} */
  public Collection<FunctionSpec> functions() {
    return declared.values().stream().map(this::spec).toList();
  }

  /**
   * {@return the functions of one family, by name}
   *
   * @param family the prefix of their names
   */
  public List<FunctionSpec> functions(String family) {
    return declared.values().stream()
        .filter(function -> function.family.equals(family))
        .map(this::spec)
        .toList();
  }

  private FunctionSpec spec(Declared function) {
    return read.computeIfAbsent(function, Declared::spec);
  }

  /** {@return all names} */
  public Collection<String> names() {
    return Collections.unmodifiableCollection(declared.keySet());
  }

  /**
   * {@return a function by its name in any case, also as other programs store it ({@code _xll.}
   * before)}
   *
   * @param name a function's name
   */
  public Optional<FunctionSpec> find(String name) {
    String plain = name.trim();
    if (plain.toLowerCase(Locale.ROOT).startsWith("_xll.")) {
      plain = plain.substring("_xll.".length());
    }
    return Optional.ofNullable(declared.get(plain)).map(this::spec);
  }

  /**
   * {@return a function by its name; an unknown one is refused with the nearest known name}
   *
   * @param name a function's name
   */
  public FunctionSpec get(String name) {
    return find(name)
        .orElseThrow(
            () -> Refusal.unknownName(General.UNKNOWN_FUNCTION, name.trim(), declared.keySet()));
  }

  /**
   * {@return every text that is said about the functions or by them, in English, by the key under
   * which other languages translate it}
   */
  public Map<String, String> texts() {
    Map<String, String> texts = new LinkedHashMap<>();
    BiConsumer<String, String> each =
        (key, english) -> {
          String other = texts.put(key, english);
          if (other != null && !other.equals(english)) {
            throw new IllegalStateException(key + " is both: " + other + " and: " + english);
          }
        };
    for (Message[] messages : List.of(General.values(), Phrase.values(), Slip.What.values())) {
      for (Message message : messages) {
        each.accept(message.key(), message.english());
      }
    }
    for (Quantity quantity : Quantity.values()) {
      for (UnitSystem system : UnitSystem.values()) {
        if (!quantity.unit(system).isEmpty()) {
          each.accept(quantity.key(system), quantity.unit(system));
        }
      }
    }
    families.values().forEach(family -> family.texts(each));
    functions().forEach(function -> function.texts(each));
    return texts;
  }
}
