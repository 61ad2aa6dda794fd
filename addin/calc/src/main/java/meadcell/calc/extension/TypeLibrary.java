package meadcell.calc.extension;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes interfaces in the office's binary form of UNOIDL: a tree of modules, each a map sorted by
 * name, whose leaves are the types. Little-endian; positions count from the start of the file.
 *
 * <p>A damaged file keeps the whole office from starting, so what is written here must be loaded in
 * a real office before it is given to anybody.
 */
public final class TypeLibrary {
  private static final byte[] MAGIC = {'U', 'N', 'O', 'I', 'D', 'L', (byte) 0xFF, 0};
  private static final int MODULE = 0;
  private static final int INTERFACE = 5;
  private static final int IN = 0;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  private TypeLibrary() {}

  /** The file that declares these interfaces in a module with a dotted name. */
  public static byte[] write(String module, Iterable<UnoInterface> interfaces) {
    return new TypeLibrary().file(module, interfaces);
  }

  private byte[] file(String module, Iterable<UnoInterface> interfaces) {
    out.writeBytes(MAGIC);
    number(0); // the root map's place, known at the end
    number(0);
    Map<String, Integer> entries = new TreeMap<>();
    for (UnoInterface type : interfaces) {
      entries.put(type.name(), type(type));
    }
    String[] path = module.split("\\.");
    for (int i = path.length - 1; i >= 0; i--) {
      Map<String, Integer> names = names(entries);
      int start = out.size();
      out.write(MODULE);
      number(entries.size());
      map(entries, names);
      entries = new TreeMap<>(Map.of(path[i], start));
    }
    Map<String, Integer> names = names(entries);
    int root = out.size();
    map(entries, names);
    byte[] file = out.toByteArray();
    out.reset();
    number(root);
    number(entries.size());
    System.arraycopy(out.toByteArray(), 0, file, MAGIC.length, out.size());
    return file;
  }

  private int type(UnoInterface type) {
    int start = out.size();
    out.write(INTERFACE);
    number(1);
    text(UnoInterface.ROOT);
    number(0); // optional bases
    number(0); // attributes
    number(type.methods().size());
    for (UnoInterface.Method method : type.methods()) {
      text(method.name());
      text(method.type());
      number(method.parameters().size());
      for (UnoInterface.Parameter parameter : method.parameters()) {
        out.write(IN);
        text(parameter.name());
        text(parameter.type());
      }
      number(0); // exceptions
    }
    return start;
  }

  private Map<String, Integer> names(Map<String, Integer> entries) {
    Map<String, Integer> places = new TreeMap<>();
    for (String name : entries.keySet()) {
      places.put(name, out.size());
      out.writeBytes(name.getBytes(StandardCharsets.US_ASCII));
      out.write(0);
    }
    return places;
  }

  private void map(Map<String, Integer> entries, Map<String, Integer> names) {
    entries.forEach(
        (name, place) -> {
          number(names.get(name));
          number(place);
        });
  }

  private void text(String text) {
    number(text.length());
    out.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
  }

  private void number(int value) {
    for (int shift = 0; shift < 32; shift += 8) {
      out.write(value >>> shift);
    }
  }
}
