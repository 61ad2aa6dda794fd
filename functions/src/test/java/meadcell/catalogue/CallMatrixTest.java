package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The matrix that the hosts share holds what its name says. */
class CallMatrixTest {
  private Catalogue catalogue;
  private List<CallMatrix.Call> calls;

  @BeforeEach
  void read() {
    catalogue = Fresh.catalogue();
    calls = CallMatrix.of(catalogue);
  }

  @Test
  void everyFunctionIsAnsweredAsDeclaredAndSomewhereRefused() {
    Set<String> refused = new HashSet<>();
    for (CallMatrix.Call call : calls) {
      if (call.label().endsWith(", as declared")) {
        assertInstanceOf(
            CallMatrix.Answer.class, call.outcome(), () -> call.label() + ": " + call.outcome());
      }
      if (call.outcome() instanceof CallMatrix.Refused) {
        refused.add(call.function().name());
      }
    }
    for (FunctionSpec function : catalogue.functions()) {
      assertTrue(
          function.args().isEmpty() || refused.contains(function.name()),
          function.name() + " refuses nothing: do its arguments say their range?");
    }
  }

  @Test
  void everyRefusalSaysItsSentenceInEveryLanguage() {
    for (CallMatrix.Call call : calls) {
      if (call.outcome() instanceof CallMatrix.Refused refused) {
        Refusal refusal = refused.refusal();
        Matcher places = Pattern.compile("\\{(\\w+)}").matcher(refusal.reason().english());
        while (places.find()) {
          String place = places.group(1);
          boolean filled =
              place.equals("argument")
                  ? !refusal.argument().isEmpty()
                  : refusal.text(place, Words.ENGLISH).isPresent();
          assertTrue(
              filled, call.label() + ": no value for {" + place + "} of " + refusal.reason());
        }
        for (Words words : Words.all()) {
          assertFalse(refusal.sentence(words).isBlank(), call.label());
        }
      }
    }
  }

  @Test
  void aValueJustBeyondALimitIsRefused() {
    for (CallMatrix.Call call : calls) {
      if (call.label().endsWith("below lowest") || call.label().endsWith("above highest")) {
        Refusal refusal = assertInstanceOf(CallMatrix.Refused.class, call.outcome()).refusal();
        assertTrue(refusal.kind() == Refusal.Kind.OUT_OF_RANGE, call.label());
      }
    }
  }
}
