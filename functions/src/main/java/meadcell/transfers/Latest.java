package meadcell.transfers;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * The latest few answers by what was asked: a sheet asks the same in many cells. Equal questions
 * have one answer; safe across threads.
 *
 * @param <Q> the question, compared by what it holds
 * @param <A> the answer, which nothing changes
 */
public final class Latest<Q, A> {
  private static final int MOST_KEPT = 8;

  private final Map<Q, A> kept =
      Collections.synchronizedMap(
          new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Q, A> eldest) {
              return size() > MOST_KEPT;
            }
          });

  /**
   * {@return the answer, worked out if it is not known}
   *
   * @param question what is asked
   * @param work what works it out
   */
  public A answer(Q question, Function<Q, A> work) {
    A known = kept.get(question);
    if (known == null) {
      known = work.apply(question);
      kept.put(question, known);
    }
    return known;
  }
}
