package meadcell.property;

import java.lang.annotation.Annotation;
import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.InvocationInterceptor;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.junit.jupiter.api.extension.ReflectiveInvocationContext;
import org.junit.platform.commons.support.ReflectionSupport;
import org.opentest4j.AssertionFailedError;
import org.opentest4j.TestAbortedException;

/** Draws the arguments of properties and runs them. */
final class Draws implements InvocationInterceptor, ParameterResolver {
  private static final long SEED = Long.getLong("property.seed", 1);

  /** Of so many tries one has limits only, and another some. */
  private static final int ROUND = 10;

  private static final double SOME = 0.3;

  /** The arguments of one try, drawn in order. */
  private static final class Draw {
    private final Random random;
    private final double limits;

    Draw(Method property, int number) {
      random = new Random(31 * (31 * SEED + property.toGenericString().hashCode()) + number);
      limits = number % ROUND == 0 ? 1 : number % ROUND == ROUND / 2 ? SOME : 0;
    }

    Object[] arguments(Method property) {
      return Stream.of(property.getParameters())
          .map(Parameter::getAnnotatedType)
          .map(this::value)
          .toArray();
    }

    private Object value(AnnotatedType of) {
      if (of.getType() instanceof ParameterizedType) {
        Size size = declared(of, Size.class);
        AnnotatedType element =
            ((AnnotatedParameterizedType) of).getAnnotatedActualTypeArguments()[0];
        return IntStream.range(0, size.min() + random.nextInt(size.max() - size.min() + 1))
            .mapToObj(i -> value(element))
            .toList();
      }
      Class<?> type = (Class<?>) of.getType();
      if (type == double.class || type == Double.class) {
        return number(declared(of, Between.class));
      }
      if (type == int.class) {
        return (int) Math.round(number(declared(of, Between.class)));
      }
      if (type == long.class) {
        return random.nextLong();
      }
      if (type == Random.class) {
        return new Random(random.nextLong());
      }
      if (type.isEnum()) {
        Object[] constants = type.getEnumConstants();
        return constants[random.nextInt(constants.length)];
      }
      if (type.isRecord()) {
        return record(type);
      }
      throw new IllegalArgumentException(
          "no draws of " + type.getSimpleName() + "; numbers are drawn as a List with @Size");
    }

    private static <A extends Annotation> A declared(AnnotatedType of, Class<A> limits) {
      A found = of.getAnnotation(limits);
      if (found == null) {
        throw new IllegalArgumentException(of + " has no @" + limits.getSimpleName());
      }
      return found;
    }

    /** As often near the lower limit, where the numbers of a cellar lie, as anywhere. */
    private double number(Between limits) {
      if (random.nextDouble() < this.limits) {
        return random.nextBoolean() ? limits.min() : limits.max();
      }
      double share = random.nextDouble();
      double skewed = random.nextBoolean() ? share : Math.pow(share, 4);
      double exact = limits.min() + skewed * (limits.max() - limits.min());
      double rounded =
          BigDecimal.valueOf(exact)
              .setScale(limits.decimals(), RoundingMode.HALF_EVEN)
              .doubleValue();
      return Math.max(limits.min(), Math.min(limits.max(), rounded));
    }

    private Object record(Class<?> type) {
      RecordComponent[] components = type.getRecordComponents();
      try {
        var constructor =
            type.getDeclaredConstructor(
                Stream.of(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
        constructor.setAccessible(true);
        return constructor.newInstance(
            Stream.of(components)
                .map(RecordComponent::getAnnotatedType)
                .map(this::value)
                .toArray());
      } catch (ReflectiveOperationException e) {
        throw new IllegalArgumentException(type + " has no arguments to draw", e);
      }
    }
  }

  @Override
  public void interceptTestMethod(
      Invocation<Void> invocation,
      ReflectiveInvocationContext<Method> called,
      ExtensionContext context) {
    invocation.skip();
    Method property = called.getExecutable();
    int tries = property.getAnnotation(Property.class).tries();
    int aborted = 0;
    for (int number = 0; number < tries; number++) {
      Object[] arguments = new Draw(property, number).arguments(property);
      try {
        ReflectionSupport.invokeMethod(property, context.getRequiredTestInstance(), arguments);
      } catch (TestAbortedException e) {
        aborted++;
      } catch (AssertionError | RuntimeException e) {
        throw new AssertionFailedError(
            "try %d of %d, seed %d: %s\n%s"
                .formatted(number + 1, tries, SEED, shown(property, arguments), e),
            e);
      }
    }
    if (2 * aborted > tries) {
      throw new AssertionFailedError(aborted + " of " + tries + " tries fit no assumption");
    }
  }

  private static String shown(Method property, Object[] arguments) {
    Parameter[] names = property.getParameters();
    return IntStream.range(0, arguments.length)
        .mapToObj(i -> names[i].getName() + " = " + arguments[i])
        .collect(Collectors.joining(", "));
  }

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
    return Arrays.asList(context.getRequiredTestMethod().getParameters())
        .contains(parameter.getParameter());
  }

  /** One argument of the first try; it is not used, since the property runs by itself. */
  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
    Method property = context.getRequiredTestMethod();
    return new Draw(property, 0).arguments(property)[parameter.getIndex()];
  }
}
