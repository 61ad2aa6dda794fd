package meadcell.calc.menu;

import com.sun.star.deployment.PackageInformationProvider;
import com.sun.star.lang.IllegalArgumentException;
import com.sun.star.sheet.XFunctionAccess;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import java.util.ArrayList;
import java.util.List;

/** Whether all of it is there and works together: office, Java, functions, Calc. */
public final class Installation {
  private final XComponentContext context;
  private final OfficeSettings settings;
  private final Texts texts;

  public Installation(XComponentContext context) {
    this.context = context;
    this.settings = new OfficeSettings(context);
    this.texts = new Texts(settings.language());
  }

  /** The functions cannot be loaded; the message says why and what to do. */
  static final class NotLoaded extends Exception {
    private static final long serialVersionUID = 1;

    NotLoaded(String message, Throwable cause) {
      super(message, cause);
    }
  }

  Texts texts() {
    return texts;
  }

  /** The functions, if this Java can load them. */
  Functions functions() throws NotLoaded {
    try {
      return Class.forName(Functions.CLASS)
          .asSubclass(Functions.class)
          .getDeclaredConstructor()
          .newInstance();
    } catch (UnsupportedClassVersionError e) {
      throw new NotLoaded(texts.say("javaTooOld", System.getProperty("java.version")), e);
    } catch (ReflectiveOperationException e) {
      throw new NotLoaded(texts.say("functionsFailed", e), e);
    } catch (LinkageError e) {
      throw new NotLoaded(texts.say("functionsFailed", e), e);
    }
  }

  /** Versions, checks and verdict, a line each. */
  public String report() {
    String version = version();
    List<String> lines = new ArrayList<>();
    lines.add(
        texts.say(
            "versions",
            version,
            settings.value("/org.openoffice.Setup/Product", "ooName")
                + " "
                + settings.value("/org.openoffice.Setup/Product", "ooSetupVersionAboutBox"),
            System.getProperty("java.version"),
            System.getProperty("java.vendor")));
    boolean sound = false;
    try {
      boolean met = checks(functions(), lines);
      sound = cells(lines, version) && met;
    } catch (NotLoaded e) {
      lines.add(e.getMessage()); // what Calc says then would only mislead
    }
    lines.add(texts.say(sound ? "sound" : "unsound"));
    return String.join("\n", lines);
  }

  private boolean checks(Functions functions, List<String> lines) {
    List<String> missed = functions.missed();
    if (missed.isEmpty()) {
      lines.add(texts.say("checksMet", "" + functions.checks()));
    } else {
      lines.add(texts.say("checksMissed", "" + missed.size(), "" + functions.checks()));
      lines.addAll(missed);
    }
    return missed.isEmpty();
  }

  /** The whole way: Calc, type library, component. */
  private boolean cells(List<String> lines, String version) {
    Object answer;
    try {
      answer =
          as(XFunctionAccess.class, service("com.sun.star.sheet.FunctionAccess"))
              .callFunction("CELLAR.VERSION", new Object[0]);
    } catch (com.sun.star.uno.Exception | IllegalArgumentException e) {
      answer = null; // said below, in words that help
    }
    if (!(answer instanceof String)) {
      lines.add(texts.say("cellsFail"));
      return false;
    }
    lines.add(texts.say(answer.equals(version) ? "cellsAnswer" : "cellsOther", answer));
    return answer.equals(version);
  }

  private String version() {
    for (String[] extension : PackageInformationProvider.get(context).getExtensionList()) {
      if (extension[0].equals(Menu.PACKAGE)) {
        return extension[1];
      }
    }
    return "?";
  }

  private Object service(String name) throws com.sun.star.uno.Exception {
    return context.getServiceManager().createInstanceWithContext(name, context);
  }

  private static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
