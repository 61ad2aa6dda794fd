package meadcell.calc;

import com.sun.star.lang.Locale;
import com.sun.star.lang.XLocalizable;
import com.sun.star.lang.XServiceInfo;
import com.sun.star.lang.XTypeProvider;
import com.sun.star.uno.Type;
import com.sun.star.uno.XComponentContext;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import meadcell.calc.menu.OfficeSettings;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Words;

/**
 * One family's service: a proxy of the generated interface whose every method is looked up in the
 * catalogue. The office enters each call on a thread of its own, so nothing here has state that a
 * call could change.
 */
final class FamilyService implements InvocationHandler, XServiceInfo, XLocalizable, XTypeProvider {
  private static final String ADD_IN = "com.sun.star.sheet.AddIn";

  /** Its arguments are those of the function that it names. */
  private static final String WHY = "CELLAR.WHY";

  private final String family;
  private final Class<?> functionsType;
  private final Map<String, FunctionSpec> functions = new HashMap<>();
  private final XComponentContext context;
  private final TypedNumbers typed;
  private volatile Locale locale = new Locale("en", "US", "");
  private volatile Words words = Words.ENGLISH;

  private FamilyService(
      Catalogue catalogue, String family, Class<?> functionsType, XComponentContext context) {
    this.family = family;
    this.context = context;
    this.typed = new TypedNumbers(catalogue, context);
    this.functionsType = functionsType;
    catalogue.functions(family).forEach(function -> functions.put(function.member(), function));
  }

  static Object of(Catalogue catalogue, String family, XComponentContext context) {
    ClassLoader loader = FamilyService.class.getClassLoader();
    try {
      Class<?> type =
          Class.forName(UnoNames.MODULE + "." + UnoNames.interfaceOf(family), true, loader);
      return Proxy.newProxyInstance(
          loader,
          new Class<?>[] {type, XServiceInfo.class, XLocalizable.class, XTypeProvider.class},
          new FamilyService(catalogue, family, type, context));
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException("the package was built without " + family, e);
    }
  }

  @Override
  public Object invoke(Object proxy, Method method, Object[] arguments) throws Throwable {
    if (method.getDeclaringClass() == functionsType) {
      return call(functions.get(method.getName()), arguments == null ? new Object[0] : arguments);
    }
    if (method.getName().equals("equals")) {
      return proxy == arguments[0];
    }
    try {
      return method.invoke(this, arguments);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  private Object call(FunctionSpec function, Object[] arguments) {
    Object result;
    try {
      Object[] values = CellValues.fromOffice(function, arguments);
      if (function.name().equals(WHY)) {
        typed.read(values);
      }
      result = function.callIn(words, values);
    } catch (Refusal refusal) {
      result = CellError.of(refusal).value();
    }
    return CellValues.toOffice(function, result);
  }

  @Override
  public String getImplementationName() {
    return UnoNames.implementationOf(family);
  }

  @Override
  public boolean supportsService(String name) {
    return Arrays.asList(getSupportedServiceNames()).contains(name);
  }

  @Override
  public String[] getSupportedServiceNames() {
    return new String[] {family, ADD_IN};
  }

  @Override
  public void setLocale(Locale locale) {
    this.locale = locale;
    this.words =
        Words.in(locale.Language).withDecimalSign(new OfficeSettings(context).decimalSign());
  }

  @Override
  public Locale getLocale() {
    return locale;
  }

  @Override
  public Type[] getTypes() {
    return new Type[] {
      new Type(functionsType),
      new Type(XServiceInfo.class),
      new Type(XLocalizable.class),
      new Type(XTypeProvider.class)
    };
  }

  @Override
  public byte[] getImplementationId() {
    return new byte[0];
  }
}
