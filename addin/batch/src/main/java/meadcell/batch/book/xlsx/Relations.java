package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.zip.PackageParts;

/** What one part of a package is related to (ECMA-376 part 2, 9.3). */
final class Relations {
  /**
   * One relation.
   *
   * @param type its address, of which only the end differs between the two kinds of the format
   * @param part the name of the part it leads to; of one that leads out of the package, null
   */
  record Relation(String id, String type, String part, String target) {
    boolean is(String typeEnd) {
      return type.endsWith("/" + typeEnd);
    }
  }

  private static final String EMPTY =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
          + "<Relationships"
          + " xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"/>";

  private final String name;
  private final String folder;
  private final XmlPart xml;
  private final List<Relation> all = new ArrayList<>();

  /**
   * Reads the relations of a part.
   *
   * @param part its name, or nothing for the package itself
   */
  Relations(PackageParts parts, String part) throws IOException {
    int slash = part.lastIndexOf('/') + 1;
    folder = part.substring(0, slash);
    name = folder + "_rels/" + part.substring(slash) + ".rels";
    xml = parts.has(name) ? XmlPart.of(parts.read(name)) : XmlPart.of(EMPTY);
    for (TagScanner tags = xml.tags(); tags.next(); ) {
      if (tags.is("Relationship") && !tags.isEnd()) {
        String target = XmlText.unescaped(tags.attribute("Target"));
        boolean leadsOut = "External".equals(tags.attribute("TargetMode"));
        all.add(
            new Relation(
                XmlText.unescaped(tags.attribute("Id")),
                XmlText.unescaped(tags.attribute("Type")),
                leadsOut ? null : resolved(target),
                target));
      }
    }
  }

  /** Name of the part that lists them. */
  String name() {
    return name;
  }

  List<Relation> all() {
    return all;
  }

  Optional<Relation> first(String typeEnd) {
    return all.stream().filter(r -> r.is(typeEnd) && r.part != null).findFirst();
  }

  Optional<Relation> withId(String id) {
    return all.stream().filter(relation -> relation.id.equals(id)).findFirst();
  }

  private String resolved(String target) {
    Deque<String> path = new ArrayDeque<>();
    String full = target.startsWith("/") ? target.substring(1) : folder + target;
    for (String step : full.split("/")) {
      if (step.equals("..")) {
        path.pollLast();
      } else if (!step.isEmpty() && !step.equals(".")) {
        path.addLast(step);
      }
    }
    return String.join("/", path);
  }

  /** Relates the part to another; the new relation's id. */
  String add(String type, String part) {
    Set<String> ids = new HashSet<>();
    all.forEach(relation -> ids.add(relation.id));
    int number = all.size() + 1;
    while (ids.contains("rId" + number)) {
      number++;
    }
    Relation relation = new Relation("rId" + number, type, part, "/" + part);
    TagScanner tags = xml.tags();
    while (tags.next() && !tags.is("Relationships")) {
      // to the list itself
    }
    xml.append(tags, "Relationships", written(relation, tags.prefix()));
    all.add(relation);
    return relation.id;
  }

  void remove(Relation relation) {
    for (TagScanner tags = xml.tags(); tags.next(); ) {
      if (tags.is("Relationship") && relation.id.equals(tags.attribute("Id"))) {
        int start = tags.start();
        tags.toEnd("Relationship");
        xml.replace(start, tags.end(), "");
      }
    }
    all.remove(relation);
  }

  private static String written(Relation relation, String prefix) {
    return "<"
        + prefix
        + "Relationship Id=\""
        + relation.id
        + "\" Type=\""
        + relation.type
        + "\" Target=\""
        + XmlText.escaped(relation.target)
        + "\"/>";
  }

  boolean isChanged() {
    return xml.isChanged();
  }

  byte[] changed() {
    return xml.changed();
  }
}
