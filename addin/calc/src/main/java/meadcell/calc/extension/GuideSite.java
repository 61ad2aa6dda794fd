package meadcell.calc.extension;

import static j2html.TagCreator.a;
import static j2html.TagCreator.body;
import static j2html.TagCreator.caption;
import static j2html.TagCreator.code;
import static j2html.TagCreator.each;
import static j2html.TagCreator.footer;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.head;
import static j2html.TagCreator.header;
import static j2html.TagCreator.html;
import static j2html.TagCreator.input;
import static j2html.TagCreator.label;
import static j2html.TagCreator.li;
import static j2html.TagCreator.link;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.nav;
import static j2html.TagCreator.p;
import static j2html.TagCreator.script;
import static j2html.TagCreator.section;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.title;
import static j2html.TagCreator.tr;
import static j2html.TagCreator.ul;

import j2html.tags.ContainerTag;
import j2html.tags.DomContent;
import j2html.tags.specialized.SectionTag;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.ReferencePage;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;

/**
 * The function guide as plain pages for a browser: for each language a list of all functions that
 * can be searched, and a page a family. They need no network; without scripts all but the search
 * works.
 */
final class GuideSite {
  /** The folder of the package that holds it. */
  static final String FOLDER = "guide/";

  /** Of a function's check values, the strongest; selfcheck prints all. */
  private static final int EXAMPLES = 5;

  private static final List<String> SHARED = List.of("guide.css", "guide.js");

  private final Catalogue catalogue;
  private final List<String> families;
  private final Words words;
  private final ResourceBundle texts;
  private final Map<String, List<CheckRow>> rows;

  private GuideSite(Catalogue catalogue, List<String> families, Words words) {
    this.catalogue = catalogue;
    this.families = families;
    this.words = words;
    this.texts =
        ResourceBundle.getBundle(
            "meadcell.calc.extension.guide",
            Locale.forLanguageTag(words.tag()),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_DEFAULT));
    this.rows =
        CheckRow.load(catalogue).stream().collect(Collectors.groupingBy(CheckRow::function));
  }

  /** Adds the pages to a package. */
  static void addTo(Archive archive, Catalogue catalogue, List<String> families)
      throws IOException {
    for (String file : SHARED) {
      try (InputStream in = GuideSite.class.getResourceAsStream(file)) {
        archive.add(FOLDER + file, in.readAllBytes());
      }
    }
    for (Words words : Words.all()) {
      GuideSite site = new GuideSite(catalogue, families, words);
      site.add(archive, "index", site.list());
      for (String family : families) {
        site.add(archive, file(family), site.family(family));
      }
    }
  }

  private void add(Archive archive, String name, ContainerTag<?> page) {
    String text = "<!DOCTYPE html>\n" + page.render() + "\n";
    archive.add(FOLDER + words.tag() + "/" + name + ".html", text.getBytes(StandardCharsets.UTF_8));
  }

  private static String file(String family) {
    return family.toLowerCase(Locale.ROOT);
  }

  private String say(String key) {
    return texts.getString(key);
  }

  private ContainerTag<?> list() {
    return page(
        "index",
        say("title"),
        p(say("about")),
        p().withClass("caution").withText(say("caution")),
        label(say("search")).withFor("search"),
        input().withId("search").withType("search").attr("autocomplete", "off"),
        p().withId("found").attr("role", "status").attr("data-none", say("nothing")),
        each(
            families,
            family ->
                section(
                    h2(a(family).withHref(file(family) + ".html")),
                    p(catalogue.families().get(family).about(words)),
                    ul(each(catalogue.functions(family), this::entry)).withClass("functions"))));
  }

  private DomContent entry(FunctionSpec function) {
    return li(
            a(function.name()).withHref(file(function.family()) + ".html#" + function.name()),
            j2html.TagCreator.text(" " + function.summary(words)))
        .attr("data-words", searched(function));
  }

  /** What the search looks in: all of the page but its sources. */
  private String searched(FunctionSpec function) {
    return Stream.concat(
            Stream.of(function.signature(), function.summary(words), function.note(words)),
            function.args().stream().map(arg -> arg.description(words)))
        .collect(Collectors.joining(" "))
        .toLowerCase(Locale.ROOT);
  }

  private ContainerTag<?> family(String family) {
    return page(
        file(family),
        family,
        p(catalogue.families().get(family).about(words)),
        ul(each(
                catalogue.functions(family),
                function -> li(a(function.name()).withHref("#" + function.name()))))
            .withClass("contents"),
        each(catalogue.functions(family), this::function));
  }

  private SectionTag function(FunctionSpec function) {
    ReferencePage page = ReferencePage.of(function, words);
    return section(
            h2(function.name()),
            each(page.sections(), part -> part(part, function)),
            examples(function.name()))
        .withId(function.name())
        .withClass("function");
  }

  private DomContent part(ReferencePage.Section part, FunctionSpec function) {
    boolean isCaution = String.join("\n", part.lines()).equals(function.caution(words));
    DomContent lines =
        part.lines().size() == 1 ? p(part.lines().get(0)) : ul(each(part.lines(), l -> li(l)));
    return section(h3(part.heading()), lines).withClass(isCaution ? "caution" : "part");
  }

  private DomContent examples(String function) {
    List<CheckRow> all = rows.getOrDefault(function, List.of());
    List<CheckRow> shown =
        all.stream().sorted(Comparator.comparing(CheckRow::kind)).limit(EXAMPLES).toList();
    if (shown.isEmpty()) {
      return j2html.TagCreator.text("");
    }
    return table(
        caption(say("examples").formatted(shown.size(), all.size())),
        thead(tr(each(List.of("call", "expected", "kind", "source"), key -> th(say(key))))),
        tbody(
            each(
                shown,
                row ->
                    tr(
                        td(code(row.call())),
                        td(new CheckRow.Verdict(row, null, true).expectedText()),
                        td(say(row.kind().word())),
                        td((row.source() + " " + row.where()).strip())))));
  }

  private ContainerTag<?> page(String name, String heading, DomContent... content) {
    return html(
            head(
                meta().withCharset("UTF-8"),
                meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                meta().withName("color-scheme").withContent("light dark"),
                title(heading + " · Meadcell"),
                link().withRel("stylesheet").withHref("../guide.css"),
                script().withSrc("../guide.js").attr("defer")),
            body(
                header(
                    nav(
                        a("Meadcell").withHref("index.html"),
                        each(families, family -> a(family).withHref(file(family) + ".html")),
                        each(
                            Words.all().stream().filter(other -> other != words).toList(),
                            other ->
                                a(other.tag().equals("de") ? "Deutsch" : "English")
                                    .withHref("../" + other.tag() + "/" + name + ".html")
                                    .withLang(other.tag())
                                    .withClass("language")))),
                main(h1(heading), each(Stream.of(content))),
                footer(p("Meadcell " + Cellar.version() + ". " + say("defer")))))
        .withLang(words.tag());
  }
}
