package meadcell.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
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
import java.util.function.BiConsumer;

/** All declared functions of some families, by name in any case. */
public final class Catalogue {
  /** Resource that names the family classes, one a line, in the order users see them. */
  public static final String FAMILIES = "META-INF/meadcell.families";

  private final Map<String, FamilySpec> families = new LinkedHashMap<>();

  private Catalogue(Collection<Class<?>> classes) {
    for (Class<?> type : classes) {
      Family family = type.getAnnotation(Family.class);
      if (family == null) {
        throw new IllegalStateException(type + " has no @Family");
      }
      families.computeIfAbsent(family.name(), name -> new FamilySpec(name, type)).add(type);
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
            classes.add(Class.forName(name.trim(), false, loader));
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
    return byName().values().stream().flatMap(family -> family.functions().stream()).toList();
  }

  /**
   * {@return the functions of one family, by name}
   *
   * @param family the prefix of their names
   */
  public List<FunctionSpec> functions(String family) {
    return families.containsKey(family) ? families.get(family).functions() : List.of();
  }

  /** {@return all names} */
  public Collection<String> names() {
    return byName().values().stream().flatMap(family -> family.names().stream()).toList();
  }

  private Map<String, FamilySpec> byName() {
    return new TreeMap<>(families);
  }

  /**
   * {@return a function by its name in any case, also as other programs store it ({@code _xll.}
   * before)}
   *
   * @param name a function's name
   */
  public Optional<FunctionSpec> find(String name) {
    String typed = name.trim();
    boolean isStored = typed.toLowerCase(Locale.ROOT).startsWith("_xll.");
    String plain = isStored ? typed.substring("_xll.".length()) : typed;
    String family = plain.substring(0, Math.max(0, plain.indexOf('.'))).toUpperCase(Locale.ROOT);
    return Optional.ofNullable(families.get(family)).flatMap(known -> known.find(plain));
  }

  /**
   * {@return a function by its name; an unknown one is refused with the nearest known name}
   *
   * @param name a function's name
   */
  public FunctionSpec get(String name) {
    return find(name)
        .orElseThrow(() -> Refusal.unknownName(General.UNKNOWN_FUNCTION, name.trim(), names()));
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
