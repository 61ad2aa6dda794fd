package meadcell.catalogue;

/** Why a call is refused: a message and the kind of refusal that hosts tell apart. */
public interface Reason extends Message {
  /** {@return what kind of refusal it is} */
  Refusal.Kind kind();

  @Override
  default String key() {
    return Words.section(getClass()) + ".reason." + name();
  }
}
