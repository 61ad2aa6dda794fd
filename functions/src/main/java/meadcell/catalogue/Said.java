package meadcell.catalogue;

/** What can be said in any of the languages. */
public interface Said {
  /** The sentence in a language. */
  String sentence(Words words);
}
