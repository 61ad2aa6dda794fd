package meadcell.calc.menu;

import com.sun.star.beans.NamedValue;
import com.sun.star.container.XNameAccess;
import com.sun.star.i18n.XLocaleData;
import com.sun.star.lang.Locale;
import com.sun.star.lang.XMultiServiceFactory;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;

/** What the user chose for the office: which language it speaks and how it writes numbers. */
public final class OfficeSettings {
  private static final String LANGUAGES = "/org.openoffice.Setup/L10N";

  private final XComponentContext context;

  public OfficeSettings(XComponentContext context) {
    this.context = context;
  }

  /** The code of the language of menus, such as {@code de}. */
  public String language() {
    return parts(value(LANGUAGES, "ooLocale"))[0];
  }

  /** What stands before decimals in the locale that cells have if nobody chose another for them. */
  public String decimalSign() {
    String chosen = value(LANGUAGES, "ooSetupSystemLocale");
    java.util.Locale system = java.util.Locale.getDefault(java.util.Locale.Category.FORMAT);
    String[] parts = parts(chosen.isEmpty() ? system.toLanguageTag() : chosen);
    Locale locale = new Locale(parts[0], parts.length > 1 ? parts[parts.length - 1] : "", "");
    try {
      return as(XLocaleData.class, service("com.sun.star.i18n.LocaleData"))
          .getLocaleItem(locale)
          .decimalSeparator;
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, chosen);
    }
  }

  private static String[] parts(String locale) {
    return locale.split("[-_]");
  }

  /** A value of the office's configuration. */
  String value(String path, String name) {
    try {
      Object settings =
          as(
                  XMultiServiceFactory.class,
                  service("com.sun.star.configuration.ConfigurationProvider"))
              .createInstanceWithArguments(
                  "com.sun.star.configuration.ConfigurationAccess",
                  new Object[] {new NamedValue("nodepath", path)});
      return String.valueOf(as(XNameAccess.class, settings).getByName(name));
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, path);
    }
  }

  private Object service(String name) throws com.sun.star.uno.Exception {
    return context.getServiceManager().createInstanceWithContext(name, context);
  }

  private static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
