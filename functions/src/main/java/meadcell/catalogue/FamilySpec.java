package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.BiConsumer;

/** A family of functions, declared by one class or several. */
public final class FamilySpec {
  private final String name;
  private final String about;
  private final List<Class<?>> classes = new ArrayList<>();

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
