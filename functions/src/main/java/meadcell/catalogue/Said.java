package meadcell.catalogue;

/** What can be said in any of the languages. */
public interface Said {
  /**
   * {@return the sentence in a language}
   *
   * @param words the language
   */
  String sentence(Words words);
}
